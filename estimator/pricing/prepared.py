"""A takeoff in; what a scope has only to add up out: its parts, their hours, and the rows they ask for, worked out once."""

from collections.abc import Hashable, Mapping, Sequence
from functools import cached_property

from msgspec import field

from estimator.model.frozen import Frozen
from estimator.model.price import TaskHours
from estimator.model.problem import Problem
from estimator.model.remembered import remembered, remembered_by
from estimator.model.work import Takeoff
from estimator.pricing.amounts import Asked, asked
from estimator.pricing.hours import facts_by_crew, task_hours
from estimator.pricing.parts import Part, by_kind, made_of, something_to_sell
from estimator.pricing.problems import stop
from estimator.pricing.subs import with_fees_of
from estimator.tables.rows import PlaceRow, TaxClass
from estimator.tables.tables import Tables


class Prepared(Frozen, kw_only=True, dict=True):
    """The parts of a takeoff, the hours of those that are labor, what each of its crews meets, the rows asked for by kind.

    Where a row is missing or an item would cost nothing there are problems alone.
    """

    parts: tuple[Part, ...] = ()
    tasks: tuple[TaskHours, ...] = ()
    met: Mapping[str, frozenset[str]] = field(default_factory=dict)
    wanted: Mapping[str, Sequence[Asked]] = field(default_factory=dict)
    problems: Sequence[Problem] = ()

    @cached_property
    def items(self) -> frozenset[str]:
        """The work items that are sold."""
        return frozenset(part.item.item for part in self.parts)


def prepared(takeoffs: Sequence[Takeoff], tables: Tables, place: PlaceRow | None) -> tuple[Prepared, ...]:
    """Step 1, with the place's own fees: what each takeoff brings to a scope.

    Errors: CannotGoOn for a row that is missing, an item that would cost nothing, or nothing to sell.
    """
    found = tuple(_prepared(takeoff, tables, place) for takeoff in takeoffs)
    stop([problem for one in found for problem in one.problems])
    something_to_sell(takeoffs, any(one.parts for one in found))
    return found


def _inputs(takeoff: Takeoff, tables: Tables, place: PlaceRow | None) -> Hashable:
    """All that the parts of a takeoff hang on: what a job has once is the same for many scopes."""
    amounts = tuple((q.name, q.value, q.unit) for q in takeoff.quantities)
    return id(tables), id(place), takeoff.repair.id, takeoff.repair.method, takeoff.size, takeoff.facts, amounts


@remembered
@remembered_by(_inputs)
def _prepared(takeoff: Takeoff, tables: Tables, place: PlaceRow | None) -> Prepared:
    made, problems = made_of(takeoff, tables)
    return Prepared(problems=problems) if problems else of_parts(with_fees_of(place, made, tables), tables)


def of_parts(parts: Sequence[Part], tables: Tables) -> Prepared:
    """Parts that have been made already."""
    return Prepared(
        parts=tuple(parts),
        tasks=task_hours(parts, tables, tables.number("factor_cap")),
        met=facts_by_crew(parts),
        wanted={kind: asked(some) for kind, some in by_kind(parts).items()},
    )


def taxed_in_their_own_way(scope: Sequence[Prepared], tables: Tables, place: PlaceRow | None) -> Mapping[str, TaxClass]:
    """The work items of a scope that the place taxes in a way of their own, and its row for each."""
    taxed = _taxed_apart(tables, place) if place else {}
    sold = taxed.keys() & frozenset[str]().union(*[one.items for one in scope])
    return {item: row for item, row in taxed.items() if item in sold}


@remembered
def _taxed_apart(tables: Tables, place: PlaceRow) -> Mapping[str, TaxClass]:
    rows = ((item.item, tables.tax_class(place.place, item.tax_class)) for item in tables.work_items)
    return {item: row for item, row in rows if row is not None}
