"""A purchase list in, one workbook for the office out: a table a supplier, what each line comes to, nothing of prices sold."""

from collections.abc import Sequence
from datetime import date
from decimal import Decimal
from itertools import groupby

from estimator.model.money import cents
from estimator.model.purchase import Purchase
from estimator.papers.inside import close, head, inside_page
from estimator.papers.page import Page, at, sum_of
from estimator.sheets.book import Book, Cell, Formula
from estimator.wording.plain import UNITS, in_plain_words
from estimator.wording.say import say, shown, speaker

WIDTHS = (16.0, 46.0, 10.0, 12.0, 10.0, 12.0, 13.0, 22.0)
QUANTITY, COST, AMOUNT = 2, 5, 6


def heads(language: str) -> tuple[str, ...]:
    """The heads of the list as plain rows, the supplier first."""
    speak = speaker(language)
    return (speak("supplier"), speak("part no."), speak("item"), speak("material"), speak("quantity"), speak("unit"),
            speak("pack"), speak("cost a unit"), speak("jobs"))  # fmt: skip


def purchase_book(found: Sequence[Purchase], day: date, accent: str, language: str) -> Book:
    """One sheet: every supplier under its name with its sum, then the sum of all."""
    speak = speaker(language)
    page = inside_page(speak("Purchase list"), WIDTHS, speak("Purchase list"), speak("INTERNAL – do not send"))
    sums: list[str] = []
    for supplier, lines in groupby(found, key=lambda one: one.supplier):
        sums.append(_supplier(page, supplier or speak("No supplier in the tables"), list(lines), language))
    whole = sum((cents(one.quantity * one.unit_cost) for one in found), Decimal(0))
    page.add(Cell(speak("All suppliers, before sales tax"), "total words", AMOUNT), Cell(sum_of(sums, whole), "total"))
    page.line(speak("Packs are rounded once for all jobs together. Small parts are not on this list."), "quiet")
    return Book(title=page.name, day=day, accent=accent, sheets=(close(page, f"{speak('INTERNAL')} {day}"),))


def _supplier(page: Page, name: str, lines: Sequence[Purchase], language: str) -> str:
    """The table of one supplier; the cell of its sum."""
    speak = speaker(language)
    page.heading(name)
    head(page, (speak("part no."), speak("material"), speak("quantity"), speak("unit"), speak("pack"), speak("cost a unit"),
                speak("amount"), speak("jobs")), QUANTITY)  # fmt: skip
    rows = [_line(page, one, language) for one in lines]
    amount = sum((cents(one.quantity * one.unit_cost) for one in lines), Decimal(0))
    total = sum_of([f"{at(AMOUNT, rows[0])}:{at(AMOUNT, rows[-1])}"], amount)
    row = page.add(Cell(speak("Sum"), "sum words", AMOUNT), Cell(total, "sum"))
    page.gap()
    return at(AMOUNT, row)


def _line(page: Page, one: Purchase, language: str) -> int:
    row = len(page.rows)
    product = Formula(f"=ROUND({at(QUANTITY, row)}*{at(COST, row)},2)", cents(one.quantity * one.unit_cost))
    unit = say(in_plain_words(UNITS, one.unit), language)
    return page.add(
        Cell(one.part_no, "cell"),
        Cell(shown(one.words, language), "cell"),
        Cell(one.quantity, "number"),
        Cell(unit, "cell"),
        Cell(one.pack or None, "number"),
        Cell(one.unit_cost, "money"),
        Cell(product, "money"),
        Cell(", ".join(one.jobs), "cell"),
    )
