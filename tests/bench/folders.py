"""`estimator jobs` on folders of 10 to 10,000 jobs: issued ones, of which only the record's head is read, and ready ones.

A record here is the demo's own, cut to the length that a list reads and closed again; every tenth job is damaged.
"""

import shutil
import tempfile
from datetime import date
from pathlib import Path

from estimator import demo
from estimator.cli import issuing
from estimator.cli.commands.jobs import listed
from estimator.records.job_status import job_files
from estimator.records.summary import ENOUGH
from tests.bench.clock import middle, run

NOTES = Path(demo.__file__).parent
HOUSES = Path(__file__).parents[1] / "cases/houses"
DAY = date(2026, 11, 25)
ISSUED, READY = (10, 100, 1000, 10000), (10, 100, 1000)
DAMAGED_EVERY = 10


def folders() -> list[str]:
    out = ["| jobs | state | processor seconds | ms a job |", "|---:|---|---:|---:|"]
    with tempfile.TemporaryDirectory() as place:
        record = _record(Path(place) / "one")
        for count in ISSUED:
            folder = _issued(Path(place) / f"issued{count}", count, record)
            out.append(_row(folder, count, "issued"))
        for count in READY:
            out.append(_row(_ready(Path(place) / f"ready{count}", count), count, "ready: notes are read"))
        out += _reprice(Path(place))
    return out


def _row(folder: Path, count: int, state: str) -> str:
    assert len(listed(folder, DAY)) == count
    seconds = middle(lambda: run("-m", "estimator", "jobs", str(folder), "--on", str(DAY)), 1)
    return f"| {count:,} | {state} | {seconds:.2f} | {1000 * seconds / count:.2f} |"


def _record(folder: Path) -> bytes:
    """The head of a real record, closed as a whole one is."""
    _notes(folder)
    issuing.written(folder / "job.toml", None, None, ("en_US",))
    whole = next((folder / "job" / "r1" / "internal").glob("*.json")).read_bytes()
    return whole[: 2 * ENOUGH] + b"\n}\n"


def _notes(folder: Path) -> None:
    folder.mkdir(parents=True)
    for name in demo.FILES:
        shutil.copyfile(NOTES / name, folder / name)


def _issued(folder: Path, count: int, record: bytes) -> Path:
    for i in range(count):
        inside = folder / f"{i:05}" / "job" / "r1" / "internal"
        inside.mkdir(parents=True)
        (folder / f"{i:05}" / "job.toml").write_text("[job]\n")
        whole = i % DAMAGED_EVERY != DAMAGED_EVERY - 1
        (inside / "Record.json").write_bytes(record if whole else record[:100])
    return folder


def _ready(folder: Path, count: int) -> Path:
    for i in range(count):
        _notes(folder / f"{i:05}")
    return folder


def _reprice(place: Path) -> list[str]:
    """The demo's job many times, and the houses of the tests, priced anew over all cores."""
    demos, houses = _ready(place / "anew", 40), place / "houses"
    shutil.copytree(HOUSES, houses, ignore=shutil.ignore_patterns("expect.toml", "*.py"))
    return [
        _row_of(folder, f"`--reprice`, {kind}")
        for folder, kind in ((demos, "the demo"), (houses, "houses of the tests"))
    ]


def _row_of(folder: Path, state: str) -> str:
    names, count = iter(range(10)), len([*job_files(folder)])

    def anew() -> None:
        run("-m", "estimator", "jobs", str(folder), "--reprice", "--to", f"{folder}{next(names)}.xlsx")

    seconds = middle(anew, 1)
    return f"| {count} | {state} | {seconds:.2f} | {1000 * seconds / count:.0f} |"
