"""A workbook that came back in, whether it is as it was issued out: byte for byte, by its cells, or which cells differ."""

import hashlib
import re
from collections.abc import Iterator
from pathlib import Path

from estimator.disk.whole import read_bytes
from estimator.model.frozen import Frozen
from estimator.model.problem import CannotGoOn, Place
from estimator.records.problems import NEVER_ISSUED
from estimator.records.revisions import TO_SEND, Revision, revisions
from estimator.sheets.cell_text import MISSING, SHOWN, Seen, cell_texts
from estimator.sheets.filled import ToFill, to_fill
from estimator.sheets.read import read

MOSTLY = 0.5  # of its sheets tell which paper it was


class Differing(Frozen):
    """A cell that is not as issued, or a row, a column or a sheet that is hidden now."""

    sheet: str
    cell: str
    issued: str
    now: str


class Verified(Frozen):
    """The issued file it was held against; `same_bytes`, or the cells that differ (none: saved again, figures untouched).

    `filled` is what somebody wrote where the paper leaves room for it; `marked` the cells of the boxes among them.
    """

    revision: Revision
    issued: Path
    same_bytes: bool
    cells: tuple[Differing, ...] = ()
    filled: tuple[Differing, ...] = ()
    marked: tuple[tuple[str, str], ...] = ()  # sheet and short name, in the order of the sheets
    unclear: tuple[tuple[str, str, str], ...] = ()  # and what stands in a box that is no x


def verify(folder: Path, file: Path) -> Verified:
    """Held against everything issued below the job's folder. Errors: CannotGoOn for no workbook, or nothing like it."""
    there = read(file)
    if there.problems:
        raise CannotGoOn(*there.problems)
    digest = hashlib.sha256(read_bytes(file)).hexdigest()
    issued = list(_issued(folder, file.name))
    for revision, path in issued:
        if hashlib.sha256(read_bytes(path)).hexdigest() == digest:
            return Verified(revision, path, same_bytes=True)
    now = cell_texts(file)
    held = [(revision, path, cell_texts(path)) for revision, path in issued]
    alike = [(revision, path, sheets) for revision, path, sheets in held if _same_paper(sheets, now)]
    found = [_parted(revision, path, sheets, now) for revision, path, sheets in alike]
    if not found:
        raise CannotGoOn(NEVER_ISSUED(Place(file=str(file))))
    return min(found, key=lambda verified: len(verified.cells))


def _issued(folder: Path, name: str) -> Iterator[tuple[Revision, Path]]:
    """The sent workbooks of that name; all of them where none has it, the newest revision first."""
    files = [(r, path) for r in reversed(revisions(folder)) for path in sorted((r.folder / TO_SEND).glob("*.xlsx"))]
    named = [(revision, path) for revision, path in files if path.name == name]
    yield from named or files


def _same_paper(issued: dict[str, Seen], now: dict[str, Seen]) -> bool:
    """The same sheets, some of them alone, or most: then the paper is known, and what is missing or new can be named."""
    shared = len(issued.keys() & now.keys())
    return shared > 0 and (shared == len(now) or shared > MOSTLY * max(len(issued), len(now)))


def _parted(revision: Revision, path: Path, issued: dict[str, Seen], now: dict[str, Seen]) -> Verified:
    """What was written where the paper leaves room, with the sums that count it, apart from what was changed."""
    room = to_fill(path)
    changed, filled = [], []
    for cell in _differing(issued, now):
        here = room.get(cell.sheet)
        if here and cell.cell in here.cells:
            filled.append(cell)
        elif not (here and _counts_marks(here, cell, now.get(cell.sheet, {}))):
            changed.append(cell)
    sums = [(sheet, one) for sheet, here in room.items() for one in here.sums if sheet in now]
    marked = [(sheet, one.names[box]) for sheet, one in sums for box in one.marked(now[sheet])]
    unclear = [(sheet, one.names[box], word) for sheet, one in sums for box, word in one.unclear(now[sheet])]
    return Verified(revision, path, False, tuple(changed), tuple(filled), tuple(marked), tuple(unclear))


def _counts_marks(room: ToFill, cell: Differing, now: Seen) -> bool:
    """A sum that differs by just what is marked."""
    before, _, rest = cell.issued.partition(" ")
    sums = {one.cell: one.counted(now) for one in room.sums}
    return bool(before) and cell.cell in sums and cell.now == f"{float(sums[cell.cell]):.10g} {rest}"


def _differing(issued: dict[str, Seen], now: dict[str, Seen]) -> Iterator[Differing]:
    """Every cell with words or numbers counts, in the order of the sheet; before them what is hidden; before all, whole sheets."""
    yield from (Differing(name, "sheet", SHOWN, MISSING) for name in issued if name not in now)
    yield from (Differing(name, "sheet", MISSING, SHOWN) for name in now if name not in issued)
    for name in (name for name in issued if name in now):
        before, after = issued[name], now[name]
        for at in sorted(before.keys() | after.keys(), key=_order):
            if before.get(at, "") != after.get(at, "") and not _not_calculated(before.get(at, ""), after.get(at, "")):
                blank = SHOWN if _order(at)[0] == 0 else ""
                yield Differing(name, at, before.get(at, blank), after.get(at, blank))


def _not_calculated(issued: str, now: str) -> bool:
    """The same formula, whose value the program that saved it left out: it comes back as soon as a program calculates."""
    return now.startswith(" =") and issued.endswith(now)


def _order(at: str) -> tuple[int, int, str]:
    """Cells by row, then by column; what is hidden first, since it is easily missed.

    >>> sorted(["A10", "AA2", "B2", "row 3"], key=_order)
    ['row 3', 'B2', 'AA2', 'A10']
    """
    found = re.fullmatch(r"([A-Z]+)(\d+)", at)
    return (int(found[2]), len(found[1]), found[1]) if found else (0, 0, at)
