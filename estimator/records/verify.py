"""A workbook that came back in, whether it is as it was issued out: byte for byte, by its cells, or which cells differ."""

import hashlib
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from estimator.model.problem import CannotGoOn, Place
from estimator.records.names import TO_SEND
from estimator.records.problems import NEVER_ISSUED
from estimator.records.revisions import Revision, revisions
from estimator.sheets.read import ReadSheet, read


@dataclass(frozen=True, slots=True)
class Differing:
    """A cell that is not as issued."""

    sheet: str
    cell: str
    issued: str
    now: str


@dataclass(frozen=True, slots=True)
class Verified:
    """The issued file it was held against; `same_bytes`, or the cells that differ (none: saved again, figures untouched)."""

    revision: Revision
    issued: Path
    same_bytes: bool
    cells: tuple[Differing, ...] = ()


def verify(folder: Path, file: Path) -> Verified:
    """Held against everything issued below the job's folder. Errors: CannotGoOn for no workbook, or nothing like it."""
    there = read(file)
    if there.problems:
        raise CannotGoOn(*there.problems)
    digest = hashlib.sha256(file.read_bytes()).hexdigest()
    issued = list(_issued(folder, file.name))
    for revision, path in issued:
        if hashlib.sha256(path.read_bytes()).hexdigest() == digest:
            return Verified(revision, path, same_bytes=True)
    held = [(revision, path, read(path).sheets) for revision, path in issued]
    alike = [(revision, path, sheets) for revision, path, sheets in held if list(sheets) == list(there.sheets)]
    found = [Verified(revision, path, False, tuple(_cells(sheets, there.sheets))) for revision, path, sheets in alike]
    if not found:
        raise CannotGoOn(NEVER_ISSUED(Place(file=str(file))))
    return min(found, key=lambda verified: len(verified.cells))


def _issued(folder: Path, name: str) -> Iterator[tuple[Revision, Path]]:
    """The sent workbooks of that name; all of them where none has it, the newest revision first."""
    files = [(r, path) for r in reversed(revisions(folder)) for path in sorted((r.folder / TO_SEND).glob("*.xlsx"))]
    named = [(revision, path) for revision, path in files if path.name == name]
    yield from named or files


def _cells(issued: dict[str, ReadSheet], now: dict[str, ReadSheet]) -> Iterator[Differing]:
    for name, sheet in issued.items():
        before, after = _by_cell(sheet), _by_cell(now[name])
        for cell in sorted(before.keys() | after.keys(), key=lambda cell: (cell[0], cell[1])):
            if before.get(cell, "") != after.get(cell, ""):
                yield Differing(name, _letters(cell[1]) + str(cell[0]), before.get(cell, ""), after.get(cell, ""))


def _by_cell(sheet: ReadSheet) -> dict[tuple[int, int], str]:
    return {
        (row.number, column): _shown(value)
        for row in sheet.rows
        for column, value in enumerate(row.cells, start=1)
        if value != ""
    }


def _shown(value: object) -> str:
    """Numbers alike whatever program saved them: 4200 and 4200.0 are the same."""
    return f"{value:.10g}" if isinstance(value, int | float) and not isinstance(value, bool) else str(value)


def _letters(column: int) -> str:
    """1 is A, 27 is AA.

    >>> _letters(1), _letters(26), _letters(27)
    ('A', 'Z', 'AA')
    """
    rest, letters = column, ""
    while rest:
        rest, last = divmod(rest - 1, 26)
        letters = chr(ord("A") + last) + letters
    return letters
