"""Rows of a long run in, a small file beside the folder out; a run that was stopped finds there what was done."""

import json
from collections.abc import Mapping
from decimal import Decimal
from pathlib import Path
from typing import Any

from estimator.records.plain import plain
from estimator.records.reprice import OptionMove, Repriced


def kept_beside(folder: Path) -> Path:
    """`jobs` has `jobs.repricing` beside it.

    >>> kept_beside(Path("jobs")).name
    'jobs.repricing'
    """
    whole = folder.resolve()
    return whole.with_name(f"{whole.name}.repricing")


def kept(path: Path) -> dict[str, Repriced]:
    """Rows by their fingerprint; a line that was cut short is as if it were not there."""
    found: dict[str, Repriced] = {}
    if not path.is_file():
        return found
    for line in path.read_text(encoding="utf-8", errors="replace").splitlines():
        try:
            held = json.loads(line)
            found[held["of"]] = _row(held["row"])
        except (ValueError, KeyError, TypeError, ArithmeticError):
            continue
    return found


def keep(path: Path, of: str, row: Repriced) -> None:
    """Adds one row; a single write, so that a stop leaves at most one line cut short."""
    with path.open("a", encoding="utf-8") as file:
        file.write(json.dumps({"of": of, "row": plain(row)}, ensure_ascii=False) + "\n")


def _row(held: Mapping[str, Any]) -> Repriced:
    moves = tuple(
        OptionMove(option=move["option"], issued=_money(move["issued"]), now=_money(move["now"]))
        for move in held["moves"]
    )
    return Repriced(**{**held, "moves": moves})


def _money(text: str | None) -> Decimal | None:
    return None if text is None else Decimal(text)
