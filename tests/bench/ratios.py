"""Whole commands on the demo's job against an interpreter that imports only typer: the first time, and asked again.

The first time nothing is kept yet (`ESTIMATOR_CACHE=no`); asked again, notes and prices are as they were.
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
    rows = [f"| python, `import typer` | {1000 * yardstick:.0f} | 1.0 | {1000 * yardstick:.0f} | 1.0 |"]
    deeds: list[tuple[str, Callable[[], None]]] = [
        (f"`estimator {word}`", lambda word=word: run("-m", "estimator", word, str(JOB))) for word in ("check", "options", "compare")
    ]  # fmt: skip
    with tempfile.TemporaryDirectory() as cache, tempfile.TemporaryDirectory() as folder:
        for name in demo.FILES:
            shutil.copyfile(NOTES / name, Path(folder) / name)
        deeds.append(("`estimator quote`, both languages, all papers", lambda: _quoted(Path(folder))))
        for name, deed in deeds:
            times = [_with(kept, deed) for kept in ("no", cache)]
            cells = " | ".join(f"{1000 * time:.0f} | {time / yardstick:.1f}" for time in times)
            rows.append(f"| {name} | {cells} |")
    return ["| command | first, ms | times typer | again, ms | times typer |", "|---|---:|---:|---:|---:|", *rows]


def _with(kept: str, deed: Callable[[], None]) -> float:
    before = os.environ.get("ESTIMATOR_CACHE")
    os.environ["ESTIMATOR_CACHE"] = kept
    try:
        return middle(deed, TIMES)
    finally:
        os.environ.pop("ESTIMATOR_CACHE")
        if before is not None:
            os.environ["ESTIMATOR_CACHE"] = before


def _quoted(folder: Path) -> None:
    """The first revision, each time anew: what was written before is taken away."""
    shutil.rmtree(folder / "job", ignore_errors=True)
    run("-m", "estimator", "quote", str(folder / "job.toml"))
