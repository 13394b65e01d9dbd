"""Every quantity of every option for the office, with the formula and the numbers that went into it."""

from estimator.model.offer import Quote
from estimator.model.work import Quantity
from estimator.papers.inside import close, head, inside_page
from estimator.sheets.book import Cell, Sheet
from estimator.wording.numbers import number

ENGLISH = "en_US"
WIDTHS = (8.0, 22.0, 12.0, 8.0, 30.0, 34.0)


def quantities(quote: Quote) -> Sheet:
    """The takeoffs; a repair that several options share stands at each of them."""
    page = inside_page("Quantities", WIDTHS, "Quantities, each with its formula", job=quote.job)
    row = head(page, ("Option", "Quantity", "How much", "Unit", "Formula", "Numbers that went in"), 9)
    for option in quote.options:
        for takeoff in option.takeoffs:
            repair = takeoff.repair
            where = f"{repair.line} {repair.stretch.from_ft:.1f} to {repair.stretch.to_ft:.1f} ft"
            page.line(f"{option.letter}: {repair.method}, {where}", "bold")
            for quantity in takeoff.quantities:
                page.add(Cell(option.letter, "cell quiet"), Cell(quantity.name, "cell"), Cell(quantity.value, "figure"),
                         Cell(quantity.unit, "cell quiet"), Cell(quantity.formula, "cell quiet"), Cell(_inputs(quantity), "cell quiet"))  # fmt: skip
            page.line("facts: " + (", ".join(sorted(takeoff.facts)) or "nothing"), "quiet")
    return close(page, f"INTERNAL {quote.job.number}", (row, row))


def _inputs(quantity: Quantity) -> str:
    parts = [
        f"{i.name} = {number(i.value, ENGLISH, 3)} {i.unit}"
        if isinstance(i.value, float)
        else f"{i.name} = {i.value} {i.unit}"
        for i in quantity.inputs
    ]
    return ", ".join(part.strip() for part in parts)
