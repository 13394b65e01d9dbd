"""What every job would cost on new tables in, one workbook for the office out. Nothing of it leaves the house."""

from collections.abc import Iterable
from datetime import date
from decimal import Decimal

from estimator.model.frozen import Frozen
from estimator.model.money import cents
from estimator.papers.inside import close, head, inside_page
from estimator.papers.page import at, sum_of
from estimator.sheets.book import Book, Cell, Formula, Sheet
from estimator.wording.numbers import long_date

WIDTHS = (26.0, 11.0, 26.0, 9.0, 26.0, 13.0, 13.0, 13.0, 9.0)
WRONG_WIDTHS = (40.0, 90.0)
HEADS = ("Job", "Number", "Site", "Revision", "Option", "Issued", "On these tables", "Moves by", "Percent")
ISSUED, NOW, MOVED = 5, 6, 7
LANGUAGE = "en_US"


class Move(Frozen, kw_only=True):
    """One option of one job; None where it was not issued, or is no longer offered."""

    job: str
    number: str
    site: str
    revision: str
    option: str
    issued: Decimal | None
    now: Decimal | None


class Repricing(Frozen):
    """All of them, those left out with the reason, and which tables of which day it was."""

    moves: tuple[Move, ...]
    wrong: tuple[tuple[str, str], ...]
    fingerprint: str
    day: date
    accent: str


def repriced_book(held: Repricing) -> Book:
    """What would change, largest move first; then what could not be priced."""
    return Book(
        title="What new price tables would change",
        day=held.day,
        accent=held.accent,
        sheets=(_moves(held), *([_wrong(held)] if held.wrong else [])),
    )


def _moves(held: Repricing) -> Sheet:
    page = inside_page("What would change", WIDTHS, "What new price tables would change")
    page.line(f"Tables {held.fingerprint}, prices of {long_date(held.day, LANGUAGE)}. Nothing was issued.", "quiet")
    page.gap()
    top = head(page, HEADS, ISSUED)
    rows = [page.add(*_cells(move, top + 1 + i)) for i, move in enumerate(_ordered(held.moves))]
    both = [m for m in held.moves if m.issued is not None and m.now is not None]
    if rows:
        moved = sum(((m.now or Decimal(0)) - (m.issued or Decimal(0)) for m in both), Decimal(0))
        total = sum_of([f"{at(MOVED, rows[0])}:{at(MOVED, rows[-1])}"], moved)
        page.add(Cell(f"{len(both)} options were issued and are offered still", "sum words", MOVED), Cell(total, "sum"))
    else:
        page.line("There is no job to price.", "quiet")
    return close(page, f"INTERNAL repricing {held.day}", (top, top))


def _ordered(moves: Iterable[Move]) -> list[Move]:
    return sorted(moves, key=lambda m: (-abs(_difference(m)), m.job, m.option))


def _difference(move: Move) -> Decimal:
    return move.now - move.issued if move.issued is not None and move.now is not None else Decimal(0)


def _cells(move: Move, row: int) -> tuple[Cell, ...]:
    words = tuple(Cell(text, "cell") for text in (move.job, move.number, move.site, move.revision, move.option))
    if move.issued is None:
        return (*words, Cell("new", "cell"), Cell(move.now, "money"), Cell("", "cell"), Cell("", "cell"))
    if move.now is None:
        return (*words, Cell(move.issued, "money"), Cell("not offered", "cell"), Cell("", "cell"), Cell("", "cell"))
    difference = Formula(f"=ROUND({at(NOW, row)}-{at(ISSUED, row)},2)", cents(move.now - move.issued))
    share = Formula(f"={at(MOVED, row)}/{at(ISSUED, row)}", float((move.now - move.issued) / move.issued))
    percent = Cell(share, "percent") if move.issued else Cell("", "cell")
    return (*words, Cell(move.issued, "money"), Cell(move.now, "money"), Cell(difference, "money"), percent)


def _wrong(held: Repricing) -> Sheet:
    page = inside_page("Left out", WRONG_WIDTHS, "These jobs could not be priced")
    head(page, ("Job", "Why"), len(WRONG_WIDTHS))
    for job, why in held.wrong:
        page.add(Cell(job, "cell"), Cell(why, "cell"))
    return close(page, f"INTERNAL repricing {held.day}")
