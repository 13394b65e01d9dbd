"""Whatever a user can type, write or damage: one plain message, exit code 1, nothing half-written, never a traceback."""

import shutil
from pathlib import Path

import pytest
from typer.testing import CliRunner, Result

from estimator import demo
from estimator.cli.app import build
from estimator.tables.read import demo_folder

NOTES = Path(demo.__file__).parent
READING = ("check", "options", "quote", "explain")


def run(*words: object) -> Result:
    texts = [str(word) for word in words]
    return CliRunner().invoke(build(texts), texts, env={"COLUMNS": "80", "ESTIMATOR_DEBUG": None})


def after(command: str) -> list[str]:
    return ["A1"] if command == "explain" else []


@pytest.fixture(name="job")
def _job(tmp_path) -> Path:
    for name in demo.FILES:
        shutil.copyfile(NOTES / name, tmp_path / name)
    return tmp_path / "job.toml"


def refused(result: Result) -> str:
    """The message of a run that was refused as it should be."""
    assert result.exit_code == 1, result.output
    assert "Traceback" not in result.output
    assert "mistake of its own" not in result.output
    assert result.stderr.strip()
    return " ".join(result.stderr.split())


def untouched(folder: Path) -> set[str]:
    return {p.name for p in folder.iterdir()} - {"job.toml", "main.txt", "yard.txt", "kitchen.txt"}


@pytest.mark.parametrize("command", READING)
def test_a_missing_file(tmp_path, command):
    said = refused(run(command, tmp_path / "nowhere.toml", *after(command)))
    assert "nowhere.toml" in said
    assert not list(tmp_path.iterdir())


@pytest.mark.parametrize("command", READING)
@pytest.mark.parametrize(
    "data",
    [
        b"",
        b"\x00\xff\xfe\x01" * 50,
        b"[job\n",
        '[job]\nnumber = "caf\xe9"'.encode("latin-1"),
        b"PK\x03\x04",
        b'[job]\nriser = "2\'6""\n',
    ],
    ids=["empty", "binary", "broken TOML", "another encoding", "a workbook", "an inch mark in quotes"],
)
def test_a_file_that_is_no_job(job, command, data):
    job.write_bytes(data)
    refused(run(command, job, *after(command)))
    assert untouched(job.parent) == set()


@pytest.mark.parametrize("command", READING)
def test_a_folder_in_place_of_the_file(tmp_path, command):
    refused(run(command, tmp_path, *after(command)))
    assert not list(tmp_path.iterdir())


@pytest.mark.parametrize("name", ["main.txt", "kitchen.txt"])
def test_a_missing_log(job, name):
    (job.parent / name).unlink()
    assert name in refused(run("check", job))


def test_a_folder_in_place_of_a_log(job):
    (job.parent / "main.txt").unlink()
    (job.parent / "main.txt").mkdir()
    assert "main.txt" in refused(run("check", job))


@pytest.mark.parametrize("command", READING)
def test_tables_that_are_not_there(job, command):
    said = refused(run(command, job, *after(command), "--tables", job.parent / "prices"))
    assert "prices" in said
    assert untouched(job.parent) == set()


@pytest.mark.parametrize(
    "data", [None, b"", b"item,cost\n", b"\x00\x01\x02"], ids=["gone", "empty", "headers", "binary"]
)
def test_a_damaged_table(job, tmp_path, data):
    prices = tmp_path / "prices"
    shutil.copytree(demo_folder(), prices)
    (prices / "materials.csv").unlink()
    if data is not None:
        (prices / "materials.csv").write_bytes(data)
    assert "materials" in refused(run("quote", job, "--tables", prices))
    assert untouched(job.parent) == {"prices"}


def test_tables_that_are_no_workbook(job):
    (job.parent / "prices.xlsx").write_bytes(b"no workbook")
    assert "prices.xlsx" in refused(run("options", job, "--tables", job.parent / "prices.xlsx"))


def test_a_file_where_the_revisions_should_go(job):
    (job.parent / "job").write_text("mine")
    refused(run("quote", job))
    assert (job.parent / "job").read_text() == "mine"


def test_a_folder_that_may_not_be_written(job, monkeypatch):
    """The refusal itself is played by a stand-in here; tests/records meets a real one as another user."""

    def refuse(self, path) -> None:
        raise PermissionError(13, "Permission denied", str(path))

    monkeypatch.setattr("estimator.disk.disk.Disk.make_folder", refuse)
    assert "may be written" in refused(run("quote", job))
    assert untouched(job.parent) == set()


@pytest.mark.parametrize("change", ["soil", "=rock", "", "house..soil=x", "house.soil"])
def test_a_what_if_that_says_nothing(job, change):
    assert "--set" in refused(run("options", job, "--set", change))


def test_a_what_if_with_a_key_nobody_knows(job):
    assert "soyl" in refused(run("options", job, "--set", "soyl=rock"))


def test_a_what_if_that_puts_a_value_where_a_table_stands(job):
    assert "no key house.house" in refused(run("options", job, "--set", "house=3"))


def test_a_what_if_below_a_plain_value(job):
    assert "says nothing to change" in refused(run("options", job, "--set", "house.soil.kind=rock"))


