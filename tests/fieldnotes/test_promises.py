"""The promises of reading: any input ends in a job or in problems, and a job written out reads back alike."""

import random
import tempfile
import tomllib
from pathlib import Path

import pytest
from fieldnote_texts import HEAD, JOBS, TextFiles, read_dump, reading
from hypothesis import example, given, settings
from hypothesis import strategies as st

from estimator.fieldnotes import Reading, read_job
from estimator.fieldnotes.dumpjob import dump_job
from estimator.fieldnotes.echo import echo
from estimator.fieldnotes.log import LogReader
from estimator.fieldnotes.logbook import Log
from estimator.fieldnotes.places import Path as KeyPath
from estimator.fieldnotes.places import positions
from estimator.fieldnotes.reading import read_job_text
from estimator.fieldnotes.textfile import text_of
from estimator.fieldnotes.words import ALL_SIGNS, WORDS
from estimator.model.problem import Place, Problem

FIXTURES = ("maple", "pecan", "alder")
PIECES = (
    *(w.word for w in WORDS), *ALL_SIGNS, "30%", "20..25%", "3in", "2'6\"", "4", "at 5-7", "every 3ft", "12in wide", "under tile",
    "live", "not proven", "called hb", "photo 3", "flag a", "suspected", "?", "starts", "ends", "still", ",", ";", "=", "same",
    "back", "-", "to", "clay", "6 joints", "½", "’", "é", "\t", "'''", "front wall", "left", "severe", "after cleaning",
)  # fmt: skip
HEADINGS = (
    "pass front cleanout to street, riser 2 ft\n2 yard lawn",
    "pass front cleanout to house, riser 28in, after jet to 33",
    "pass hb toilet, with flow, riser 22in, zero at 30",
    "back",
)
readings = st.one_of(st.integers(0, 60).map(str), st.sampled_from(["8-", "17-21", "12.25", "~5", "16 no 16.6", "x"]))
things = st.lists(st.sampled_from(PIECES), min_size=1, max_size=8).map(" ".join)
log_lines = st.one_of(st.builds(lambda where, what: f"{where}  {what}", readings, things), st.sampled_from(HEADINGS))
logs = st.lists(log_lines, min_size=1, max_size=9).map(lambda lines: "\n".join([HEADINGS[0], *lines]))


def reads_back_alike(found: Reading) -> None:
    if found.job is not None:
        assert read_dump(dump_job(found.job)).job == found.job
        assert all(isinstance(line, str) for line in echo(found.job))


@settings(deadline=None)
@given(st.text(max_size=200))
def test_any_text_is_a_job_or_problems(text: str) -> None:
    for found in (
        reading(text),
        read_job_text(text, "job.toml", TextFiles({})),
        read_job_text(HEAD + text, "job.toml", TextFiles({"main.txt": ""})),
    ):
        assert found.job is not None or found.problems


@settings(deadline=None)
@given(st.binary(max_size=200))
def test_any_bytes_are_a_text_or_a_problem(data: bytes) -> None:
    assert isinstance(text_of(data, Place("job.toml"), "job.toml"), str | Problem)


@settings(max_examples=50, deadline=None)
@given(st.binary(max_size=120), st.booleans())
def test_any_bytes_in_a_file_are_a_job_or_problems(data: bytes, as_log: bool) -> None:
    with tempfile.TemporaryDirectory() as folder:
        (Path(folder) / "job.toml").write_bytes(HEAD.encode() if as_log else HEAD.encode() + data)
        (Path(folder) / "main.txt").write_bytes(data)
        found = read_job(Path(folder) / "job.toml")
    assert found.job is not None or found.problems


@settings(max_examples=150, deadline=None)
@given(logs)
@example(f"{HEADINGS[0]}\n0  cleanout left left slab")
def test_any_log_of_known_pieces_is_read_or_refused_and_reads_back_alike(log: str) -> None:
    found = reading(log)
    assert found.job is not None or found.problems
    reads_back_alike(found)


NOTES = Path(__file__).parents[1] / "cases" / "notes"
TYPED = tuple(
    line["text"]
    for corpus in ("lines", "more", "own")
    for line in tomllib.loads((NOTES / f"{corpus}.toml").read_text("utf-8"))["line"]
)
typed_logs = st.lists(st.sampled_from(TYPED), min_size=1, max_size=7)


@settings(max_examples=60, deadline=None)
@given(typed_logs)
def test_lines_as_people_type_them_are_read_at_each_prefix_and_what_is_written_out_reads_back_alike(
    lines: list[str],
) -> None:
    for n in range(len(lines) + 1):
        found = reading("\n".join([HEADINGS[0], *lines[:n]]))
        assert found.job is not None or found.problems
    reads_back_alike(found)


@settings(deadline=None)
@given(st.one_of(st.sampled_from(TYPED), st.text(max_size=80), things))
def test_any_line_ends_as_a_reading_a_question_or_a_remark(text: str) -> None:
    row = " ".join(text.split())
    log = Log()
    LogReader(log, "main.txt", {}, None).read(f"{HEADINGS[0]}\n10 hole 2in\n{row}")
    told = bool(log.asked or log.notes or log.names or log.found or log.understood.get(("main.txt", 4)))
    taken_back = ("main.txt", 3) in log.understood and not any(p.entries[1:] for p in log.passes)
    more_said = len(log.passes) > 1 or log.passes[0].heading.text != HEADINGS[0].removeprefix("pass ") or row == "back"
    assert not row or told or taken_back or more_said


