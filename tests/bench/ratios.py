"""Whole commands on the demo's job against an interpreter that imports only typer: nothing kept, another job, and asked again.

With nothing kept `ESTIMATOR_CACHE=no`. Another job: the words of the notes and the price tables are kept from jobs before. Asked
again: notes and prices are as they were.
"""

import os
import shutil
import tempfile
from collections.abc import Callable
from pathlib import Path

from estimator import demo
from tests.bench.clock import middle, run
from tests.bench.on_the_way import JOB, NOTES

TIMES = 5


def ratios() -> list[str]:
    yardstick = middle(lambda: run("-c", "import typer"), 3 * TIMES)
    same = f"{1000 * yardstick:.0f} | 1.0"
    rows = [f"| python, `import typer` | {same} | {same} | {same} |"]
    with tempfile.TemporaryDirectory() as cache, tempfile.TemporaryDirectory() as folder:
        for name in demo.FILES:
            shutil.copyfile(NOTES / name, Path(folder) / name)
        job = Path(folder) / JOB.name
        deeds: list[tuple[str, Callable[[], None]]] = [
            (f"`estimator {word}`", lambda word=word: run("-m", "estimator", word, str(job))) for word in ("check", "options", "compare")
        ]  # fmt: skip
        deeds.append(("`estimator quote`, both languages, all papers", lambda: _quoted(job)))
        for name, deed in deeds:
            times = (_with("no", deed), _with(cache, lambda deed=deed: _of_another(job, deed)), _with(cache, deed))
            cells = " | ".join(f"{1000 * time:.0f} | {time / yardstick:.1f}" for time in times)
            rows.append(f"| {name} | {cells} |")
    head = " | ".join(f"{how}, ms | times typer" for how in ("nothing kept", "another job", "again"))
    return [f"| command | {head} |", f"|---|{'---:|' * 6}", *rows]


def _with(kept: str, deed: Callable[[], None]) -> float:
    before = os.environ.get("ESTIMATOR_CACHE")
    os.environ["ESTIMATOR_CACHE"] = kept
    try:
        return middle(deed, TIMES)
    finally:
        os.environ.pop("ESTIMATOR_CACHE")
        if before is not None:
            os.environ["ESTIMATOR_CACHE"] = before


def _of_another(job: Path, deed: Callable[[], None]) -> None:
    """The same house under a job file that nobody has asked about."""
    with job.open("a", encoding="utf-8") as file:
        file.write("# another\n")
    deed()


def _quoted(job: Path) -> None:
    """The first revision, each time anew: what was written before is taken away."""
    shutil.rmtree(job.with_suffix(""), ignore_errors=True)
    run("-m", "estimator", "quote", str(job))
