"""Real hours of a job in, kept beside its revisions; what was kept out."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import replace
from decimal import Decimal
from difflib import get_close_matches
from pathlib import Path
from typing import Any

from estimator.disk.disk import Disk
from estimator.model.frozen import Frozen
from estimator.model.problem import CannotGoOn, Place, Problem
from estimator.model.say import Say
from estimator.pricing.actuals import CAUSES, Actual
from estimator.records.afterwards.problems import DAMAGED, NO_TASK, UNKNOWN_CAUSE
from estimator.records.afterwards.sold import Sold
from estimator.records.lock import locked
from estimator.records.note import in_plain_words, read_note, write_note

NAME = "actuals.json"


class Worked(Frozen, kw_only=True):
    """The hours of one option as they turned out; `days` are crew days in all, None where nobody said."""

    revision: int
    option: str
    entries: tuple[Actual, ...] = ()
    days: Decimal | None = None


def worked(folder: Path) -> Worked | None:
    """What was kept, None where nothing was. Errors: CannotGoOn when it is damaged."""
    return read_note(folder / NAME, _made, DAMAGED)


def _made(held: Mapping[str, Any]) -> Worked:
    return Worked(
        revision=int(held["revision"]),
        option=str(held["option"]),
        entries=tuple(_entry(entry) for entry in held["entries"]),
        days=None if held["days"] is None else Decimal(held["days"]),
    )


def _entry(held: Mapping[str, Any]) -> Actual:
    amounts = [float(held["hours"]), *(float(held[q]) for q in ("quantity",) if held[q] is not None)]
    if not all(math.isfinite(amount) and amount >= 0 for amount in amounts):
        raise ValueError("hours and quantities are numbers of 0 or more")
    quantity = amounts[1] if len(amounts) > 1 else None
    return Actual(
        task=str(held["task"]), hours=amounts[0], quantity=quantity, cause=str(held["cause"]), note=str(held["note"])
    )


def keep(
    folder: Path,
    done: Sold,
    entries: Sequence[Actual],
    days: Decimal | None,
    add: bool = False,
    disk: Disk | None = None,
) -> Worked:
    """What is entered takes the place of what was entered for the same tasks; with `add` it comes on top.

    Hours of another option or revision are put by in a file of their own: hours are held against what was sold.
    Errors: CannotGoOn with every task and cause that nobody knows; the disk's refusals.
    """
    if wrong := _unknown(done, entries, folder):
        raise CannotGoOn(*wrong)
    with in_plain_words(folder, done.revision.number), locked(folder):
        mine = Worked(revision=done.revision.number, option=done.letter)
        held = worked(folder)
        if held is not None and (held.revision, held.option) == (mine.revision, mine.option):
            mine = held
        elif held is not None:
            write_note(folder / f"actuals r{held.revision} {held.option}.json", held, disk)
        tasks = {entry.task for entry in entries}
        left = mine.entries if add else tuple(e for e in mine.entries if e.task not in tasks)
        kept = replace(mine, entries=(*left, *entries), days=mine.days if days is None else days)
        write_note(folder / NAME, kept, disk)
    return kept


def _unknown(done: Sold, entries: Sequence[Actual], folder: Path) -> list[Problem]:
    """A task nobody planned but the firm does know may be entered: it is work that was forgotten, or found."""
    place = Place(file=str(folder))
    planned = list(dict.fromkeys(task.task for task in done.tasks))
    known = {*planned, *done.tasks_known}
    wrong = []
    for task in dict.fromkeys(e.task for e in entries):
        if task not in known:
            close = get_close_matches(task, sorted(known), 1)
            near = Say.of("Did you mean “{word}”?", word=close[0]) if close else ""
            wrong.append(NO_TASK(place, task=task, near=near, tasks=", ".join(planned)))
    causes = ", ".join(c for c in CAUSES if c)
    return wrong + [
        UNKNOWN_CAUSE(place, cause=c, causes=causes) for c in dict.fromkeys(e.cause for e in entries) if c not in CAUSES
    ]
