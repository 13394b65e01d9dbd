"""`tables changes`: what moved, and what it does to the demo job and to every job that is still open."""

import csv
import json
import shutil
from decimal import Decimal
from pathlib import Path

import pytest
from typer.testing import CliRunner, Result

from estimator import demo
from estimator.cli.app import build
from estimator.tables.read import demo_folder

NOTES = Path(demo.__file__).parent
D = Decimal
DAY = ("--on", "2026-11-20")


def run(*words: object) -> Result:
    texts = [str(word) for word in words]
    return CliRunner().invoke(build(texts), texts, env={"COLUMNS": "100"})


@pytest.fixture(name="dearer")
def _dearer(tmp_path: Path) -> Path:
    """The demo's tables with the permit at 200 in place of 150, which is handed on at cost."""
    folder = tmp_path / "dearer"
    shutil.copytree(demo_folder(), folder)
    path = folder / "subs_and_fees.csv"
    rows = list(csv.DictReader(path.open(newline="", encoding="utf-8")))
    changed = [{**row, "cost": "200"} if row["item"] == "permit" else row for row in rows]
    assert changed != rows
    with path.open("w", newline="", encoding="utf-8") as file:
        writer = csv.DictWriter(file, list(rows[0]))
        writer.writeheader()
        writer.writerows(changed)
    return folder


def job(folder: Path) -> Path:
    folder.mkdir(parents=True)
    for name in demo.FILES:
        shutil.copyfile(NOTES / name, folder / name)
    return folder / "job.toml"


def test_the_demo_job_moves_by_what_the_row_moved(dearer: Path) -> None:
    found = json.loads(run("tables", "changes", demo_folder(), dearer, *DAY, "--json").stdout)
    (change,) = found["changes"]
    assert (change["name"], change["old"], change["new"], change["percent"]) == ("permit", "150", "200", "33.3")
    (only,) = found["jobs"]
    moves = {o["option"]: D(o["difference"]) for o in only["options"] if o["difference"]}
    assert any(moves.values()) and set(moves.values()) <= {
        D("0.00"),  # a visit before the repair needs no permit
        D("50.00"),
        D("25.00"),
        D("75.00"),
        D("100.00"),
    }  # whole steps of 25 around 50
    shown = run("tables", "changes", demo_folder(), dearer, *DAY).stdout
    assert "The demo job" in shown and "+33.3 %" in shown and "+$50" in shown


def test_open_jobs_are_priced_both_ways_and_signed_ones_are_left_alone(issued, dearer: Path, tmp_path: Path) -> None:
    folder = tmp_path / "jobs"
    still_open, broken = (job(folder / name) for name in ("open", "broken"))
    signed = issued(folder / "signed")
    assert run("quote", signed, "--accepted", "A", "--on", "2026-11-19").exit_code == 0
    broken.write_text(broken.read_text("utf-8").replace('floor = "slab"', 'floor = "lava"'), "utf-8")
    before = {p: p.read_bytes() for p in folder.rglob("*") if p.is_file()}
    found = json.loads(run("tables", "changes", demo_folder(), dearer, "--jobs", folder, *DAY, "--json").stdout)
    names = [Path(j["job"]).parent.name for j in found["jobs"]]
    assert names == ["demo", "broken", "open"]
    wrong = {Path(j["job"]).parent.name: j["wrong"] for j in found["jobs"]}
    assert wrong["open"] == "" and "lava" in wrong["broken"]
    assert found["jobs"][0]["options"] == found["jobs"][2]["options"]
    assert {p: p.read_bytes() for p in folder.rglob("*") if p.is_file()} == before
    assert str(still_open) in "".join(
        run("tables", "changes", demo_folder(), dearer, "--jobs", folder, *DAY).stdout.split("\n")
    )
