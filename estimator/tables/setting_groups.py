"""Settings by what they decide: for each group who keeps it and what moves with it, in the office's words."""

from estimator.model.say import Say
from estimator.tables.table_owners import Keeper

GROUPS: dict[str, tuple[Keeper, Say]] = {
    "letterhead": ("office", Say.of("names, papers and colors on every sheet; a day that is past stops every quote")),
    "prices and payments": (
        "owner",
        Say.of("prices, rounding, minimum charges, payments and how long an offer stands"),
    ),
    "crews and days": ("owner", Say.of("hours and days, and the price with them; the calendar of a job")),
    "risk and range": ("owner", Say.of("contingency and the office's range; what a homeowner reads stays")),
    "bookkeeping words": ("office", Say.of("words in the money list; no price")),
    "how bad a finding is": ("with care", Say.of("what must be repaired and what may stay")),
    "where a repair may be used": ("owner", Say.of("which ways of repair a house is offered")),
    "how long a repair is": ("owner", Say.of("feet of every repair, and the price with them")),
    "what is taken where nobody said": ("with care", Say.of("quantities of jobs whose notes lack something")),
    "people, utilities, trees and footings": ("with care", Say.of("cautions, stops and who must agree first")),
    "digging, hauling and putting back": ("with care", Say.of("yards, sand, loads and finishes of every dig")),
    "tunnel and floor": ("with care", Say.of("yards, concrete and openings under and through a floor")),
    "pipe, lining and bursting": ("with care", Say.of("pipe, liner and resin to buy, walls, cures and pits")),
    "tests and measuring": ("with care", Say.of("what a test proves and how far a reading may be off")),
}
"""In the order of the settings sheet."""
