"""What the crew of one option brings: documents, things with counts (no charges, no prices)."""

from decimal import ROUND_CEILING, Decimal

from estimator.model.offer import Option
from estimator.model.price import CostLine
from estimator.model.steps import LATER
from estimator.papers.crew_boxes import DOCUMENTS, boxes
from estimator.papers.crew_page import boxes_in_pairs, close, crew_page
from estimator.papers.letter import Letter
from estimator.papers.page import Page
from estimator.schedule.order import step_of
from estimator.sheets.book import Cell, Sheet
from estimator.tables.rows import Material
from estimator.tables.tables import Tables
from estimator.wording.numbers import number
from estimator.wording.plain import ONE, UNITS, in_plain_words
from estimator.wording.say import pick

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
        if not cost.shares or items_of(cost) - later:
            _thing(letter, page, cost, tables, _notes(letter, option, cost))
    if again := [counted(letter, cost, tables)[0] for cost in things if items_of(cost) & later]:
        page.line(speak("For the second visit: {things}.", things=", ".join(again)))
    return close(letter, page)


def items_of(cost: CostLine) -> set[str]:
    """The work items that need it."""
    return {item for _, item, _ in cost.shares}


def _notes(letter: Letter, option: Option, cost: CostLine) -> list[str]:
    """A spare where one is taken, and the kind of liner where it is not the usual one."""
    flexible = {repair for c in option.all_costs if c.ref == FLEXIBLE for repair, _, _ in c.shares}
    mine = {repair for repair, _, _ in cost.shares}
    return [
        text
        for text, holds in (
            (letter.speak("+1 spare"), any(word in cost.ref for word in SPARES)),
            (
                letter.speak("flexible kind"),
                cost.part == "material" and cost.ref.startswith("liner-") and bool(flexible & mine),
            ),
        )
        if holds
    ]


def _thing(letter: Letter, page: Page, cost: CostLine, tables: Tables | None, notes: list[str]) -> None:
    what, count, note = counted(letter, cost, tables)
    texts = (what, count, "; ".join(part for part in (note, *notes) if part))
    page.add(
        Cell("☐", "tick", open=True), *(Cell(text, "cell", span) for text, span in zip(texts, (1, 2, 1), strict=True))
    )


def counted(letter: Letter, cost: CostLine, tables: Tables | None) -> tuple[str, str, str]:
    """Return a thing, how many of it, and for how long or in which packs.

    What is paid by the day, the test or the pour is one thing; `saw blade, per foot of cut` is measured in feet of cut.
    """
    what = pick(letter.language, cost.text, cost.text_es)
    if cost.part != "equipment":
        return what, amount(letter, cost.quantity, cost.unit), packs_of(cost, tables)
    paid = next((ending for ending in PAID_BY if ending in what), "")
    what, by = what.partition(paid)[0] if paid else what, cost.text.partition(PAID_BY[0])[2]
    if cost.unit == "day":
        return what, "1", amount(letter, cost.quantity, "day")
    if by.startswith("foot"):
        return what, amount(letter, cost.quantity, "ft"), ""
    return what, "1" if by else amount(letter, cost.quantity, "each"), ""


PAID_BY = (", per ", ", por ")
"""How the tables write by what a machine is paid, in English and in Spanish."""


def amount(letter: Letter, quantity: Decimal, unit: str) -> str:
    """How much of a thing, with its unit; a count stands alone."""
    whole = quantity.quantize(Decimal(1) if unit == "each" else Decimal("0.01"), ROUND_CEILING)
    if unit == "each":
        return number(whole, letter.language)
    units = {**UNITS, **ONE} if whole == 1 else UNITS
    return f"{number(whole, letter.language)} {letter.say(in_plain_words(units, unit))}"


def packs_of(cost: CostLine, tables: Tables | None) -> str:
    """`4 × 10`: as bought, where it comes in packs."""
    row = next(
        (m for m in (tables.current("materials") if tables else ()) if isinstance(m, Material) and m.item == cost.ref),
        None,
    )
    if row is None or row.pack <= 1 or cost.quantity % row.pack:
        return ""
    return f"{cost.quantity / row.pack:.0f} × {row.pack.normalize():f}"
