"""Whose table each one is, and what it is for, in the office's words: for the workbook's cover and the guide."""

from typing import Literal

Keeper = Literal["office", "owner", "with care"]

KEEPERS: dict[str, tuple[Keeper, str]] = {
    "materials": ("office", "what you buy: pipe, fittings, sand, concrete, sod"),
    "equipment": ("office", "machines by the day or by the time"),
    "subs_and_fees": ("office", "what others bill you: haulers, engineers, the city"),
    "roles": ("office", "wages and what comes on top of them"),
    "crews": ("office", "who makes up a crew"),
    "terms": ("office", "what is in the price and what is not, and the cautions"),
    "settings": ("owner", "numbers the firm decides: sizes, limits, rounding, the letterhead"),
    "methods": ("owner", "each way of repair: least charge, contingency, life, warranty, its words"),
    "pricing": ("owner", "the margin of each kind of cost"),
    "contingency": ("owner", "what an unknown adds"),
    "events": ("owner", "what may happen on a job, with its chance and its cost"),
    "extras": ("owner", "prices agreed beforehand for what may turn up"),
    "add_ons": ("owner", "what a homeowner may add to an option"),
    "places": ("owner", "tax, deposit, cancelling and code by place"),
    "tax_classes": ("owner", "work that a place taxes in its own way"),
    "work_items": ("with care", "the lines a homeowner reads"),
    "recipes": ("with care", "what each of those lines is made of"),
    "production": ("with care", "how long a task takes"),
    "factors": ("with care", "what slows a task down"),
    "soils": ("with care", "how each soil stands, swells and packs"),
}
"""Every table, in the order of the workbook's sheets."""

TITLES: dict[Keeper, str] = {
    "office": "The office keeps these",
    "owner": "The owner keeps these",
    "with care": "Change with care: the arithmetic hangs on them",
}
