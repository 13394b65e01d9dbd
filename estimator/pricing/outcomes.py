"""A price and drawn values of what is uncertain in; its own cost and crew days in every draw, out.

Worked out a column at a time, all draws of a task, then all of a crew: ten thousand draws of a house take no time to speak of.
"""

import functools
import math
from collections.abc import Iterable, Mapping, Sequence

import numpy as np
from msgspec import field

from estimator.model.frozen import Frozen
from estimator.model.paid_days import NOISE
from estimator.model.price import CostLine, CrewDays, Price
from estimator.model.work import Takeoff
from estimator.pricing.amounts import Owner
from estimator.pricing.draws import Column
from estimator.pricing.equipment import machine_days
from estimator.pricing.happenings import Happening, happenings
from estimator.pricing.house_rules import HouseRules, house_rules
from estimator.tables.rows import Equipment
from estimator.tables.tables import Tables

PRICES = "prices of materials"
EARTH = "earth that nobody saw"
SET_UP = "daily set-up"
EARTH_CLASSES = ("reach", "put back")
BOUGHT = ("material", "small parts", "tax")

Values = Mapping[str, Column]
"""A column for each uncertain thing, as multiples of the likely; what is not there is certain."""


class Model(Frozen):
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
    certainly = np.ones(count)
    work = _work(model, values, certainly)
    days_of = _Days(model, work, values.get(SET_UP, certainly))
    days = {c.crew: days_of.crew(c) for c in model.price.crews}
    moving = [model.rules.day_hours * float(c.rate) * days[c.crew] for c in model.price.crews]
    moving += [h.cost * values[h.name] for h in model.happenings if h.name in values]
    certain = 0.0
    for line in model.price.costs:
        if line.part != "labor" and line.price_class == "own":
            column = _other(model, line, days_of, values)
            moving += [] if column is None else [column]
            certain += float(line.amount) if column is None else 0.0
    return certain + sum_by_draw(moving, count), sum_by_draw(days.values(), count)


Work = Mapping[tuple[str, Owner], Column]
"""Hours of a crew on a work item of a repair."""


def _work(model: Model, values: Values, certain: Column) -> Work:
    work: dict[tuple[str, Owner], Column] = {}
    for task in model.price.tasks:
        hours = task.hours * values.get(task.task, certain)
        if EARTH in values and model.moves_earth(task.repair, task.work_item):
            hours = hours * values[EARTH]
        key = (task.crew, (task.repair, task.work_item))
        work[key] = work[key] + hours if key in work else hours
    for event in model.happenings:
        if event.crew and event.name in values:
            work[event.crew, (event.repair, event.name)] = event.hours * values[event.name]
    return work


class _Days(Frozen):
    """Days of crews on some of their work, each asked for once; `luck` is that of the daily set-up."""

    model: Model
    work: Work
    luck: Column
    known: dict[tuple[str, tuple[Owner, ...]], Column] = field(default_factory=dict)

    def crew(self, crew: CrewDays, owners: frozenset[Owner] | None = None) -> Column:
        """On the work of these owners, on all of it where none is named."""
        mine = tuple(o for name, o in self.work if name == crew.crew and (owners is None or o in owners))
        key = (crew.crew, mine)
        if key not in self.known:
            worked = sum_by_draw([self.work[crew.crew, owner] for owner in mine], len(self.luck))
            set_up = crew.setup_hours / math.ceil(crew.days) * self.luck
            self.known[key] = float(self.model.rules.day_step) * paid_steps_of(worked, set_up, self.model.rules)
        return self.known[key]


def _other(model: Model, line: CostLine, days_of: _Days, values: Values) -> Column | None:
    """What a line other than labor costs the firm itself in each draw; None where it costs the same in all."""
    amount = float(line.amount)
    if line.part in BOUGHT:
        return amount * values[PRICES] if PRICES in values else None
    machine, owners = model.machines.get(line.ref, (None, frozenset[Owner]()))
    crew = next((c for c in model.price.crews if machine and c.crew == machine.crew), None)
    if machine and crew:
        few, which = np.unique(days_of.crew(crew, owners), return_inverse=True)  # days come in few steps
        costs: Column = np.array([float(machine_days(days, machine)) * float(line.rate) for days in few.tolist()])[
            which
        ]
        return costs
    moved = sum(w for repair, item, w in line.shares if model.moves_earth(repair, item)) if line.part == "sub" else 0
    if EARTH not in values or not moved:
        return None
    earth = amount * moved / sum(w for _, _, w in line.shares)
    return amount + earth * (values[EARTH] - 1)


def paid_steps_of(work: Column, set_up: Column, rules: HouseRules) -> Column:
    """Return what `paid_steps` says of each draw, all at once. No drawn set-up reaches the day: `crews_of` looks at the highest."""
    day, step = rules.day_hours, float(rules.day_step)
    over = work - rules.tolerance_hours - NOISE
    whole_days = np.maximum(1, np.ceil(over / (day - set_up)))
    steps = np.maximum(1, np.ceil((over + set_up * whole_days) / (day * step)))
    while (short := day * steps * step < over + set_up * np.ceil(steps * step)).any():
        steps = steps + short
    return np.where(work > 0, steps, 0.0)


def sum_by_draw(columns: Iterable[Column], count: int) -> Column:
    """Return the sum of the columns draw by draw; nothing where there are none."""
    return functools.reduce(np.add, columns, np.zeros(count))


SOIL = frozenset({"hard_clay", "roots_in_soil", "wet", "rock", "soil_unknown", "over_fill", "clay_dry_months"})
ACCESS = frozenset(
    {"carry_over_50", "carry_over_100", "hand_only", "lived_in", "inside_work", "crawl_low", "crawl_mud"}
)
UNSEEN = frozenset({"depth_unlocated", "soil_unknown"})
"""Facts under which the earth itself may be more or less than measured."""


def cause_of(task: str, tables: Tables) -> str:
    """Soil where any soil fact slows the task down, access where any access fact does, else nothing in common."""
    facts = {f.fact for f in tables.factors if task in f.tasks}
    if facts & SOIL:
        return "soil"
    return "access" if facts & ACCESS else ""
