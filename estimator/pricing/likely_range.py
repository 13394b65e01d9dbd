"""A scope in; how far its cost and days may run, what drives that, and the contingency it would take, out. Office only."""

import functools
from bisect import bisect_right
from collections.abc import Mapping, Sequence
from decimal import Decimal

import numpy as np

from estimator.model.likely_range import LikelyRange
from estimator.model.money import exact, up_to
from estimator.model.price import Price
from estimator.model.problem import Place, Problem
from estimator.model.wanted import Override
from estimator.model.work import Takeoff
from estimator.pricing.build import price_scope
from estimator.pricing.crews import set_up_row
from estimator.pricing.draws import Column, ThreePoints, Uncertain, come_or_not, draw, percentile
from estimator.pricing.hours import hours_each
from estimator.pricing.outcomes import BOUGHT, EARTH, PRICES, SET_UP, UNSEEN, Model, cause_of, model_of, outcomes
from estimator.pricing.problems import CONTINGENCY_SHORT
from estimator.tables.rows import PlaceRow
from estimator.tables.tables import Tables

PERCENTS = (10, 50, 80, 90)
CURVE = (5, 10, 20, 30, 40, 50, 60, 70, 80, 90, 95)
HALF_A_CENT = 0.005


def likely_range(
    takeoffs: Sequence[Takeoff],
    tables: Tables,
    place: PlaceRow | None,
    seed: int,
    draws: int = 0,
    overrides: Sequence[Override] = (),
) -> LikelyRange:
    """The range of a scope that is priced here, at its likely values, without a price of its own yet."""
    return range_of(price_scope(takeoffs, tables, place, overrides=overrides), takeoffs, tables, seed, draws)


def range_of(price: Price, takeoffs: Sequence[Takeoff], tables: Tables, seed: int, draws: int = 0) -> LikelyRange:
    """Hours between low and high of production, prices and unseen earth by the firm's settings; seeded, so told again the same.

    Days are counted as in the price: half days, tolerance, set-up, whole days of machines. `draws` 0: the firm's setting.
    """
    things = uncertain_things(price, takeoffs, tables)
    count = draws or int(tables.number("range_draws"))
    drawn = draw(things, seed, count, tables.number("range_common_percent") / 100)
    model = model_of(price, takeoffs, tables)
    values = {thing.name: series for thing, series in zip(things, drawn, strict=True)}
    values |= come_or_not({event.name: event.chance for event in model.happenings}, seed, count)
    costs, days = (np.sort(column).tolist() for column in outcomes(model, values, count))
    confidence = tables.number("confidence_percent")
    direct, given = float(price.direct), float(price.contingency_percent)
    return LikelyRange(
        seed=seed,
        draws=count,
        cost={p: percentile(costs, p) for p in PERCENTS},
        days={p: percentile(days, p) for p in PERCENTS},
        mean_cost=sum(costs) / count,
        drivers=drivers(model, values),
        confidence_percent=confidence,
        contingency_needed_percent=max(0.0, percentile(costs, confidence) / direct - 1) * 100 if direct else 0.0,
        contingency_percent=given,
        curve=tuple((p, percentile(costs, p), percentile(days, p)) for p in CURVE),
        held_chance_percent=100 * bisect_right(costs, direct * (1 + given / 100) + HALF_A_CENT) / count,
    )


def reaching(found: LikelyRange) -> Decimal | None:
    """The contingency, percent to a tenth and up, with which a price would hold as often as the firm wants; None where it does."""
    return up_to(exact(found.contingency_needed_percent), Decimal("0.1")) if found.short_percent else None


NOISE_PERCENT = 0.5
"""A shortfall below this is no more than another draw of the same jobs would move it."""


def too_little(letter: str, found: LikelyRange) -> Problem | None:
    """That an option's contingency falls short of the firm's own confidence; None where it does not."""
    if found.short_percent < NOISE_PERCENT:
        return None
    return CONTINGENCY_SHORT(
        Place(table="methods", cell="contingency_percent"),
        letter=letter,
        given=f"{found.contingency_percent:.1f}",
        held=f"{found.held_chance_percent:.0f}",
        sure=f"{found.confidence_percent:g}",
        wanted=f"{found.contingency_needed_percent:.1f}",
    )


def uncertain_things(price: Price, takeoffs: Sequence[Takeoff], tables: Tables) -> tuple[Uncertain, ...]:
    """Each task once, daily set-up, prices, and earth where any takeoff did not see it: all as multiples of what the price is built on."""
    tasks = {t.task: t for t in price.tasks if t.each > 0}
    things = [
        Uncertain(name, _times(t.low, t.likely, t.high, t.each), cause_of(name, tables)) for name, t in tasks.items()
    ]
    row = set_up_row(tables)
    each = hours_each(row, tables)
    if each > 0:
        things.append(Uncertain(SET_UP, _times(row.low, row.likely, row.high, each), "access"))
    things.append(Uncertain(PRICES, _either_way(tables.number("range_prices_percent"))))
    if any(t.facts & UNSEEN for t in takeoffs):
        things.append(Uncertain(EARTH, _either_way(tables.number("range_unseen_percent")), "soil"))
    return tuple(things)


def _times(low: float, likely: float, high: float, each: float) -> ThreePoints:
    """As multiples of what the price is built on."""
    return ThreePoints(low / each, likely / each, high / each)


def _either_way(percent: float) -> ThreePoints:
    return ThreePoints(1 - percent / 100, 1.0, 1 + percent / 100)


def drivers(model: Model, values: Mapping[str, Column]) -> tuple[tuple[str, float], ...]:
    """What each uncertain thing adds to the spread of cost, percent: its covariance with the whole, before days are rounded."""
    rates = {c.crew: float(c.rate) for c in model.price.crews}
    weight: dict[str, float] = {}
    for task in model.price.tasks:
        money = task.hours * rates[task.crew]
        weight[task.task] = weight.get(task.task, 0.0) + money
        if model.moves_earth(task.repair, task.work_item):
            weight[EARTH] = weight.get(EARTH, 0.0) + money
    weight[SET_UP] = sum(c.setup_hours * rates[c.crew] for c in model.price.crews)
    weight[PRICES] = sum(float(c.amount) for c in model.price.costs if c.part in BOUGHT)
    for event in model.happenings:
        weight[event.name] = event.hours * rates.get(event.crew, 0.0) + event.cost
    return _shares({name: (weight[name], series) for name, series in values.items() if weight.get(name)})


def _shares(swings: Mapping[str, tuple[float, Column]]) -> tuple[tuple[str, float], ...]:
    """By name: its weight and its draws in; the percent it has of the variance of their weighted sum out, the largest first."""
    if not swings:
        return ()
    whole = functools.reduce(np.add, (weight * series for weight, series in swings.values()))
    off = whole - _sum(whole) / len(whole)
    variance = _sum(off * off)
    if variance <= 1e-12:
        return ()
    shares = {name: 100 * weight * _sum(series * off) / variance for name, (weight, series) in swings.items()}
    return tuple(sorted(shares.items(), key=lambda pair: -pair[1]))


def _sum(column: Column) -> float:
    """One after the other, so that the last digit is the same on every machine."""
    return float(sum(column.tolist()))
