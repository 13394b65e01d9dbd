"""Single repairs priced alone in; for any set of them an amount its real price is never below, out, without pricing it.

Crews are paid by the half day, which is most of what rounding adds. The hours of a set are known beforehand, so its paid
days are too; packs, machines, minimums and the price step can only add to that.
"""

import math
from collections.abc import Mapping, Sequence

from estimator.model.frozen import Frozen
from estimator.model.paid_days import paid_steps
from estimator.model.work import JOB
from estimator.scopes.costing import InFigures
from estimator.scopes.search import Answer
from estimator.tables.price_shares import firm_share
from estimator.tables.rows import MethodRow
from estimator.tables.tables import Tables

ROUNDED_CENTS = 100
"""For all the single cents that rounding may take off one scope's cost lines."""
Hours = Mapping[str, float]


class Crew(Frozen):
    """Dollars an hour, and hours of set-up each day."""

    rate: float
    set_up: float


class Firm(Frozen, kw_only=True):
    """How the firm counts days, and the least and most a dollar of its own work is sold for."""

    day: float
    step: float
    tolerance: float
    least_marked_up: float
    most_marked_up: float
    overhead: float = 0.0  # dollars a crew-day, on top of wages

    @classmethod
    def of(cls, tables: Tables) -> "Firm":
        margin = float(tables.price_class("own").margin_percent) / 100
        rows = [row for row in tables.current("methods") if isinstance(row, MethodRow)]
        hidden = max((float(row.contingency_percent) for row in rows), default=0.0)
        unknown = sum(float(row.percent) for row in tables.contingencies)
        stays = float(firm_share(tables))
        return cls(
            day=tables.number("crew_day_hours"),
            step=tables.number("crew_step_days"),
            tolerance=tables.number("crew_tolerance_hours"),
            least_marked_up=1 / (1 - margin) / stays,
            most_marked_up=(1 + (hidden + unknown) / 100) / (1 - margin) / stays,
            overhead=tables.number("overhead_per_crew_day"),
        )

    def paid_days(self, hours: float, set_up: float) -> float:
        """The least step of days that holds the work and a set-up each day, less the tolerance.

        >>> firm = Firm(day=8, step=0.5, tolerance=0.25, least_marked_up=1, most_marked_up=1)
        >>> firm.paid_days(52.10, 1), firm.paid_days(3.25, 1), firm.paid_days(3.26, 1), firm.paid_days(0, 1)
        (7.5, 0.5, 1.0, 0.0)
        """
        return self.step * paid_steps(
            hours, set_up, day_hours=self.day, step_days=self.step, tolerance_hours=self.tolerance
        )


