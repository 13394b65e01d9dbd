"""Whose each table and each group of settings is, and what it is for, in the office's words: for the workbook's cover and the guide."""

from typing import Literal

from estimator.model.say import Say

Owner = Literal["office", "owner", "with care"]

OWNERS: dict[str, tuple[Owner, Say]] = {
    "materials": ("office", Say.of("what you buy: pipe, fittings, sand, concrete, sod")),
    "equipment": ("office", Say.of("machines by the day or by the time")),
    "subs_and_fees": ("office", Say.of("what others bill you: haulers, engineers, the city")),
    "roles": ("office", Say.of("wages and what comes on top of them")),
    "crews": ("office", Say.of("who makes up a crew")),
    "terms": ("office", Say.of("what is in the price and what is not, and the cautions")),
    "settings": ("owner", Say.of("numbers the firm decides: sizes, limits, rounding, the letterhead")),
    "methods": ("owner", Say.of("each method of repair: minimum charge, contingency, life, warranty, its words")),
    "pricing": ("owner", Say.of("the margin of each kind of cost")),
    "contingency": ("owner", Say.of("what an unknown adds")),
    "events": ("owner", Say.of("what may happen on a job, with its chance and its cost")),
    "extras": ("owner", Say.of("unit prices agreed in advance for what may be found")),
    "add_ons": ("owner", Say.of("what a homeowner may add to an option")),
    "places": ("owner", Say.of("tax, deposit, canceling and code by place")),
    "tax_classes": ("owner", Say.of("work that a place taxes in its own way")),
    "work_items": ("with care", Say.of("the lines a homeowner reads")),
    "recipes": ("with care", Say.of("what each of those lines is made of")),
    "production": ("with care", Say.of("how long a task takes")),
    "factors": ("with care", Say.of("what slows a task down")),
    "soils": ("with care", Say.of("how each soil stands, swells and packs")),
}
"""Every table, in the order of the workbook's sheets."""

TITLES: dict[Owner, Say] = {
    "office": Say.of("The office keeps these"),
    "owner": Say.of("The owner keeps these"),
    "with care": Say.of("Change with care: the arithmetic hangs on them"),
}


GROUPS: dict[str, tuple[Owner, Say]] = {
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
