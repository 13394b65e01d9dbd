"""What may be added to an option, in the reader's words: boxes to mark, their total, and what was chosen."""

from decimal import Decimal

from estimator.model.add_on import AddOn
from estimator.papers.letter import Letter
from estimator.papers.line_items import short
from estimator.papers.page import Page, at
from estimator.papers.sizes import size
from estimator.sheets.book import Cell, Formula
from estimator.sheets.filled import marked
from estimator.wording.say import pick

BOX, AMOUNT = 0, 2
"""Columns of the box and the price; the text between them ends with the short name in parentheses."""


def add_on_rows(letter: Letter, page: Page) -> None:
    """A box to mark beside each thing that may be added to the firm-priced options, and the sum of what is marked."""
    speak, rows = letter.speak, []
    offered: dict[tuple[str, Decimal], list[tuple[str, AddOn]]] = {}
    firm = [o for o in letter.quote.options if o.fixed]
    for option in firm:
        for add_on in option.open_add_ons:
            offered.setdefault((add_on.code, add_on.price), []).append((option.letter, add_on))
    if not offered:
        return
    page.line(
        speak("Extra work: mark it with an x; we reprint this page."),
        "bold",
    )
    for those in offered.values():
        letters = "" if len(those) == len(firm) else f"{', '.join(letter_ for letter_, _ in those)}: "
        rows.append(_row(letter, page, letters, those[0][1]))
    boxes, prices = (f"{at(column, rows[0])}:{at(column, rows[-1])}" for column in (BOX, AMOUNT))
    page.add(
        Cell("", "sum words"),
        Cell(speak("What you marked"), "sum words"),
        Cell(Formula(marked(boxes, prices), Decimal(0)), "sum"),
    )
    if any(a.tax for those in offered.values() for _, a in those):
        page.line(speak("Sales tax is in these prices."), "quiet")
    page.gap(4)


def _row(letter: Letter, page: Page, letters: str, add_on: AddOn) -> int:
    words = " · ".join(filter(None, (short(text(letter, add_on)), how_much(letter, add_on))))
    return page.add(
        Cell("", "tick", open=True), Cell(f"{letters}{words} ({add_on.code})", "cell"), Cell(add_on.price, "money")
    )


def text(letter: Letter, add_on: AddOn) -> str:
    return pick(letter.language, add_on.text_en, add_on.text_es)


def how_much(letter: Letter, add_on: AddOn) -> str:
    """How many of it, where it is more than one."""
    if not add_on.unit or (add_on.unit == "each" and add_on.size == 1):
        return ""
    return size(letter, add_on.size, add_on.unit)
