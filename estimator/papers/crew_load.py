"""What the crew of one option brings: documents, things with counts (no charges, no prices)."""

from estimator.model.offer import Option
from estimator.model.price import CostLine
from estimator.model.steps import LATER
from estimator.papers.crew_boxes import DOCUMENTS, boxes
from estimator.papers.crew_page import boxes_in_pairs, close, crew_page
from estimator.papers.goods import counted
from estimator.papers.letter import Letter
from estimator.papers.page import Page
from estimator.schedule.order import step_of
from estimator.sheets.book import Cell, Sheet
from estimator.tables.tables import Tables

WIDTHS = (4.0, 50.0, 4.0, 24.0, 26.0)
FLEXIBLE = "liner-flexible"
CHARGES = ("-delivery", "short-load", FLEXIBLE)
"""Endings of names in the tables that are money beside a thing: nobody loads a delivery or a surcharge."""
SPARES = ("coupling",)


def load_sheet(letter: Letter, option: Option, tables: Tables | None) -> Sheet:
    """Return what goes on the truck."""
    speak = letter.speak
    page = crew_page(letter, speak("Load {letter}", letter=option.letter), WIDTHS, speak("Documents and load list"))
    page.heading(speak("Documents before work: write number and date"))
    boxes_in_pairs(page, letter.all(boxes(letter.quote, option, DOCUMENTS)))
    page.heading(speak("On the truck"))
    heads = (speak("Item"), speak("Count"), speak("Note"))
    page.add(Cell("", "head"), *(Cell(text, "head", span) for text, span in zip(heads, (1, 2, 1), strict=True)))
    later = {row.item for row in tables.work_items if step_of(row) == LATER} if tables else set()
    things = [c for c in option.all_costs if c.part in ("material", "equipment") and not c.ref.endswith(CHARGES)]
    for cost in things:
        if not cost.shares or _items_of(cost) - later:
            _thing(letter, page, cost, tables, _notes(letter, option, cost))
    if again := [counted(letter, cost, tables)[0] for cost in things if _items_of(cost) & later]:
        page.line(speak("For the second visit: {things}.", things=", ".join(again)))
    return close(letter, page)


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


def _thing(letter: Letter, page: Page, cost: CostLine, tables: Tables | None, notes: list[str]) -> None:
    what, count, note = counted(letter, cost, tables)
    texts = (what, count, "; ".join(part for part in (note, *notes) if part))
    page.add(
        Cell("☐", "tick", open=True), *(Cell(text, "cell", span) for text, span in zip(texts, (1, 2, 1), strict=True))
    )
