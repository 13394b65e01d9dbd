"""`actuals`: hours typed or read from the crew's workbook, kept beside the revisions, and suggested rates over many jobs."""

import json
import shutil
from pathlib import Path

import openpyxl
import pytest
from typer.testing import CliRunner, Result

from estimator import demo
from estimator.cli.app import build
from estimator.disk.disk import Disk
from estimator.pricing.actuals import Actual
from estimator.records.afterwards.actuals import Worked, keep, worked
from estimator.records.afterwards.sold import sold
from estimator.tables.read import demo_folder
from estimator.wording.say import spoken

NOTES = Path(demo.__file__).parent


def run(*words: object) -> Result:
    texts = [str(word) for word in words]
    return CliRunner().invoke(build(texts), texts, env={"COLUMNS": "100"})


@pytest.fixture(scope="module", name="signed")
def _signed(issued, tmp_path_factory: pytest.TempPathFactory) -> Path:
    job = issued(tmp_path_factory.mktemp("signed") / "one")
    assert run("quote", job, "--accepted", "D", "--on", "2026-11-20").exit_code == 0
    return job


@pytest.fixture(name="job")
def _job(signed: Path, tmp_path: Path) -> Path:
    shutil.copytree(signed.parent, tmp_path / "one")
    return tmp_path / "one" / "job.toml"


def entered(job: Path, *words: object) -> dict:
    done = run("actuals", job, *words, "--json")
    assert done.exit_code == 0, done.output
    return json.loads(done.stdout)


def issued(job: Path) -> dict[str, bytes]:
    revision = job.with_suffix("") / "r1"
    return {str(p): p.read_bytes() for p in revision.rglob("*") if p.is_file()}


def test_typed_hours_stand_beside_the_estimate_with_their_cause_and_touch_no_issued_file(job: Path) -> None:
    before = issued(job)
    found = entered(job, "--task", "hand dig inside", "--hours", 36, "--cause", "soil", "--days", 12)
    (task,) = found["tasks"]
    assert (task["task"], task["actual_hours"], task["cause"]) == ("hand dig inside", 36, "soil")
    assert 0 < task["hours"] != 36
    assert (found["option"], found["days_real"]) == ("D", "12.0")
    assert issued(job) == before
    assert {p.name for p in job.with_suffix("").iterdir()} == {".lock", "accepted r1.json", "actuals.json", "r1"}


def test_hours_of_a_task_take_the_place_of_earlier_ones_unless_they_are_added(job: Path) -> None:
    for _ in range(2):
        assert entered(job, "--task", "saw slab", "--hours", 5)["tasks"][0]["actual_hours"] == 5
    assert entered(job, "--task", "saw slab", "--hours", 2, "--add")["tasks"][0]["actual_hours"] == 7
    both = entered(job, "--task", "saw slab", "--hours", 1, "--task", "saw slab", "--hours", 3)
    assert both["tasks"][0]["actual_hours"] == 4


def test_work_the_estimate_did_not_have_is_named(job: Path) -> None:
    assert entered(job, "--task", "tunnel dig", "--hours", 6, "--cause", "found more")["not_estimated"] == [
        "tunnel dig"
    ]
    assert "tunnel dig: real hours, and none in the estimate" in run("actuals", job).stdout


@pytest.mark.parametrize(
    "words",
    [
        ("--task", "saw slab"),
        ("--hours", "3"),
        ("--task", "saw slab", "--hours", "nan"),
        ("--task", "saw slab", "--hours", "-1"),
        ("--task", "saw slab", "--hours", "3", "--cause", "soil", "--cause", "soil"),
    ],
)
def test_words_that_do_not_belong_together_are_a_wrong_command_line(job: Path, words: tuple[str, ...]) -> None:
    assert run("actuals", job, *words).exit_code == 2
    assert worked(job.with_suffix("")) is None


