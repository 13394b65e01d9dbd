"""Prices of single repairs and the firm's settings in, by how much a real price may lie below its sum for the search, out."""

import math
from collections.abc import Sequence

from estimator.model.price import Price
from estimator.tables.rows import MethodRow
from estimator.tables.tables import Tables

ROUNDED_CENTS = 100
"""For all the single cents that rounding may take off one scope's cost lines."""


def slack_cents(prices: Sequence[Price], tables: Tables) -> int:
    """Cents: the hours of each crew that are not paid because they lie within crew_tolerance_hours of a step, marked up.

    A quarter hour over a half day is not paid, nor the share of a day's set-up and machines that would go with it.
    Everything else in a real price (days, packs, minimums, the price step) only rounds up.
    """
    tolerance, day = tables.number("crew_tolerance_hours"), tables.number("crew_day_hours")
    crews = {c.crew: c for price in prices for c in price.crews}
    set_up = max((c.setup_hours / max(1, math.ceil(c.days)) for c in crews.values()), default=0.0)
    days = tolerance / (day - set_up)
    machines = {c.ref: float(c.rate) for price in prices for c in price.costs if c.part == "equipment"}
    cost = days * (day * sum(float(c.rate) for c in crews.values()) + sum(machines.values()))
    return math.ceil(100 * cost * _most_marked_up(tables)) + ROUNDED_CENTS


def _most_marked_up(tables: Tables) -> float:
    """The most a dollar of the firm's own work may be sold for."""
    margin = float(tables.price_class("own").margin_percent) / 100
    rows = [row for row in tables.current("methods") if isinstance(row, MethodRow)]
    method = max((float(row.contingency_percent) for row in rows), default=0.0)
    unknowns = sum(float(c.percent) for c in tables.contingencies)
    return (1 + (method + unknowns) / 100) / (1 - margin)
