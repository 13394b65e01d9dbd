"""A takeoff in; what a scope has only to add up out: its parts, their hours, and the rows they ask for, worked out once."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from estimator.model.price import TaskHours
from estimator.model.remembered import remembered
from estimator.model.work import Takeoff
from estimator.pricing.amounts import Asked, asked
from estimator.pricing.hours import facts_by_crew, task_hours
from estimator.pricing.parts import Part, by_kind, made_of, something_to_sell
from estimator.pricing.problems import stop
from estimator.pricing.subs import with_fees_of
from estimator.tables.rows import PlaceRow
from estimator.tables.tables import Tables


@dataclass(frozen=True, slots=True)
class Prepared:
    """The parts of a takeoff, the hours of those that are labor, what each of its crews meets, the rows asked for by kind."""

    parts: tuple[Part, ...]
    tasks: tuple[TaskHours, ...]
    met: Mapping[str, frozenset[str]]
    wanted: Mapping[str, Sequence[Asked]]


def prepared(takeoffs: Sequence[Takeoff], tables: Tables, place: PlaceRow | None) -> tuple[Prepared, ...]:
    """Step 1, with the place's own fees: what each takeoff brings to a scope.

    Errors: CannotGoOn for a row that is missing, an item that would cost nothing, or nothing to sell.
    """
    stop([problem for takeoff in takeoffs for problem in made_of(takeoff, tables)[1]])
    found = tuple(_prepared(takeoff, tables, place) for takeoff in takeoffs)
    something_to_sell(takeoffs, any(one.parts for one in found))
    return found


@remembered
def _prepared(takeoff: Takeoff, tables: Tables, place: PlaceRow | None) -> Prepared:
    return of_parts(with_fees_of(place, made_of(takeoff, tables)[0], tables), tables)


def of_parts(parts: Sequence[Part], tables: Tables) -> Prepared:
    """Parts that have been made already."""
    return Prepared(
        parts=tuple(parts),
        tasks=task_hours(parts, tables, tables.number("factor_cap")),
        met=facts_by_crew(parts),
        wanted={kind: asked(some) for kind, some in by_kind(parts).items()},
    )
