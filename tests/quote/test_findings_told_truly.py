"""The words of a finding follow the pipe and the log, in both languages, on houses and logs drawn anew.

*Common practice*: only iron and steel rust; what nobody saw for certain is possible; water that never ends has no known cause.
"""

import re
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from estimator.diagnosis import diagnose
from estimator.fieldnotes import read_job
from estimator.model.job import Job
from estimator.quote import findings
from estimator.wording.say import say
from tests.properties.drawn_houses import tables

RUSTS = ("cast iron", "steel", "galvanized")
PIPES = (
    *RUSTS,
    "PVC",
    "ABS",
    "HDPE",
    "clay",
    "concrete",
    "fiber",
    "asbestos cement",
    "lead",
    "copper",
    "liner",
    "unknown",
)
THINGS = (
    "scale 30%", "scale 20% drags", "leak running in", "leak running out", "leak", "sag 40%", "sag 30%, never ends", "hole 2in",
    "roots 30%", "crack", "gap 1in", "channel sharp", "offset 15%", "grease 20%",
)  # fmt: skip
RUST = re.compile(r"\brust|óxido|oxid", re.IGNORECASE)
WATER_IN = re.compile(r"leaks into|entra agua", re.IGNORECASE)
WATER_OUT = re.compile(r"leaks out|se sale el agua", re.IGNORECASE)
A_DIP = re.compile(r"\bdip\b|belly|low spot|hundimiento|panza", re.IGNORECASE)
POSSIBLE = re.compile(r"possible|posible", re.IGNORECASE)
JOB = """[job]
number = "1"
date = 2026-11-28
prepared_by = "Ines Calloway"
demo = true
[customer]
name = "Wren Castellane"
site = "417 Larkspur Court"
[house]
floor = "slab"
built = 1962
jurisdiction = "demo"
[[line]]
name = "main"
size = "4 in"
pipe = "{pipe}"
ends = "city main"
log = "main.txt"
"""
TEST = '[[water_test]]\nsection = "under slab"\nkind = "whole"\ncovers = ["main"]\nsealed = true\nresult = "{result}"\nreadings = "{readings}"\n'


@pytest.fixture(scope="module")
def folder(tmp_path_factory) -> Path:
    return tmp_path_factory.mktemp("told")


def house(folder: Path, pipe: str, rows: list[str], test: str = "") -> Job:
    (folder / "job.toml").write_text(JOB.format(pipe=pipe) + test, encoding="utf-8")
    log = ["pass front cleanout to street, surface", "0 slab tile", *rows, "90 stop cable end"]
    (folder / "main.txt").write_text("\n".join(log) + "\n", encoding="utf-8")
    reading = read_job(folder / "job.toml")
    assert reading.job is not None, [str(problem) for problem in reading.problems]
    return reading.job


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    st.sampled_from(PIPES),
    st.lists(st.tuples(st.sampled_from(THINGS), st.booleans()), min_size=1, max_size=6),
    st.sampled_from(PIPES),
)
def test_the_words_of_every_finding_agree_with_its_pipe_and_its_line_of_the_log(folder, pipe, things, later_pipe):
    """The pipe changes at 45 ft, so that a word follows the pipe at its place and not the line's name for it."""
    rows = [
        f"{5 + n * 7}-{9 + n * 7} {thing}{', suspected' if maybe else ''}" for n, (thing, maybe) in enumerate(things)
    ]
    if later_pipe != pipe and later_pipe != "unknown":
        rows = sorted([*rows, f"45 pipe {later_pipe}"], key=lambda row: float(re.match(r"\d+", row)[0]))  # type: ignore[index]
    else:
        later_pipe = pipe
    job = house(folder, pipe, rows)
    entries = [entry for entry in findings.found(job, diagnose(job, tables())) if entry.findings]
    assert sum(len(entry.findings) for entry in entries) == len(things)
    for entry in entries:
        seen = entry.findings[0]
        here = pipe if seen.stretch.middle_ft < 45 else later_pipe
        for language in ("en_US", "es_US"):
            said = say(entry.text, language)
            assert bool(RUST.search(said)) == (seen.kind == "scale" and here in RUSTS), said
            assert bool(WATER_IN.search(said)) == ("running in" in seen.signs), said
            assert bool(WATER_OUT.search(said)) == ("running out" in seen.signs), said
            assert bool(A_DIP.search(said)) == (seen.kind == "sag" and "never ends" not in seen.signs), said
            assert bool(POSSIBLE.search(said)) == (seen.grade == "suspected"), said
            short = say(entry.short, language)
            assert bool(POSSIBLE.search(short)) == (seen.grade == "suspected"), short
            assert bool(RUST.search(short)) == bool(RUST.search(said)), short


@pytest.mark.parametrize(
    ("result", "readings"),
    [("failed", "5:3/8, 20:1 5/8"), ("passed", "0:0, 30:0"), ("passed", "5:1/8, 20:1/8, 30:1/8")],
)
def test_a_water_test_says_no_water_came_in_and_a_passed_one_no_failure(folder, result, readings):
    """A level that falls is water that goes out; nothing said of it may claim groundwater."""
    job = house(folder, "clay", [], TEST.format(result=result, readings=readings))
    for sentence in findings.tests(diagnose(job, tables())):
        for language, failed in (("en_US", "FAILED"), ("es_US", "NO PASÓ")):
            said = say(sentence, language)
            assert not WATER_IN.search(said)
            assert (failed in said) == (result == "failed"), said
