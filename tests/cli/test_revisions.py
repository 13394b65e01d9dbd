"""A revision within validity: whose prices it takes, and what of a move was asked for and what are prices."""

import csv
import json
import re
import shutil
from pathlib import Path

import pytest
from typer.testing import CliRunner, Result

from estimator import demo
from estimator.cli.app import build
from estimator.tables.read import demo_folder

NOTES = Path(demo.__file__).parent


def run(*words: object) -> Result:
    texts = [str(word) for word in words]
    return CliRunner().invoke(build(texts), texts, env={"COLUMNS": "120"})


@pytest.fixture(name="first", scope="module")
def _first(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Result]:
    """The demo's job, issued with its tables, in which a plumber earns more from 2026-12-01 on; and what was said."""
    place = tmp_path_factory.mktemp("first")
    for name in demo.FILES:
        shutil.copyfile(NOTES / name, place / name)
    folder = place / "tables"
    shutil.copytree(demo_folder(), folder)
    path = folder / "roles.csv"
    rows = list(csv.DictReader(path.open(newline="", encoding="utf-8")))
    later = [{**row, "wage": str(float(row["wage"]) + 10), "from": "2026-12-01"} for row in rows]
    with path.open("w", newline="", encoding="utf-8") as file:
        writer = csv.DictWriter(file, list(rows[0]))
        writer.writeheader()
        writer.writerows([*rows, *later])
    return place, issue(place / "job.toml", folder)


@pytest.fixture(name="job")
def _job(first: tuple[Path, Result], tmp_path: Path) -> Path:
    """A copy of its own of the job as it was first issued."""
    shutil.copytree(first[0], tmp_path / "own")
    return tmp_path / "own" / "job.toml"


@pytest.fixture(name="tables")
def _tables(job: Path) -> Path:
    return job.with_name("tables")


def record(job: Path, number: int) -> dict:
    return json.loads(next((job.with_suffix("") / f"r{number}").rglob("Record*.json")).read_text("utf-8"))


def totals(job: Path, number: int) -> list[str]:
    return [option["price"]["total"] for option in record(job, number)["quote"]["options"]]


def issue(job: Path, tables: Path, *words: object) -> Result:
    done = run("quote", job, "--tables", tables, *words)
    assert done.exit_code == 0, done.output
    return done


def test_within_validity_a_revision_keeps_the_prices_and_the_last_day_of_the_first_issue(
    job: Path, tables: Path
) -> None:
    said = issue(job, tables, "--on", "2026-12-18").stdout  # 2026-11-18 and 30 days: the last day of the offer
    assert "Prices of 2026-11-18 hold until 2026-12-18" in said
    assert totals(job, 2) == totals(job, 1)
    kept = record(job, 2)
    assert (kept["day"], kept["dated"], kept["quote"]["valid_until"]) == ("2026-11-18", "2026-12-18", "2026-12-18")
    assert "byte for byte" in run("quote", job, "--again", "r2").stdout


def test_a_day_after_the_offer_the_prices_are_those_of_the_day(job: Path, tables: Path) -> None:
    said = issue(job, tables, "--on", "2026-12-19").stdout
    assert "hold until" not in said
    assert all(float(new) > float(old) for old, new in zip(totals(job, 1), totals(job, 2), strict=True))
    assert record(job, 2)["quote"]["valid_until"] == "2027-01-18"


def test_today_s_prices_are_taken_when_told_to(job: Path, tables: Path) -> None:
    issue(job, tables, "--on", "2026-12-02", "--today")
    assert all(float(new) > float(old) for old, new in zip(totals(job, 1), totals(job, 2), strict=True))
    assert record(job, 2)["day"] == "2026-12-02"


