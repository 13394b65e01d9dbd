"""A job's folder in, what a shell needs of its records out, read in a moment: no record is checked, none is rebuilt."""

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from estimator.records.names import INTERNAL
from estimator.records.summary import chosen_in, read_summary


def summaries(folder: Path) -> Iterator[tuple[str, dict[str, Any]]]:
    """Each revision with its summary, the oldest first. Errors: OSError or ValueError for a damaged one."""
    for number in _numbers(folder):
        yield f"r{number}", read_summary(_record(folder, number))


def chosen_last(folder: Path) -> tuple[str, ...] | None:
    """The add-ons chosen for the newest revision at its writing; None where there is none, it is damaged, or chose none."""
    try:
        return chosen_in(list(summaries(folder))[-1][1]) or None
    except (OSError, ValueError, IndexError, StopIteration):
        return None


def options_of(folder: Path) -> list[dict[str, Any]]:
    """The options of the newest revision as they stand in its record. Errors: as above."""
    held = json.loads(_record(folder, _numbers(folder)[-1]).read_text(encoding="utf-8"))
    return list(held["quote"]["options"])


def _numbers(folder: Path) -> list[int]:
    return sorted(int(p.name[1:]) for p in folder.iterdir() if p.name[:1] == "r" and p.name[1:].isdecimal())


def _record(folder: Path, number: int) -> Path:
    return next((folder / f"r{number}" / INTERNAL).glob("*.json"))
