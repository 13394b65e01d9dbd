"""Whose table each one is, and what it is for, in the office's words: for the workbook's cover and the guide."""

from typing import Literal

from estimator.model.say import Say

Keeper = Literal["office", "owner", "with care"]

KEEPERS: dict[str, tuple[Keeper, Say]] = {
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

TITLES: dict[Keeper, Say] = {
    "office": Say.of("The office keeps these"),
    "owner": Say.of("The owner keeps these"),
    "with care": Say.of("Change with care: the arithmetic hangs on them"),
}