def _damaged(text: str, chance: random.Random) -> str:
    """One slip of the hand: a stretch lost, a piece too many, a line moved or written twice, a letter changed."""
    lines = text.split("\n")
    a, b = chance.randrange(len(lines)), chance.randrange(len(lines))
    at = chance.randrange(len(text))
    kind = chance.randrange(5)
    if kind == 0:
        return text[:at] + text[at + chance.randint(1, 20) :]
    if kind == 1:
        return text[:at] + chance.choice(PIECES) + text[at:]
    if kind == 2:
        lines[a], lines[b] = lines[b], lines[a]
    elif kind == 3:
        lines.insert(a, lines[b])
    else:
        return text[:at] + chr(chance.choice((chance.randrange(32, 127), 0x2019, 10, 0xE9))) + text[at + 1 :]
    return "\n".join(lines)


@settings(max_examples=150, deadline=None)
@given(st.sampled_from(FIXTURES), st.integers(0, 2**32), st.integers(1, 3), st.booleans())
def test_a_damaged_job_is_read_or_refused_and_reads_back_alike(name: str, seed: int, slips: int, in_log: bool) -> None:
    chance = random.Random(seed)
    job = (JOBS / name / "job.toml").read_text("utf-8")
    log = (JOBS / name / "main.txt").read_text("utf-8")
    for _ in range(slips):
        job, log = (job, _damaged(log, chance)) if in_log else (_damaged(job, chance), log)
    found = read_job_text(job, "job.toml", TextFiles({"main.txt": log}))
    assert found.job is not None or found.problems
    reads_back_alike(found)


@pytest.mark.parametrize("name", [*FIXTURES, "everything"])
def test_writing_and_reading_again_changes_nothing(name: str) -> None:
    folder = Path(__file__).parent / "everything.toml" if name == "everything" else JOBS / name / "job.toml"
    found = read_job(folder)
    assert found.job is not None
    first = dump_job(found.job)
    again = read_dump(first).job
    assert again == found.job
    assert dump_job(again) == first  # and what was written once is written the same again


keys = st.one_of(st.sampled_from(["a", "b", "c-1", "x y", "", "ü", 'q"q', "a.b"]), st.text(max_size=4))
scalars = st.one_of(st.integers(), st.booleans(), st.text(max_size=8), st.sampled_from(["'''", '"', "\\", "#", "a\nb"]))
values = st.recursive(scalars, lambda v: st.lists(v, max_size=3) | st.dictionaries(keys, v, max_size=3), max_leaves=8)


def _paths(value: object, path: KeyPath = ()) -> set[KeyPath]:
    inner = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    return {path} | {found for key, child in inner for found in _paths(child, (*path, key))}


@settings(deadline=None)
@given(st.dictionaries(keys, values, max_size=4))
def test_the_place_of_every_key_is_found_in_any_good_toml(data: dict[str, object]) -> None:
    import tomlkit

    text = tomlkit.dumps(data)
    try:
        parsed = tomllib.loads(text)
    except tomllib.TOMLDecodeError:  # what the writer gets wrong is no concern of the scanner
        return
    assert set(positions(text)) | {()} == _paths(parsed)


TOML = """
top = 1
[a.b]
"quoted key" = 'literal'  # remark
c.d = [1, [2, {e = 3}],
  # in an array
  4]
[[list]]
x = \"\"\"
long \\" text = no key
\"\"\"
[[list]]
x = '''it's
[not] = a header'''
[list.sub]
y = 1979-05-27T07:32:00Z
[[list.more]]
z = {}
"""


def test_places_in_a_text_with_everything() -> None:
    spots = positions(TOML)
    assert set(spots) | {()} == _paths(tomllib.loads(TOML))
    assert (spots[("a", "b", "quoted key")].line, spots[("a", "b", "c", "d")].value_column) == (4, 7)
    assert (spots[("a", "b", "c", "d", 2)].line, spots[("a", "b", "c", "d", 2)].column) == (7, 3)
    assert spots[("list", 1, "more", 0, "z")].line == 18


def test_read_job_never_raises_for_a_path(tmp_path: Path) -> None:
    for path in (tmp_path, tmp_path / "none.toml", Path("bad\0name"), Path(), tmp_path / ("x" * 400)):
        found = read_job(path)
        assert found.job is None
        assert len(found.problems) == 1


@pytest.mark.parametrize(
    ("data", "code"),
    [
        (b"", "file/empty"),
        (b" \n\t\n", "file/empty"),
        ("\ufeff".encode(), "file/empty"),
        (b"\x00\x01", "file/binary"),
        ("name = 'x'".encode("utf-16"), "file/encoding"),
        ("name = 'é'".encode("cp1252"), "file/encoding"),
        (b"%PDF-1.7", "file/binary"),
    ],
)
def test_what_is_no_text_is_told_apart(data: bytes, code: str) -> None:
    found = text_of(data, Place("job.toml"), "job.toml")
    assert isinstance(found, Problem)
    assert found.code == code


def test_a_byte_order_mark_and_windows_line_ends_do_no_harm(tmp_path: Path) -> None:
    text = HEAD.replace("\n", "\r\n")
    log = "pass front cleanout to street, riser 2 ft\r\n2 yard lawn\r\n12 crack ; open\r\n"
    (tmp_path / "job.toml").write_bytes(b"\xef\xbb\xbf" + text.encode())
    (tmp_path / "main.txt").write_bytes(b"\xef\xbb\xbf" + log.encode())
    found = read_job(tmp_path / "job.toml")
    assert found.problems == ()
    assert found.job is not None
    assert found.job.lines[0].findings[0].note == "open"
