"""A log whose name ends in capitals is a log: a what-if takes it along, and repricing sees that it changed."""

import shutil
from datetime import date
from pathlib import Path

from estimator import demo
from estimator.cli.diagnosed_job import changed
from estimator.records.reprice import fingerprint
from estimator.tables.read import demo_folder, read_tables

DAY = date(2026, 11, 25)


def _in_capitals(folder: Path) -> Path:
    shutil.copytree(Path(demo.__file__).parent, folder)
    (folder / "main.txt").rename(folder / "MAIN.TXT")
    job = folder / "job.toml"
    job.write_text(job.read_text(encoding="utf-8").replace("main.txt", "MAIN.TXT"), encoding="utf-8")
    return job


def test_a_what_if_takes_the_log_along(tmp_path):
    with changed(_in_capitals(tmp_path / "house"), ["soil=rock"]) as copy:
        assert (copy.parent / "MAIN.TXT").is_file()


def test_a_changed_log_makes_another_sum(tmp_path):
    job, tables = _in_capitals(tmp_path / "house"), read_tables(demo_folder(), DAY).tables
    before = fingerprint(job, tables, DAY)
    (job.parent / "MAIN.TXT").write_text("pass cleanout to end\n", encoding="utf-8")
    assert fingerprint(job, tables, DAY) != before
