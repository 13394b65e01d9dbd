"""Repairs on a job in, one option out before it has words: its takeoffs, what it costs, how it is measured, what it rests on."""

from collections.abc import Callable
from decimal import Decimal
from functools import cached_property

from estimator.model.basis import Basis
from estimator.model.frozen import Frozen, replace
from estimator.model.price import Price
from estimator.model.wanted import WantedOption
from estimator.model.work import Repair, Scope, Takeoff
from estimator.scopes.counter import Counter
from estimator.scopes.measures import yard_sf


class Chosen(Frozen, kw_only=True, dict=True):
    """One option before it has words. Days are working days in halves, areas sq ft, lengths ft.

    `by_hand` is what the estimator wanted of it ("pin", "add" or ""); `scope.bound` by how much it could be beaten. `total` is
    what the homeowner pays before any discount, `build` the way to it with words.
    """

    scope: Scope
    takeoffs: tuple[Takeoff, ...]
    total: Decimal
    build: Callable[[], Price]
    days_on_site: Decimal
    days_without_drains: Decimal
    floor_sf: float
    yard_sf: float
    old_pipe_left_ft: float
    name: str = ""
    by_hand: str = ""
    basis: Basis = Basis()
    waits_for_visit: bool = False  # a visit would settle what keeps its price from being firm

    @cached_property
    def price(self) -> Price:
        return self.build()


def chosen(repairs: tuple[Repair, ...], counter: Counter, wish: WantedOption | None = None) -> Chosen:
    figures = counter.in_figures(repairs)
    _, floor, old = counter.measures_of(repairs)
    return Chosen(
        scope=counter.scope_of(repairs),
        takeoffs=figures.takeoffs,
        total=figures.total,
        build=lambda: counter.priced(repairs)[1],
        days_on_site=figures.schedule.days_on_site,
        days_without_drains=figures.schedule.days_without_drains,
        floor_sf=floor,
        yard_sf=yard_sf(figures.takeoffs),
        old_pipe_left_ft=old,
        name=wish.name if wish else "",
        by_hand=wish.do if wish else "",
    )


def resting(option: Chosen, counter: Counter) -> Chosen:
    """The option with what its price rests on, and what the rules say of that."""
    basis, takeoffs = counter.on_its_basis(option.scope.repairs, option.takeoffs)
    return replace(option, basis=basis, takeoffs=takeoffs)
