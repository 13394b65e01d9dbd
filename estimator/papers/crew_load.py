"""What the crew of one option brings: documents, things with counts (no charges, no prices)."""

from dataclasses import replace
from itertools import zip_longest

from estimator.model.offer import Option
from estimator.model.price import CostLine
from estimator.model.steps import LATER
from estimator.papers.crew_boxes import DOCUMENTS, boxes
from estimator.papers.crew_page import boxes_in_pairs, close, crew_page
from estimator.papers.crew_picture import set_drawing
from estimator.papers.goods import counted
from estimator.papers.letter import Letter
from estimator.papers.page import Page
from estimator.schedule.order import step_of
from estimator.sheets.book import Cell, Sheet
from estimator.tables.tables import Tables

WIDTHS = (4.0, 46.0, 12.0, 4.0, 46.0, 12.0)
FLEXIBLE = "liner-flexible"
CHARGES = ("-delivery", "short-load", FLEXIBLE)
"""Endings of names in the tables that are money beside a thing: nobody loads a delivery or a surcharge."""
SPARES = ("coupling",)


def load_sheet(letter: Letter, option: Option, tables: Tables | None, *, drawing: bool = False) -> Sheet:
    """Return what goes on the truck, in two columns; below it the drawing where the marks left no room for it."""
    speak = letter.speak
    title = speak("Documents, load list, drawing") if drawing else speak("Documents and load list")
    page = crew_page(letter, speak("Load {letter}", letter=option.letter), WIDTHS, title)
    load_list(letter, page, option, tables)
    if drawing:
        set_drawing(letter, page, option)
    return close(letter, page)


def load_list(letter: Letter, page: Page, option: Option, tables: Tables | None) -> None:
    """Write the documents and what goes on the truck: two lists side by side on a page of its own, one where the page has one column of boxes."""
    speak, beside = letter.speak, page.widths.count(page.widths[0])
    page.heading(speak("Documents before work: write number and date"))
    boxes_in_pairs(page, letter.all(boxes(letter.quote, option, DOCUMENTS)))
    later = {row.item for row in tables.work_items if step_of(row) == LATER} if tables else set()
    things = [c for c in option.all_costs if c.part in ("material", "equipment") and not c.ref.endswith(CHARGES)]
    loaded = [_thing(letter, option, c, tables) for c in things if not c.shares or _items_of(c) - later]
    span = page.columns // beside - 2
    if loaded:
        page.heading(speak("On the truck"))
        page.add(*beside * (Cell("", "head"), Cell(speak("Item"), "head", span), Cell(speak("Count"), "head")))
    high = -(-len(loaded) // beside)
    for row in zip_longest(*(loaded[n * high : (n + 1) * high] for n in range(beside)), fillvalue=()):
        page.add(*(replace(cell, span=span if n == 1 else 1) for thing in row for n, cell in enumerate(thing)))
    if again := [counted(letter, cost, tables)[0] for cost in things if _items_of(cost) & later]:
        page.line(speak("For the second visit: {things}.", things=", ".join(again)))


def _items_of(cost: CostLine) -> set[str]:
    """The work items that need it."""
    return {item for _, item, _ in cost.shares}


def _notes(letter: Letter, option: Option, cost: CostLine) -> list[str]:
    """A spare where one is taken, and the kind of liner where it is not the usual one."""
    notes = [letter.speak("+1 spare")] if any(word in cost.ref for word in SPARES) else []
    flexible = {repair for c in option.all_costs if c.ref == FLEXIBLE for repair, _, _ in c.shares}
    a_liner = cost.part == "material" and cost.ref.startswith("liner-")
    if a_liner and flexible & {repair for repair, _, _ in cost.shares}:
        notes.append(letter.speak("flexible kind"))
    return notes


def _thing(letter: Letter, option: Option, cost: CostLine, tables: Tables | None) -> tuple[Cell, ...]:
    """A box to tick, the thing with what is to know of it, how many."""
    what, count, note = counted(letter, cost, tables)
    said = "; ".join(part for part in (note, *_notes(letter, option, cost)) if part)
    return Cell("☐", "tick", open=True), Cell(f"{what} ({said})" if said else what, "cell"), Cell(count, "cell")