def filled(
    job: Path, folder: Path, *values: tuple[str, object, object, object], letter: str = "D", language: str = "en_US"
) -> Path:
    """The crew's workbook with (task, actual quantity, hours, cause) written into the first row of each task."""
    made, to = folder / f"crew {language}.xlsx", folder / "back.xlsx"
    if not made.exists():
        done = run("crew", job, "--option", letter, "--language", language, "--out", made)
        assert done.exit_code == 0, done.output
    book = openpyxl.load_workbook(made)
    sheet = next(s for s in book if s.title in (f"Hours {letter}", f"Horas {letter}"))
    for task, real, hours, cause in values:
        row = next(row for row in sheet.iter_rows() if row[1].value == spoken(task, language))
        row[5].value, row[6].value, row[7].value = real, hours, cause
    book.save(to)
    return to


def test_the_crew_s_workbook_that_came_back_says_the_same_as_typing_it(job: Path, tmp_path: Path) -> None:
    typed = entered(job, "--task", "saw slab", "--hours", 7.5, "--cause", "access")["tasks"]
    book = filled(job, tmp_path, ("saw slab", None, 7.5, " Access "))
    assert entered(job, "--from", book)["tasks"] == typed
    assert entered(job, "--from", book)["tasks"] == typed  # read twice is entered once


def test_a_real_quantity_of_the_sheet_counts_as_production_counts_it(job: Path, tmp_path: Path) -> None:
    tasks = [t for t in sold(job.with_suffix("")).tasks if t.task == "backfill hand"]
    first = [t for t in tasks if t.work_item == tasks[0].work_item]  # one row of the sheet: all pipes of a work item
    others = [t for t in tasks if t not in first]
    book = filled(job, tmp_path, ("backfill hand", 100, 7.5, None))
    (task,) = entered(job, "--from", book)["tasks"]
    assert others
    counted = sum(t.quantity * t.per for t in first) / sum(t.quantity for t in first)
    assert task["actual_quantity"] == pytest.approx(100 * counted + sum(t.quantity * t.per for t in others))


def test_a_row_left_as_planned_counts_all_its_pipes(job: Path, tmp_path: Path) -> None:
    tasks = [t for t in sold(job.with_suffix("")).tasks if t.task == "backfill hand"]
    others = sum(t.quantity * t.per for t in tasks if t.work_item != tasks[0].work_item)
    mine = [t for t in tasks if t.work_item == tasks[0].work_item]
    book = filled(job, tmp_path, ("backfill hand", sum(t.quantity for t in mine), 3, None))
    (task,) = entered(job, "--from", book)["tasks"]
    assert task["actual_quantity"] == pytest.approx(sum(t.quantity * t.per for t in mine) + others)


def test_a_crew_s_workbook_in_spanish_is_read_back_the_same(job: Path, tmp_path: Path) -> None:
    english = entered(job, "--from", filled(job, tmp_path, ("saw slab", 30, 7.5, "access")))["tasks"]
    book = filled(job, tmp_path, ("saw slab", 30, 7.5, "acceso"), language="es_US")
    assert openpyxl.load_workbook(book).sheetnames[-1] == "Horas D"
    assert entered(job, "--from", book)["tasks"] == english


def test_the_crew_s_book_is_for_what_was_accepted_and_says_so(job: Path, tmp_path: Path) -> None:
    done = run("crew", job, "--out", tmp_path / "sold.xlsx")
    assert done.exit_code == 0 and "option D, accepted on 2026-11-20" in done.stdout
    work = openpyxl.load_workbook(tmp_path / "sold.xlsx")["Work D"]
    assert "Accepted on November 20, 2026" in [row[0].value for row in work.iter_rows()]
    other = run("crew", job, "--option", "b", "--out", tmp_path / "b.xlsx")
    assert "option B, not accepted yet" in other.stdout
    assert "cli/no-option" in run("crew", job, "--option", "Z", "--out", tmp_path / "z.xlsx").stderr
    assert "cli/file-there" in run("crew", job, "--out", tmp_path / "sold.xlsx").stderr


