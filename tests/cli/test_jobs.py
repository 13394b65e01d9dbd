"""`estimator jobs`: every job with its state; what new tables would change, stopped half-way and gone on with."""

import json
import shutil
import signal
import subprocess
import sys
import time
from datetime import date
from pathlib import Path

import openpyxl
import pytest
from typer.testing import CliRunner

from estimator import demo
from estimator.cli.app import build
from tests.tables.workbench import edited

JOBS = Path(__file__).parents[1] / "jobs"
NAMES = ("maple", "pecan", "j02-walnut", "j12-cedar", "j06-poplar", "j10-chestnut")


@pytest.fixture(name="folder")
def _folder(tmp_path):
    """Six houses that can be priced, one whose notes are broken."""
    for name in NAMES:
        shutil.copytree(JOBS / name, tmp_path / "jobs" / name)
    (tmp_path / "jobs" / "broken").mkdir()
    (tmp_path / "jobs" / "broken" / "job.toml").write_text("[job\n")
    return tmp_path / "jobs"


def _hears_ctrl_c() -> None:
    """Also where the tests themselves run in the background, in which the shell has Ctrl-C ignored."""
    signal.signal(signal.SIGINT, signal.SIG_DFL)


def _typed(*words: object):
    typed = [*map(str, words)]
    return CliRunner().invoke(build(typed), typed)


def test_every_job_below_the_folder_has_its_state(folder):
    found = {Path(s["job_file"]).parent.name: s for s in json.loads(_typed("jobs", folder, "--json").stdout)}
    assert {name: found[name]["state"] for name in NAMES} == dict.fromkeys(NAMES, "ready")
    assert found["broken"]["state"] == "notes incomplete"
    assert found["broken"]["waits_for"] == "1 error in the notes"


def test_folders_of_programs_and_hidden_ones_are_passed_by_unless_they_are_named(folder):
    """Nobody's customer lives in tests, .venv, node_modules or a package; `jobs` at a project's root lists none of them."""
    for name, mark in (
        ("tests", ""),
        (".old", ""),
        ("node_modules", ""),
        ("env", "pyvenv.cfg"),
        ("program", "__init__.py"),
    ):
        shutil.copytree(folder / "maple", folder / name / "inner")
        if mark:
            (folder / name / mark).touch()

    def listed(where: Path) -> set[str]:
        return {str(Path(s["job_file"]).relative_to(where)) for s in json.loads(_typed("jobs", where, "--json").stdout)}

    assert listed(folder) == {f"{name}/job.toml" for name in (*NAMES, "broken")}
    assert listed(folder / "tests") == {"inner/job.toml"}


def test_the_list_speaks_spanish(folder):
    said = _typed("jobs", folder, "--language", "es_US").stdout
    assert "espera" in said
    assert "listo" in said


def test_a_job_goes_from_ready_to_done(tmp_path):
    for name in demo.FILES:
        shutil.copyfile(Path(demo.__file__).parent / name, tmp_path / name)
    job = tmp_path / "job.toml"

    def state() -> str:
        return json.loads(_typed("jobs", job, "--on", "2026-11-30", "--json").stdout)[0]["state"]

    states = [state()]
    for words in (["--language", "en_US"], ["--accepted", "A", "--on", "2026-11-20"], ["--done", "--on", "2026-12-04"]):
        assert _typed("quote", job, *words).exit_code == 0
        states.append(state())
    assert states == ["ready", "issued", "accepted", "done"]


def test_done_says_what_was_done_and_when(tmp_path):
    for name in demo.FILES:
        shutil.copyfile(Path(demo.__file__).parent / name, tmp_path / name)
    job = tmp_path / "job.toml"
    _typed("quote", job, "--language", "en_US")
    _typed("quote", job, "--accepted", "D", "--on", "2026-11-20")
    assert _typed("quote", job, "--done", "--on", "2026-12-04").stdout == "Option D of r1 was done on 2026-12-04.\n"


def test_an_older_revision_that_was_signed_is_accepted_by_its_name(small):
    _typed("quote", small, "--language", "en_US")
    small.write_text(small.read_text(encoding="utf-8").replace("An invented owner", "Another owner"), encoding="utf-8")
    assert "r2 is written" in _typed("quote", small, "--language", "en_US").stdout
    said = _typed("quote", small, "--accepted", "A", "--revision", "r1", "--on", "2026-11-20")
    assert said.stdout.startswith("Option A of r1 accepted on 2026-11-20, ")


def test_new_tables_are_laid_beside_what_was_issued_in_one_workbook(folder, tmp_path):
    assert _typed("quote", folder / "maple" / "job.toml", "--language", "en_US").exit_code == 0
    tables = edited(tmp_path, "settings.csv", "round_price_to,25,", "round_price_to,500,")
    to = tmp_path / "moves.xlsx"
    result = _typed("jobs", folder, "--reprice", "--tables", tables, "--to", to)
    assert result.exit_code == 0, result.output
    book = openpyxl.load_workbook(to, data_only=True)
    assert book.sheetnames == ["What would change", "Left out"]
    held = list(book["What would change"].values)
    assert held[0][0].startswith("INTERNAL")
    maple = next(row for row in held if str(row[0]).startswith("maple") and row[4] and row[5] == 4175)
    assert (maple[5], maple[6], maple[7]) == (4175, 4500, 325)
    assert [row[0] for row in book["Left out"].values if str(row[0]).startswith("broken")]
    assert {str(row[0]).split("/")[0] for row in held if str(row[0]).endswith("job.toml")} == set(NAMES)
    assert not (tmp_path / "jobs.repricing").exists()


