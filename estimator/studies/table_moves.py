"""Two sets of price tables and jobs in; what each option of each job costs with the one and with the other, out.

The way from a job to its options is handed in as a function, so that nothing is written and nothing is read twice here.
"""

from collections.abc import Callable, Iterable, Mapping
from decimal import Decimal
from typing import Generic, TypeVar

from estimator.model.frozen import Frozen
from estimator.model.problem import CannotGoOn, first_of
from estimator.model.say import Say
from estimator.tables.tables import Tables

Job = TypeVar("Job")
Way = Callable[[Job, Tables], Mapping[Say, Decimal]]
"""A job and tables in, the total of each option by what it does out."""


class OptionMove(Frozen, kw_only=True):
    """One option with the old tables and with the new; None where it is not offered with the one or the other."""

    option: Say
    old: Decimal | None
    new: Decimal | None

    @property
    def difference(self) -> Decimal | None:
        """What the new tables add, to the cent."""
        return None if self.old is None or self.new is None else self.new - self.old

    @property
    def percent(self) -> Decimal | None:
        """The same in percent of the old total, to a tenth.

        >>> OptionMove(option=Say.of("dig"), old=Decimal(4200), new=Decimal(4350)).percent
        Decimal('3.6')
        """
        if self.difference is None or not self.old:
            return None
        return (100 * self.difference / self.old).quantize(Decimal("0.1"))


class JobMove(Frozen, Generic[Job], kw_only=True):
    """One job; `wrong` says in plain words why it could not be priced, and then there are no options."""

    job: Job
    options: tuple[OptionMove, ...] = ()
    wrong: Say | None = None


def table_moves(jobs: Iterable[Job], old: Tables, new: Tables, way: Way[Job]) -> tuple[JobMove[Job], ...]:
    """Every job both ways. A job that cannot be priced is told so in its row and stops no other."""
    return tuple(_move(job, old, new, way) for job in jobs)


def _move(job: Job, old: Tables, new: Tables, way: Way[Job]) -> JobMove[Job]:
    try:
        before, after = way(job, old), way(job, new)
    except CannotGoOn as stop:
        return JobMove(job=job, wrong=first_of(stop.problems))
    names = dict.fromkeys([*before, *after])
    return JobMove(
        job=job,
        options=tuple(OptionMove(option=name, old=before.get(name), new=after.get(name)) for name in names),
    )