class LeastPrice:
    """Cents a set's real price is never below. `once` is what the job itself costs at least, in cents, with `job_hours`.

    `cleaning` are the hours each spends on the cleaning of its line, of which a set needs no more than the most.
    """

    def __init__(
        self, alone: Mapping[str, InFigures], once: Mapping[str, int], cleaning: Mapping[str, Hours], tables: Tables
    ) -> None:
        self._firm = Firm.of(tables)
        self._cleaning = cleaning
        self._hours = {name: hours_of(price, job=False) for name, price in alone.items()}
        self._crews = _crews(list(alone.values()))
        least = min(once, key=lambda name: once[name])
        of_job = {name: hours_of(price, job=True) for name, price in alone.items()}
        self._job_hours = {crew: min(h.get(crew, 0.0) for h in of_job.values()) for crew in self._crews}
        over = {crew: hours - self._job_hours[crew] for crew, hours in of_job[least].items()}
        self._once = once[least] - 100 * self._firm.most_marked_up * sum(self._rough(c, h) for c, h in over.items())
        self._machines = 100 * self._firm.most_marked_up * _machine_days(list(alone.values()), self._firm)

    def _rough(self, crew: str, hours: float) -> float:
        """Dollars of a crew with days unrounded, as the search counts them, overhead with them."""
        who = self._crews[crew]
        return hours / (self._firm.day - who.set_up) * self._full_day(who)

    def _full_day(self, who: Crew) -> float:
        return self._firm.day * who.rate + self._firm.overhead

    def _rounding(self, crew: str, hours: float) -> float:
        """Dollars that paying by the half day adds, marked up as little as may be; below 0 where the tolerance takes off."""
        who = self._crews[crew]
        days = self._firm.paid_days(hours, who.set_up) - hours / (self._firm.day - who.set_up)
        if days > 0:  # what overhead adds is marked up in its own way, so it is left out
            return days * self._firm.day * who.rate * self._firm.least_marked_up
        return days * self._full_day(who) * self._firm.most_marked_up

    def __call__(self, answer: Answer, once: float | None = None, job_hours: Hours | None = None) -> int:
        """`once` and `job_hours` where they are known of just this set."""
        once, of_job = (self._once, self._job_hours) if once is None or job_hours is None else (once, job_hours)
        if not of_job.keys() <= self._crews.keys():
            return 0
        rounding = 0.0
        for crew in self._crews:
            spared = self._spared(crew, answer)
            hours = of_job.get(crew, 0.0) + sum([self._hours[c.id].get(crew, 0.0) for c in answer.chosen]) - spared
            rounding += self._rounding(crew, hours) - (self._unpaid(crew) if spared else 0.0)
        return math.floor(answer.cost + once + 100 * rounding - self._machines) - ROUNDED_CENTS

    def _spared(self, crew: str, answer: Answer) -> float:
        """Hours of cleaning that others on the same line spend already: all but the most on each line."""
        by_line: dict[str, list[float]] = {}
        for c in answer.chosen:
            if hours := self._cleaning.get(c.id, {}).get(crew):
                by_line.setdefault(c.line, []).append(hours)
        return sum([sum(each) - max(each) for each in by_line.values() if len(each) > 1])

    def _unpaid(self, crew: str) -> float:
        """Dollars of the quarter hour that is not paid, marked up as much as may be."""
        who = self._crews[crew]
        return self._firm.most_marked_up * self._firm.tolerance / (self._firm.day - who.set_up) * self._full_day(who)

    @property
    def slack(self) -> int:
        """How far a real price may lie below the sum of its set, cents (below 0: it lies above by that much)."""
        unpaid = sum(map(self._unpaid, self._crews))
        return math.ceil(100 * unpaid + self._machines - self._once) + ROUNDED_CENTS


def hours_less(price: InFigures, without: InFigures) -> Hours:
    """Crew-hours of the repairs in one price that the other does without."""
    less = hours_of(without, job=False)
    return {crew: more for crew, h in hours_of(price, job=False).items() if (more := h - less.get(crew, 0.0)) > 0}


def hours_of(price: InFigures, *, job: bool) -> Hours:
    """Crew-hours of the job itself, or of all its repairs."""
    out: dict[str, float] = {}
    for task in price.tasks:
        if (task.repair == JOB) == job:
            out[task.crew] = out.get(task.crew, 0.0) + task.hours
    return out


def _crews(prices: Sequence[InFigures]) -> dict[str, Crew]:
    """Each crew at its lowest rate and shortest set-up."""
    out: dict[str, Crew] = {}
    for name, team in (item for price in prices for item in price.teams.items()):
        rate, set_up = float(team.rate), team.set_up_hours
        old = out.get(name, Crew(rate, set_up))
        out[name] = Crew(min(rate, old.rate), min(set_up, old.set_up))
    return out


def _machine_days(prices: Sequence[InFigures], firm: Firm) -> float:
    """Dollars of all machines for the part of a day that the tolerance takes off."""
    machines = {ref: rate for price in prices for ref, rate in price.machines.items()}
    set_up = max((c.set_up for c in _crews(prices).values()), default=0.0)
    return firm.tolerance / (firm.day - set_up) * sum(machines.values())
