"""A price and drawn values of what is uncertain in; its own cost and crew days in every draw, out.

Worked out a column at a time, all draws of a task, then all of a crew: ten thousand draws of a house take no time to speak of.
"""

import math
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field

from estimator.model.paid_days import paid_steps
from estimator.model.price import CostLine, CrewDays, Price
from estimator.model.work import Takeoff
from estimator.pricing.causes import UNSEEN
from estimator.pricing.equipment import machine_days
from estimator.pricing.happenings import Happening, happenings
from estimator.pricing.house_rules import HouseRules, house_rules
from estimator.pricing.spread_on import Owner
from estimator.tables.rows import Equipment
from estimator.tables.tables import Tables

PRICES = "prices of materials"
EARTH = "earth that nobody saw"
SET_UP = "daily set-up"
EARTH_CLASSES = ("reach", "put back")
BOUGHT = ("material", "small parts", "tax")

Column = list[float]
"""One value a draw."""
Values = Mapping[str, Sequence[float]]
"""A column for each uncertain thing, as multiples of the likely; what is not there is certain."""


@dataclass(frozen=True, slots=True)
class Model:
    """What the draws are put through: tasks, crews and costs of the price, and what may happen."""

    price: Price
    rules: HouseRules
    seen: frozenset[str]  # repairs whose earth was measured
    classes: Mapping[str, str]  # work item → class
    machines: Mapping[str, tuple[Equipment, frozenset[Owner]]]  # equipment by the day, the work it is on
    happenings: tuple[Happening, ...] = ()

    def moves_earth(self, repair: str, item: str) -> bool:
        """Whether a work item of a repair has more to move where there is more earth than was measured."""
        return repair not in self.seen and self.classes.get(item) in EARTH_CLASSES


def model_of(price: Price, takeoffs: Sequence[Takeoff], tables: Tables) -> Model:
    machines = [c for c in price.costs if c.part == "equipment" and c.unit == "day"]
    return Model(
        price=price,
        rules=house_rules(tables),
        seen=frozenset(t.repair.id for t in takeoffs if not t.facts & UNSEEN),
        classes={w.item: w.work_class for w in tables.work_items},
        happenings=happenings(price, takeoffs, tables),
        machines={c.ref: (tables.equipment(c.ref), frozenset((r, item) for r, item, _ in c.shares)) for c in machines},
    )


def outcomes(model: Model, values: Values, count: int) -> tuple[Column, Column]:
    """Own cost and crew days of each draw."""
    work = _work(model, values, [1.0] * count)
    days_of = _Days(model, work, values.get(SET_UP, [1.0] * count))
    days = {c.crew: days_of.crew(c) for c in model.price.crews}
    moving = [_scaled(model.rules.day_hours * float(c.rate), days[c.crew]) for c in model.price.crews]
    moving += [_scaled(h.cost, values[h.name]) for h in model.happenings if h.name in values]
    certain = 0.0
    for line in model.price.costs:
        if line.part != "labor" and line.price_class == "own":
            column = _other(model, line, days_of, values)
            moving += [column] if column else []
            certain += 0.0 if column else float(line.amount)
    return [certain + cost for cost in _sum(moving, count)], _sum(days.values(), count)


Work = Mapping[tuple[str, Owner], Column]
"""Hours of a crew on a work item of a repair."""


def _work(model: Model, values: Values, certain: Column) -> Work:
    work: dict[tuple[str, Owner], Column] = {}
    for task in model.price.tasks:
        hours = _scaled(task.hours, values.get(task.task, certain))
        if EARTH in values and model.moves_earth(task.repair, task.work_item):
            hours = [h * more for h, more in zip(hours, values[EARTH], strict=True)]
        key = (task.crew, (task.repair, task.work_item))
        work[key] = _sum([work[key], hours], len(hours)) if key in work else hours
    for event in model.happenings:
        if event.crew and event.name in values:
            work[event.crew, (event.repair, event.name)] = _scaled(event.hours, values[event.name])
    return work


@dataclass(frozen=True, slots=True)
class _Days:
    """Days of crews on some of their work, each asked for once; `luck` is that of the daily set-up.

    As `days_needed`, in floats. No drawn set-up reaches the day: `crews_of` looks at the highest.
    """

    model: Model
    work: Work
    luck: Sequence[float]
    known: dict[tuple[str, tuple[Owner, ...]], Column] = field(default_factory=dict)

    def crew(self, crew: CrewDays, owners: frozenset[Owner] | None = None) -> Column:
        """On the work of these owners, on all of it where none is named."""
        mine = tuple(o for name, o in self.work if name == crew.crew and (owners is None or o in owners))
        key = (crew.crew, mine)
        if key not in self.known:
            rules, set_up = self.model.rules, crew.setup_hours / math.ceil(crew.days)
            day, half, spare = rules.day_hours, float(rules.day_step), rules.tolerance_hours
            worked = _sum([self.work[crew.crew, owner] for owner in mine], len(self.luck))
            self.known[key] = [
                half * paid_steps(hours, set_up * times, day_hours=day, step_days=half, tolerance_hours=spare)
                for hours, times in zip(worked, self.luck, strict=True)
            ]
        return self.known[key]


def _other(model: Model, line: CostLine, days_of: _Days, values: Values) -> Column | None:
    """What a line other than labor costs the firm itself in each draw; None where it costs the same in all."""
    amount = float(line.amount)
    if line.part in BOUGHT:
        return _scaled(amount, values[PRICES]) if PRICES in values else None
    machine, owners = model.machines.get(line.ref, (None, frozenset[Owner]()))
    crew = next((c for c in model.price.crews if machine and c.crew == machine.crew), None)
    if machine and crew:
        cost = _remembered(lambda days: float(machine_days(days, machine)) * float(line.rate))
        return [cost(day) for day in days_of.crew(crew, owners)]
    moved = sum(w for repair, item, w in line.shares if model.moves_earth(repair, item)) if line.part == "sub" else 0
    if EARTH not in values or not moved:
        return None
    earth = amount * moved / sum(w for _, _, w in line.shares)
    return [amount + earth * (more - 1) for more in values[EARTH]]


def _remembered(cost: Callable[[float], float]) -> Callable[[float], float]:
    """The same function; days come in few steps, so each is worked out once."""
    known: dict[float, float] = {}

    def of(days: float) -> float:
        if days not in known:
            known[days] = cost(days)
        return known[days]

    return of


def _scaled(amount: float, column: Sequence[float]) -> Column:
    return [amount * value for value in column]


def _sum(columns: Iterable[Sequence[float]], count: int) -> Column:
    """Draw by draw; nothing where there are no columns."""
    return list(map(sum, zip(*columns, strict=True))) or [0.0] * count