def test_a_workbook_that_is_there_is_never_written_over(folder, tmp_path):
    (tmp_path / "moves.xlsx").write_text("mine")
    result = _typed("jobs", folder, "--reprice", "--to", tmp_path / "moves.xlsx")
    assert (result.exit_code, (tmp_path / "moves.xlsx").read_text()) == (1, "mine")


def test_a_run_that_was_stopped_goes_on_where_it_was(folder, tmp_path):
    words = [sys.executable, "-m", "estimator", "jobs", str(folder), "--reprice", "--to", str(tmp_path / "moves.xlsx")]
    run = subprocess.Popen(words, stdout=subprocess.PIPE, stderr=subprocess.PIPE, preexec_fn=_hears_ctrl_c)
    beside, until = tmp_path / "jobs.repricing", time.monotonic() + 60
    while not (beside.exists() and beside.read_bytes().count(b"\n")) and time.monotonic() < until:
        time.sleep(0.01)
    run.send_signal(signal.SIGINT)
    said = run.communicate(timeout=60)[1]
    if run.returncode != 0:  # else it was done before the signal came
        assert run.returncode == 130
        assert b"(cli/stopped-half-way)" in said
        assert b"Traceback" not in said
        assert not (tmp_path / "moves.xlsx").exists()
        done = beside.read_bytes().count(b"\n")
        again = subprocess.run(words, capture_output=True, check=True, text=True)
        assert f"{done} were kept from the run that was stopped." in again.stdout
        assert again.stderr == ""
    assert (tmp_path / "moves.xlsx").exists()
    assert not beside.exists()


def _children(number: int) -> list[int]:
    return [
        int(p.name)
        for p in Path("/proc").iterdir()
        if p.name.isdigit() and (p / "stat").is_file() and _parent(p / "stat") == number
    ]


def _parent(stat: Path) -> int:
    try:
        return int(stat.read_text().rpartition(")")[2].split()[1])
    except OSError:
        return 0


@pytest.mark.skipif(not Path("/proc/self/stat").exists(), reason="reads the list of processes where Linux keeps it")
def test_a_run_that_is_killed_takes_its_workers_along(folder, tmp_path):
    words = [sys.executable, "-m", "estimator", "jobs", str(folder), "--reprice", "--to", str(tmp_path / "moves.xlsx")]
    run = subprocess.Popen(words, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    beside, until = tmp_path / "jobs.repricing", time.monotonic() + 60
    while not (beside.exists() and beside.read_bytes()) and run.poll() is None and time.monotonic() < until:
        time.sleep(0.01)
    workers = _children(run.pid)
    run.kill()
    run.wait(timeout=10)
    assert workers, "the run had no workers, so nothing was shown"
    until = time.monotonic() + 10
    while any(_runs(number) for number in workers) and time.monotonic() < until:
        time.sleep(0.05)
    assert [number for number in workers if _runs(number)] == []


def _runs(number: int) -> bool:
    try:
        return (Path("/proc") / str(number) / "stat").read_text().rpartition(")")[2].split()[0] != "Z"
    except OSError:
        return False


def test_two_houses_with_the_same_notes_are_two_rows_after_a_stop_too(folder):
    """Rows kept from a run that was stopped are told apart by where the job lies."""
    from estimator.records.reprice import fingerprint
    from estimator.tables.read import demo_folder, read_tables

    shutil.copytree(folder / "maple", folder / "copy of maple")
    tables = read_tables(demo_folder(), date(2026, 11, 25)).tables
    sums = {fingerprint(folder / name / "job.toml", tables, date(2026, 11, 25)) for name in ("maple", "copy of maple")}
    assert len(sums) == 2


@pytest.mark.parametrize("columns", [60, 80])
@pytest.mark.parametrize("language", ["en_US", "es_US"])
def test_in_a_narrow_window_no_word_of_a_job_is_cut(folder, columns, language):
    from estimator.cli.views.jobs import write_jobs
    from estimator.cli.views.layout import Layout
    from estimator.records.job_status import job_files, job_status

    far = folder / "a customer whose name is quite long" / "her second house"
    shutil.copytree(folder / "maple", far)
    standings = [job_status(path, date(2026, 11, 25), lambda _: 0) for path in job_files(folder)]
    out = Layout(language, columns)
    write_jobs(out, standings, folder)
    drawn = [row.text for row in out.rows]
    assert max(map(len, drawn)) <= columns
    words = " ".join(drawn).split()
    assert "second" in words
    assert all(name.split("/")[0] in " ".join(drawn) for name in NAMES)
    assert {"en_US": "quote", "es_US": "presupuesto"}[language] in words
