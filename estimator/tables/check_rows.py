"""Checks of single rows: numbers that cannot be together, prices of nothing, texts that are missing."""

import re
from collections.abc import Iterator
from datetime import date, timedelta
from decimal import Decimal
from itertools import pairwise

from estimator.model.money import margin_of_markup, markup_of_margin
from estimator.model.problem import Problem
from estimator.model.say import Say
from estimator.tables import problems as p
from estimator.tables.check_settings import settings
from estimator.tables.check_view import View
from estimator.tables.columns import columns
from estimator.tables.rows import Equipment, Material, PriceClass, SubOrFee
from estimator.tables.rows_of_hours import Production
from estimator.tables.values import plain_number

LEAST_COST = Decimal("0.0001")
"""Dollars for one of anything that is bought: less than a hundredth of a cent is a slip in price_for."""
LIKELY_MARKUP = Decimal(60)
"""A margin above this is more often a markup typed by mistake: 40 % margin is 66.7 % markup [computed]."""


def hours(view: View) -> Iterator[Problem]:
    """low ≤ likely ≤ high, and likely above 0."""
    for row in view.tables.every(Production):
        if not row.low <= row.likely <= row.high:
            place = view.at("production", row, "likely")
            yield p.ORDER(place, low=f"{row.low:g}", likely=f"{row.likely:g}", high=f"{row.high:g}")
        if row.likely == 0:
            yield p.NO_HOURS(view.at("production", row, "likely"), task=row.task, likely="0")


def _bought(view: View) -> Iterator[tuple[str, Material | Equipment | SubOrFee]]:
    """Everything that is bought, with its table."""
    yield from (("materials", row) for row in view.tables.every(Material))
    yield from (("equipment", row) for row in view.tables.every(Equipment))
    yield from (("subs_and_fees", row) for row in view.tables.every(SubOrFee))


def prices(view: View) -> Iterator[Problem]:
    """Nothing in use may cost nothing."""
    for table, row in _bought(view):
        own = isinstance(row, Equipment) and row.own  # in the firm's overhead: listed for the crew alone
        if row.cost == 0 and not own:
            yield p.NO_PRICE(view.at(table, row, "cost"), column="cost", item=row.item, or_off=p.OR_OFF)
        elif isinstance(row, Material) and row.unit_cost < LEAST_COST:  # for so many units that one costs nothing
            place, one = view.at(table, row, "price_for"), Say.of("cost of one unit")
            yield p.NO_PRICE(place, column=one, item=row.item, or_off=p.OR_OFF)
    for role in view.tables.roles:
        if bool(role.paid_hours) != bool(role.worked_hours) or role.worked_hours > role.paid_hours:
            paid, worked = plain_number(role.paid_hours), plain_number(role.worked_hours)
            yield p.HOURS_WORKED(view.at("roles", role, "worked_hours"), role=role.role, paid=paid, worked=worked)
        if role.wage == 0:
            yield p.NO_PRICE(view.at("roles", role, "wage"), column="wage", item=role.role, or_off="")
    for extra in view.tables.extras:
        if extra.price == 0:
            yield p.NO_PRICE(view.at("extras", extra, "price"), column="price", item=extra.code, or_off=p.OR_OFF)


def margins(view: View) -> Iterator[Problem]:
    """A margin is a share of the price: below 100 %, its floor below it; a high one is named as the markup it is."""
    for row in view.tables.every(PriceClass):
        place = view.at("pricing", row, "margin_percent")
        margin = row.margin_percent
        if row.price_class == "pass-through":
            for column in (c for c, adds in (("margin_percent", margin), ("contingency", row.contingency)) if adds):
                yield p.MARKED_UP(view.at("pricing", row, column), column=column)
        if margin >= 100:
            yield p.MARGIN_100(place, percent=plain_number(margin))
            continue
        if margin > LIKELY_MARKUP:
            markup = plain_number(round(markup_of_margin(margin), 1))
            meant = plain_number(round(margin_of_markup(margin), 1))
            yield p.MARGIN_MARKUP(place, percent=plain_number(margin), markup=markup, margin=meant)
        if row.floor_margin_percent > margin:
            floor = plain_number(row.floor_margin_percent)
            yield p.FLOOR(view.at("pricing", row, "floor_margin_percent"), floor=floor, margin=plain_number(margin))


def ages(view: View) -> Iterator[Problem]:
    """Prices learned too long ago, never dated, or past their end."""
    try:
        most = int(view.tables.number("stale_price_days"))
    except (KeyError, ValueError):
        return
    today = view.tables.day
    for table, row in _bought(view):
        if row.price_day is None:
            yield p.NO_PRICE_DAY(view.at(table, row, "price_day"), item=row.item)
        elif (today - row.price_day).days > most:
            yield p.STALE(view.at(table, row, "price_day"), item=row.item, days=(today - row.price_day).days)
        name = "good_until" if isinstance(row, Material) else "valid_until"
        until: date | None = getattr(row, name, None)
        if until is not None and until < today:
            yield p.PRICE_ENDED(view.at(table, row, name), item=row.item, until=until)


def gaps(view: View) -> Iterator[Problem]:
    """Days between the end of a price and the first day of the next one of the same name."""
    for table, name in (("materials", "good_until"), ("subs_and_fees", "valid_until")):
        rows: dict[str, list[Material | SubOrFee]] = {}
        for row in view.tables.rows[table]:
            assert isinstance(row, Material | SubOrFee)
            rows.setdefault(row.item, []).append(row)
        for item, same in rows.items():
            for old, new in pairwise(sorted(same, key=lambda row: row.starts or date.min)):
                until: date | None = getattr(old, name)
                if until is not None and new.starts is not None and new.starts > until + timedelta(days=1):
                    yield p.PRICE_GAP(view.at(table, old, name), item=item, until=until, starts=new.starts)


def spanish(view: View) -> Iterator[Problem]:
    """Every English text that a homeowner reads has its Spanish."""
    for table in ("work_items", "extras", "add_ons", "terms", "methods"):
        pairs = [c.name for c in columns(table) if c.name.endswith("_es")]
        for row in view.tables.current(table):
            for name in pairs:
                if getattr(row, name[:-3] + "_en") and not getattr(row, name):
                    yield p.NO_SPANISH(view.at(table, row, name), column=name)


SIZE = "{size}"
"""The one gap that the tables may have."""


def braces(view: View) -> Iterator[Problem]:
    """Only {size} may stand in braces."""
    for table in ("work_items", "extras", "add_ons", "terms", "methods", "recipes"):
        for row in view.tables.current(table):
            for column in columns(table):
                text = getattr(row, column.name)
                for word in re.findall(r"[{}][^{}]*}?", text) if isinstance(text, str) and not column.kept else ():
                    if word != SIZE:
                        yield p.BRACES(view.at(table, row, column.name), column=column.header, text=word, gap=SIZE)


ROW_CHECKS = (hours, prices, margins, ages, gaps, spanish, braces, settings)