def test_a_what_if_leaves_the_file_alone(job):
    before = job.read_bytes()
    run("options", job, "--set", "soil=rock")
    assert job.read_bytes() == before


@pytest.mark.parametrize("item", ["Z9", "", "A", "A999", "💥", "[bold]"])
def test_a_line_that_is_not_on_the_quote(job, item):
    assert "The lines are A1 to" in refused(run("explain", job, item))


@pytest.mark.parametrize("words", [("--again", "r1"), ("--accepted", "A"), ("--again", "x")])
def test_a_revision_that_was_never_issued(job, words):
    assert "no revision" in refused(run("quote", job, *words))


def test_changes_without_revisions(job):
    assert "no revision" in refused(run("changes", job))


@pytest.mark.parametrize("command", ["quote", "options", "check"])
@pytest.mark.parametrize("language", ["fr_FR", "xx", ""])
def test_a_language_without_texts_is_a_wrong_command_line(job, command, language):
    result = run(command, job, "--language", language)
    assert result.exit_code == 2
    assert "en_US" in result.stderr
    assert untouched(job.parent) == set()


def test_the_demo_writes_into_a_new_folder_only(tmp_path):
    (tmp_path / "mine").mkdir()
    (tmp_path / "mine" / "file").write_text("x")
    assert "another-name" in refused(run("demo", tmp_path / "mine"))
    assert [p.name for p in (tmp_path / "mine").iterdir()] == ["file"]


def test_the_demo_does_not_write_over_a_file(tmp_path):
    (tmp_path / "mine").write_text("x")
    refused(run("demo", tmp_path / "mine"))
    assert (tmp_path / "mine").read_text() == "x"


def test_a_workbook_of_tables_is_never_written_over_a_file(tmp_path):
    (tmp_path / "prices.xlsx").write_text("x")
    assert "already" in refused(run("tables", "workbook", tmp_path / "prices.xlsx"))
    assert (tmp_path / "prices.xlsx").read_text() == "x"


def test_a_workbook_of_tables_into_a_folder_that_is_not_there(tmp_path):
    refused(run("tables", "workbook", tmp_path / "no" / "prices.xlsx"))
    assert not list(tmp_path.iterdir())


def test_a_damaged_job_among_others_is_listed_and_passed_by(job, tmp_path):
    (tmp_path / "other.toml").write_bytes(b"[job]\n\xff\xfe")
    (tmp_path / "other" / "r1" / "internal").mkdir(parents=True)
    (tmp_path / "other" / "r1" / "internal" / "Record.json").write_text("{")
    result = run("jobs", tmp_path)
    assert result.exit_code == 0
    assert "damaged" in result.stdout
    assert "ready" in result.stdout


def test_a_job_for_a_real_customer_is_not_quoted_at_the_invented_place(job):
    job.write_text(job.read_text().replace("demo = true\n", ""))
    refused(run("quote", job))
    assert untouched(job.parent) == set()


@pytest.mark.parametrize(
    "site", ["=1+1", "@x", "12 Elm\U0001f600", "\u202e12 Elm", "A&B <c>", "x" * 300, "'; DROP", "../../up"]
)
def test_any_site_is_quoted_or_refused_in_words(small, site):
    """Names are never formulas, never paths out of the folder."""
    small.write_text(small.read_text().replace("j06-near-small-step, Demo Town", site), encoding="utf-8")
    result = run("quote", small, "--language", "en_US")
    assert result.exit_code in (0, 1)
    assert "mistake of its own" not in result.output
    assert {p.name for p in small.parent.iterdir()} <= {"job.toml", "main.txt", "job"}
    assert not (small.parent.parent / "up").exists()


def test_a_day_before_every_price_is_told_and_not_priced(job):
    assert "price_tables" in refused(run("options", job, "--on", "1900-01-01"))


def test_a_day_after_the_firm_s_papers_end_is_told_and_not_quoted(job):
    assert "license" in refused(run("quote", job, "--on", "9999-12-31"))
    assert untouched(job.parent) == set()


def test_a_folder_of_jobs_that_is_not_there(tmp_path):
    assert "is not there" in refused(run("jobs", tmp_path / "nowhere"))


def test_a_job_file_in_place_of_the_folder_is_listed_alone(job):
    result = run("jobs", job)
    assert result.exit_code == 0
    assert "1 ready" in result.stdout


@pytest.mark.parametrize(
    "words", [("--where", "3-9"), ("--line", "main", "--where", "x"), ("--line", "main", "--where", "")]
)
def test_a_stretch_without_a_line_or_without_numbers_is_a_wrong_command_line(job, words):
    assert run("compare", job, *words).exit_code == 2


@pytest.mark.parametrize("where", ["9000-9100", "-50-3", "20-36.9"])
def test_a_stretch_beyond_the_known_line_is_refused(job, where):
    assert "is not on the main" in refused(run("compare", job, "--line", "main", "--where", where))
    assert run("compare", job, "--line", "main", "--where", "20-36.7").exit_code == 0


def test_a_folder_that_is_not_there_is_named_and_not_a_file_in_the_making(tmp_path):
    told = run("tables", "workbook", tmp_path / "none" / "x.xlsx")
    assert "none is not there." in refused(told) and "-tmp" not in refused(told)
