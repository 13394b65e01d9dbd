"""A quote with the ranges of its options in, the office's lines about them out. Nothing of it is for the homeowner."""

from estimator.cli.views.screen import Row
from estimator.cli.views.table import indented, table
from estimator.cli.views.words import dollars, number
from estimator.model.likely_range import LikelyRange
from estimator.model.money import cents
from estimator.model.offer import Option, Quote

NEVER_SEND = "FOR THE OFFICE: never send this. How far our own cost and the crew days may run."
MOST_DRIVERS = 5
HEADS = ("stays within", "in 10 of 100", "in 50", "in 80", "in 90")


def rows(quote: Quote, columns: int) -> list[Row]:
    """A block an option: percentiles, what drives them, what the contingency should be."""
    blocks = [row for o in quote.options if o.likely_range for row in _option(o, o.likely_range, columns)]
    return [Row(""), Row(NEVER_SEND, "bad"), *blocks]


def _option(option: Option, found: LikelyRange, columns: int) -> list[Row]:
    body = [
        ("our cost", *(dollars(cents(amount), whole=True) for amount in found.cost.values())),
        ("crew days", *(number(days) for days in found.days.values())),
    ]
    told = [f"Priced on a cost of {dollars(option.price.direct, whole=True)}.", contingency(found), drivers(found)]
    words = [Row(line) for text in told if text for line in indented(text, columns)]
    head = Row(f"Option {option.letter}: {number(option.price.days)} crew days in the price", "head")
    return [Row(""), head, *(Row(text) for text in table(HEADS, body, columns, right=(1, 2, 3, 4))), *words]


def contingency(found: LikelyRange) -> str:
    """What the firm's confidence would need against what the table gives."""
    wanted = f"A contingency of {number(found.contingency_needed_percent)} % would hold in {number(found.confidence_percent)} of 100 such jobs"
    enough = f", {number(found.short_percent)} points too little" if found.short_percent else ", enough"
    given = (
        f"the tables give {number(found.contingency_percent)} %{enough}, which holds in {found.held_chance_percent:.0f}"
    )
    return f"{wanted}; {given}."


def drivers(found: LikelyRange) -> str:
    """The few things that move the cost most."""
    shares = [f"{name} {share:.0f} %" for name, share in found.drivers[:MOST_DRIVERS] if share >= 1]
    return f"What moves it: {', '.join(shares)}." if shares else ""