def test_work_written_in_by_hand_under_the_list_is_read_and_a_name_nobody_knows_is_asked_about(
    job: Path, tmp_path: Path
) -> None:
    book = filled(job, tmp_path, ("saw slab", None, 7.5, None))
    held = openpyxl.load_workbook(book)
    held["Hours D"].append([None, "tunnel dig", None, None, None, None, 6, "found more"])
    held.save(book)
    found = entered(job, "--from", book)
    assert ([t["task"] for t in found["tasks"]], found["not_estimated"]) == (["saw slab"], ["tunnel dig"])
    held = openpyxl.load_workbook(book)  # its pictures are closed once they are saved
    held["Hours D"].append([None, "waiting for the truck", None, None, None, None, 2, None])
    held.save(book)
    said = run("actuals", job, "--from", book)
    assert said.exit_code == 1 and "after/no-task" in said.stderr


def test_an_unreadable_cell_is_named_and_nothing_is_kept(job: Path, tmp_path: Path) -> None:
    book = filled(job, tmp_path, ("saw slab", "lots", "eight", "the dog"))
    said = run("actuals", job, "--from", book)
    assert said.exit_code == 1
    assert {"(after/amount)", "(after/cause)"} <= set(said.stderr.split())
    assert "Hours D" in said.stderr and "eight" in said.stderr
    assert worked(job.with_suffix("")) is None


def test_a_run_that_is_stopped_before_any_step_leaves_the_hours_as_they_were(job: Path) -> None:
    folder = job.with_suffix("")
    done = sold(folder)
    kept = keep(folder, done, [Actual(task="saw slab", hours=5)], None)
    steps: list[str] = []
    keep(folder, done, [Actual(task="saw slab", hours=5)], None, disk=Disk(lambda what, path: steps.append(what)))
    for stop in range(len(steps) - 1):  # after the last one it is done
        count = iter(range(len(steps)))

        def before(what: str, path: Path, stop: int = stop, count=count) -> None:
            if next(count) == stop:
                raise KeyboardInterrupt

        with pytest.raises(KeyboardInterrupt):
            keep(folder, done, [Actual(task="saw slab", hours=9)], None, disk=Disk(before))
        assert worked(folder) == kept
        assert not list(folder.glob("*-tmp")) and not list(folder.glob(".*-tmp"))


def test_without_an_acceptance_the_option_is_named_by_hand(job: Path) -> None:
    (job.with_suffix("") / "accepted r1.json").unlink()
    assert "after/no-option" in run("actuals", job, "--task", "saw slab", "--hours", 5).stderr
    assert entered(job, "--option", "d", "--task", "saw slab", "--hours", 5)["option"] == "D"
    assert isinstance(worked(job.with_suffix("")), Worked)
    assert entered(job)["option"] == "D"


def test_over_several_jobs_rates_are_suggested_and_no_table_is_changed(job: Path, tmp_path: Path) -> None:
    hours = (10, 12, 14, 20)
    for number, took in enumerate(hours):
        copy = tmp_path / f"copy {number}"
        shutil.copytree(job.parent, copy)
        entered(
            copy / "job.toml", "--task", "saw slab", "--hours", took, "--cause", "our error" if took == 20 else "soil"
        )
    shutil.rmtree(job.parent)
    before = {p.name: p.read_bytes() for p in demo_folder().iterdir()}
    (found,) = json.loads(run("actuals", tmp_path, "--suggest", "--json").stdout)
    assert (found["task"], found["jobs"]) == ("saw slab", 3)  # hours lost by our own error say nothing of the next job
    estimate = [t for t in sold(tmp_path / "copy 0" / "job").tasks if t.task == "saw slab"]
    units = sum(t.hours for t in estimate) / estimate[0].each  # hours as priced, over those a unit takes
    assert found["likely"] == pytest.approx(12 / units)
    assert found["low"] < found["likely"] < found["high"]
    shown = run("actuals", tmp_path, "--suggest").stdout
    assert "Nothing is changed by itself" in " ".join(shown.split()) and "Jobs with real hours: 4;" in shown
    assert {p.name: p.read_bytes() for p in demo_folder().iterdir()} == before


def test_fewer_jobs_than_the_firm_asks_for_suggest_nothing(job: Path) -> None:
    entered(job, "--task", "saw slab", "--hours", 9)
    assert json.loads(run("actuals", job.parent, "--suggest", "--json").stdout) == []
    assert "from 3 jobs on" in run("actuals", job.parent, "--suggest").stdout
