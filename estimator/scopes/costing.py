"""The functions of other steps that choosing a scope needs; the pipeline hands them in, so that no step imports another."""

from collections.abc import Callable, Mapping, Sequence
from decimal import Decimal
from typing import Protocol

from estimator.model.frozen import Frozen
from estimator.model.job import Job
from estimator.model.judgement import Verdict
from estimator.model.price import Price, TaskHours
from estimator.model.schedule import Schedule
from estimator.model.work import Repair, Takeoff
from estimator.tables.tables import Tables


class Rough(Protocol):
    """What a repair adds to a scope, marked up, nothing rounded, in whole cents; `shared` are (key, cents) paid once."""

    @property
    def cents(self) -> int: ...
    @property
    def shared(self) -> tuple[tuple[str, int], ...]: ...


class Team(Protocol):
    """A crew: dollars an hour, and hours of set-up each day."""

    @property
    def rate(self) -> Decimal: ...
    @property
    def set_up_hours(self) -> float: ...


class InFigures(Protocol):
    """A scope in figures: all its takeoffs, the job's last; hours, crews, machines and what the homeowner pays, dollars."""

    @property
    def takeoffs(self) -> tuple[Takeoff, ...]: ...
    @property
    def tasks(self) -> tuple[TaskHours, ...]: ...
    @property
    def teams(self) -> Mapping[str, Team]: ...
    @property
    def machines(self) -> Mapping[str, float]: ...
    @property
    def total(self) -> Decimal: ...
    @property
    def days_without_drains(self) -> float: ...
    @property
    def schedule(self) -> Schedule: ...


Smooth = Callable[[Sequence[Repair], Job, Tables], float]
"""Repairs measured and priced as one scope on another job or with other tables, nothing rounded, dollars."""


class Costing(Frozen, kw_only=True):
    """`take_off` measures one repair, without those that come first.

    `rough` costs one takeoff for the search, never more than it adds to a real price (but for the quarter hours that are
    not paid). `in_figures` takes the takeoffs of a scope's repairs, adds what the scope has once, and reckons its real
    price before any discount; `unscheduled` is the same before its days are known: what the scope has once is never more,
    and no repair takes more hours. `price` builds the same price up, with words, of all its takeoffs. `conditions` are the
    rules asked once a repair is measured; `smooth` prices anew at the ends of what is not known; `together` takes out of the
    takeoffs of a scope what one repair has dug for another; `beside` gives the least one takeoff may come to next to others.
    """

    take_off: Callable[[Repair], Takeoff]
    rough: Callable[[Takeoff], Rough]
    unscheduled: Callable[[Sequence[Takeoff]], InFigures]
    in_figures: Callable[[Sequence[Takeoff]], InFigures]
    price: Callable[[Sequence[Takeoff]], Price]
    conditions: Callable[[Repair, Takeoff], tuple[Verdict, ...]]
    smooth: Smooth
    together: Callable[[Sequence[Takeoff]], Sequence[Takeoff]] = tuple
    beside: Callable[[Takeoff, Sequence[Takeoff]], Takeoff] = lambda takeoff, others: takeoff