def test_a_list_of_changes_on_the_same_notes_is_all_prices(job: Path, tables: Path) -> None:
    issue(job, tables, "--on", "2026-12-02", "--today")
    found = json.loads(run("changes", job, "--json").stdout)
    both = [o for o in found["options"] if all(o[k] is not None for k in MOVE)]  # another may have become the cheaper
    assert len(both) >= 4
    for option in both:
        before, prices, found_, asked, after = (float(option[k]) for k in MOVE)
        assert (prices > 0, found_, asked) == (True, 0, 0)
        assert before + prices == after
    assert {c["because"] for c in found["changes"]} == {"", "prices moved"}
    shown = run("changes", job).stdout
    assert "prices moved" in shown and "Prices moved: the tables" in shown and "You asked" not in shown


MOVE = ("before", "prices", "found", "asked", "after")


def test_the_list_of_changes_parts_findings_and_wishes_from_prices_that_moved(job: Path, tables: Path) -> None:
    """A way to the truck measured anew is found, a discount is asked for: neither is taken for the other."""
    text = job.read_text("utf-8")
    text = text.replace('carry = "35 ft"', 'carry = "150 ft"')
    job.write_text(text + '\n[[discount]]\nreason = "next door"\namount = 150\n', "utf-8")
    issue(job, tables, "--on", "2026-12-02", "--today")
    found = json.loads(run("changes", job, "--json").stdout)
    both = [[float(o[k]) for k in MOVE] for o in found["options"] if all(o[k] is not None for k in MOVE)]
    assert any(farther > 0 and dearer > 0 for _, dearer, farther, _, _ in both)
    taken = [asked for *_, asked, _ in both]
    assert taken.count(0) <= 1, "a visit before a repair keeps its price"
    assert all(asked == pytest.approx(-150, abs=25) for asked in taken if asked), "rounded to the price step"
    assert all(sum(moves) == after for *moves, after in both)
    because = {c["what"] + c["before"] + c["after"]: c["because"] for c in found["changes"]}
    assert because['job.tomlcarry = "150 ft"'] == "what was found"
    assert because["job.tomlamount = 150"] == "you asked"
    shown = run("changes", job).stdout
    for head in ("You asked", "What was found: the notes, word for word", "Prices moved: the tables"):
        assert head in shown.splitlines()
    # one change alone moves the price by what the list says: the same notes at the old prices
    run("quote", job, "--tables", tables, "--on", "2026-11-18", "--today")
    assert record(job, 3)["day"] == "2026-11-18"


def _write_over(tables: Path, item: str, cost: str) -> None:
    path = tables / "materials.csv"
    rows = list(csv.DictReader(path.open(newline="", encoding="utf-8")))
    for row in rows:
        row["cost"] = cost if row["item"] == item else row["cost"]
    with path.open("w", newline="", encoding="utf-8") as file:
        writer = csv.DictWriter(file, list(rows[0]))
        writer.writeheader()
        writer.writerows(rows)


def test_a_price_written_over_its_old_row_is_named_where_it_reaches_an_offer_that_holds(
    job: Path, tables: Path, first: tuple[Path, Result]
) -> None:
    _write_over(tables, "liner-4", "95")
    edited = issue(job, tables, "--on", "2026-12-10")
    said = " ".join(edited.stderr.split())
    assert "records/prices-edited" in said and "records/prices-edited" not in first[1].stderr
    assert re.search(r"liner-4, cost [\d.]+ → 95", said) and "offer holds until 2026-12-18" in said
    assert "--today prices it anew" in said and "--today prices it anew" in edited.stdout
    text = job.read_text("utf-8")
    job.write_text(text.replace('slab_thickness = "4 in"', 'slab_thickness = "5 in"'), "utf-8")
    assert "prices-edited" not in issue(job, tables, "--on", "2026-12-10").stderr, "the newest record has it now"


def test_a_price_with_a_day_of_its_own_or_after_the_offer_is_no_edited_one(job: Path, tables: Path) -> None:
    text = job.read_text("utf-8")
    job.write_text(text.replace('slab_thickness = "4 in"', 'slab_thickness = "5 in"'), "utf-8")
    assert "prices-edited" not in issue(job, tables, "--on", "2026-12-10").stderr
    _write_over(tables, "liner-4", "95")
    assert "prices-edited" not in issue(job, tables, "--on", "2026-12-19").stderr
