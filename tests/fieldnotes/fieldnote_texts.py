"""A small job around a log, for tests: notes in, a Reading out, with no file written but a temporary one."""

import tempfile
from pathlib import Path

from estimator.fieldnotes import Reading, read_job
from estimator.fieldnotes.dumpjob import Dump
from estimator.fieldnotes.lines import LogFiles
from estimator.fieldnotes.reading import read_job_text
from estimator.model.line import Line

JOBS = Path(__file__).parents[1] / "jobs"
HEAD = """
[job]
number = "1"
date = 2026-11-18
prepared_by = "R. Example"

[customer]
name = "A. Customer (invented)"
site = "1 Demo Street"

[house]
floor = "slab"
jurisdiction = "demo"

[[line]]
name = "main"
size = "4 in"
pipe = "cast iron"
log = "main.txt"
"""


class TextFiles(LogFiles):
    """Logs handed over as text instead of lying in a folder."""

    def __init__(self, logs: dict[str, str]) -> None:
        super().__init__(Path("no-such-folder"))
        self.read = list(logs.items())


def reading(log: str, more: str = "", head: str = HEAD) -> Reading:
    return read_job_text(head + more, "job.toml", TextFiles({"main.txt": log}))


def line_of(log: str, more: str = "", head: str = HEAD) -> Line:
    found = reading(log, more, head)
    assert found.job is not None, "\n".join(map(str, found.problems))
    return found.job.lines[0]


def codes(log: str, more: str = "", head: str = HEAD) -> list[str]:
    return [p.code for p in reading(log, more, head).problems]


def read_dump(dump: Dump) -> Reading:
    """Written to a folder and read again, as a person's files would be."""
    with tempfile.TemporaryDirectory() as folder:
        (Path(folder) / "job.toml").write_text(dump.job, "utf-8")
        for name, text in dump.logs:
            (Path(folder) / name).write_bytes(text.encode("utf-8"))
        return read_job(Path(folder) / "job.toml")
