"""A scope in; how far its cost and days may run, what drives that, and the contingency it would take, out. Office only."""

import math
from bisect import bisect_right
from collections.abc import Mapping, Sequence, Set
from dataclasses import dataclass

from estimator.model.job import Override
from estimator.model.likely_range import LikelyRange
from estimator.model.paid_days import paid_steps
from estimator.model.price import CostLine, CrewDays, Price, TaskHours
from estimator.model.work import Takeoff
from estimator.pricing.build import price_scope
from estimator.pricing.causes import UNSEEN, cause_of
from estimator.pricing.crews import set_up_row
from estimator.pricing.draws import Uncertain, draw, percentile
from estimator.pricing.equipment import machine_days
from estimator.pricing.house_rules import HouseRules, house_rules
from estimator.pricing.three_points import ThreePoints
from estimator.tables.rows import Equipment, PlaceRow
from estimator.tables.tables import Tables

PERCENTS = (10, 50, 80, 90)
CURVE = (5, 10, 20, 30, 40, 50, 60, 70, 80, 90, 95)
PRICES = "prices of materials"
EARTH = "earth that nobody saw"
SET_UP = "daily set-up"
EARTH_CLASSES = ("reach", "put back")
HALF_A_CENT = 0.005


@dataclass(frozen=True, slots=True)
class Model:
    """What a draw is put through: tasks, crews and costs of the price at its likely values."""

    price: Price
    rules: HouseRules
    seen: frozenset[str]  # repairs whose earth was measured
    classes: Mapping[str, str]  # work item → class
    machines: Mapping[str, tuple[Equipment, frozenset[str]]]  # equipment by the day, the repairs it is on


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
    model = _model(price, takeoffs, tables)
    values = {thing.name: series for thing, series in zip(things, drawn, strict=True)}
    outcomes = [_outcome(model, {name: series[n] for name, series in values.items()}) for n in range(count)]
    costs, days = sorted(cost for cost, _ in outcomes), sorted(day for _, day in outcomes)
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


def uncertain_things(price: Price, takeoffs: Sequence[Takeoff], tables: Tables) -> tuple[Uncertain, ...]:
    """Each task once, daily set-up, prices, and earth where any takeoff did not see it: all as multiples of the likely."""
    tasks = {t.task: t for t in price.tasks if t.likely > 0}
    things = [Uncertain(name, _of_likely(t.low, t.likely, t.high), cause_of(name, tables)) for name, t in tasks.items()]
    row = set_up_row(tables)
    if row.likely > 0:
        things.append(Uncertain(SET_UP, _of_likely(row.low, row.likely, row.high), "access"))
    things.append(Uncertain(PRICES, _either_way(tables.number("range_prices_percent"))))
    if any(t.facts & UNSEEN for t in takeoffs):
        things.append(Uncertain(EARTH, _either_way(tables.number("range_unseen_percent")), "soil"))
    return tuple(things)


def _of_likely(low: float, likely: float, high: float) -> ThreePoints:
    return ThreePoints(low / likely, 1.0, high / likely)


def _either_way(percent: float) -> ThreePoints:
    return ThreePoints(1 - percent / 100, 1.0, 1 + percent / 100)


def _model(price: Price, takeoffs: Sequence[Takeoff], tables: Tables) -> Model:
    machines = [c for c in price.costs if c.part == "equipment" and c.unit == "day"]
    return Model(
        price=price,
        rules=house_rules(tables),
        seen=frozenset(t.repair.id for t in takeoffs if not t.facts & UNSEEN),
        classes={w.item: w.work_class for w in tables.work_items},
        machines={c.ref: (tables.equipment(c.ref), frozenset(r for r, _, _ in c.shares)) for c in machines},
    )


def _times(model: Model, repair: str, item: str, values: Mapping[str, float]) -> float:
    """How much more earth than measured a work item of a repair has to move."""
    if repair in model.seen or model.classes.get(item) not in EARTH_CLASSES:
        return 1.0
    return values.get(EARTH, 1.0)


