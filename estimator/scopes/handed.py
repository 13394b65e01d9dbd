"""The functions of other steps that choosing a scope needs; the pipeline hands them in, so that no step imports another."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Protocol

from estimator.model.judgement import Verdict
from estimator.model.price import Price
from estimator.model.work import Repair, Takeoff


class Rough(Protocol):
    """What a repair adds to a scope, marked up, nothing rounded, in whole cents; `shared` are (key, cents) paid once."""

    @property
    def cents(self) -> int: ...
    @property
    def shared(self) -> tuple[tuple[str, int], ...]: ...


class Once(Protocol):
    """All takeoffs of a scope in, what it has once out; `days_without_drains` where the scope was priced already."""

    def __call__(self, takeoffs: Sequence[Takeoff], days_without_drains: float = 0.0) -> Takeoff: ...


@dataclass(frozen=True, slots=True, kw_only=True)
class Handed:
    """`take_off` measures one repair, without those that come first; `take_off_job` what a scope has once.

    `rough` costs one takeoff for the search, never more than it adds to a real price (but for the quarter hours that are
    not paid); `price` prices all takeoffs of a scope, the job's among them, before any discount. `conditions` are the rules asked once a
    repair is measured; `together` takes out of the takeoffs of a scope what one repair has dug for another.
    """

    take_off: Callable[[Repair], Takeoff]
    take_off_job: Once
    rough: Callable[[Takeoff], Rough]
    price: Callable[[Sequence[Takeoff]], Price]
    conditions: Callable[[Repair, Takeoff], tuple[Verdict, ...]]
    together: Callable[[Sequence[Takeoff]], Sequence[Takeoff]] = tuple