def _hours(model: Model, task: TaskHours, values: Mapping[str, float]) -> float:
    return task.hours * values.get(task.task, 1.0) * _times(model, task.repair, task.work_item, values)


def _outcome(model: Model, values: Mapping[str, float]) -> tuple[float, float]:
    """Own cost and crew days of one draw."""
    work: dict[tuple[str, str], float] = {}
    for task in model.price.tasks:
        key = (task.crew, task.repair)
        work[key] = work.get(key, 0.0) + _hours(model, task, values)
    days = {c.crew: _days_of(model, c, work, None, values) for c in model.price.crews}
    cost = sum(days[c.crew] * model.rules.day_hours * float(c.rate) for c in model.price.crews)
    cost += sum(_other(model, line, work, values) for line in model.price.costs if line.part != "labor")
    return cost, sum(days.values())


def _days_of(
    model: Model,
    crew: CrewDays,
    work: Mapping[tuple[str, str], float],
    repairs: Set[str] | None,
    values: Mapping[str, float],
) -> float:
    """Days of a crew on some repairs, on all of them where none are named."""
    hours = sum(h for (name, repair), h in work.items() if name == crew.crew and (repairs is None or repair in repairs))
    return _days(hours, _set_up(crew) * values.get(SET_UP, 1.0), model.rules) if hours else 0.0


def _set_up(crew: CrewDays) -> float:
    return crew.setup_hours / math.ceil(crew.days)


def _days(work: float, set_up: float, rules: HouseRules) -> float:
    """As `days_needed`, in floats, for many draws. No drawn set-up reaches the day: `crews_of` looks at the highest."""
    half = float(rules.day_step)
    return half * paid_steps(
        work, set_up, day_hours=rules.day_hours, step_days=half, tolerance_hours=rules.tolerance_hours
    )


def _other(model: Model, line: CostLine, work: Mapping[tuple[str, str], float], values: Mapping[str, float]) -> float:
    amount = float(line.amount)
    if line.price_class != "own":
        return 0.0
    if line.part in ("material", "small parts", "tax"):
        return amount * values.get(PRICES, 1.0)
    machine, repairs = model.machines.get(line.ref, (None, frozenset()))
    crew = next((c for c in model.price.crews if machine and c.crew == machine.crew), None)
    if machine and crew:
        return float(machine_days(_days_of(model, crew, work, repairs, values), machine)) * float(line.rate)
    weights = [(w, _times(model, repair, item, values)) for repair, item, w in line.shares]
    whole = sum(w for w, _ in weights)
    return amount * sum(w * times for w, times in weights) / whole if line.part == "sub" else amount


def drivers(model: Model, values: Mapping[str, Sequence[float]]) -> tuple[tuple[str, float], ...]:
    """What each uncertain thing adds to the spread of cost, percent: its covariance with the whole, before days are rounded."""
    rates = {c.crew: float(c.rate) for c in model.price.crews}
    weight: dict[str, float] = {}
    for task in model.price.tasks:
        money = task.hours * rates[task.crew]
        weight[task.task] = weight.get(task.task, 0.0) + money
        if task.repair not in model.seen and model.classes.get(task.work_item) in EARTH_CLASSES:
            weight[EARTH] = weight.get(EARTH, 0.0) + money
    weight[SET_UP] = sum(c.setup_hours * rates[c.crew] for c in model.price.crews)
    weight[PRICES] = sum(float(c.amount) for c in model.price.costs if c.part in ("material", "small parts", "tax"))
    swings = {name: [weight.get(name, 0.0) * v for v in series] for name, series in values.items()}
    return _shares(swings)


def _shares(swings: Mapping[str, Sequence[float]]) -> tuple[tuple[str, float], ...]:
    whole = [sum(column) for column in zip(*swings.values(), strict=True)]
    mean = sum(whole) / len(whole)
    off = [w - mean for w in whole]
    variance = sum(o * o for o in off)
    if variance <= 1e-12:
        return ()
    shares = {
        name: 100 * sum(s * o for s, o in zip(series, off, strict=True)) / variance for name, series in swings.items()
    }
    return tuple(sorted(shares.items(), key=lambda pair: -pair[1]))
