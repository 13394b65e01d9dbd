"""Jobs that were done, each with the ways of repair sold and its callbacks, in; callbacks counted per way, with cause and cost, out."""

from collections import Counter
from collections.abc import Sequence
from decimal import Decimal
from math import sqrt

from estimator.model.afterwards import OURS, Callback
from estimator.model.frozen import Frozen
from estimator.model.say import Dollars, Say
from estimator.onsite.as_built import way
from estimator.onsite.record_sheet import CAUSES
from estimator.onsite.sheet import Block, SiteSheet

NAME = "callbacks"
NINE_OF_TEN = 1.6449
"""Standard errors on each side that hold nine of ten of a normal distribution."""


class DoneJob(Frozen):
    """The ways of repair of a job that was done, and who called back."""

    methods: frozenset[str]
    callbacks: tuple[Callback, ...]


class Count(Frozen):
    """One way of repair over all jobs: done so often, called back on so many of those jobs, so often through us, at what cost."""

    method: str
    jobs: int
    called_back: int
    calls: int
    ours: int
    cost: Decimal

    @property
    def band(self) -> tuple[float, float]:
        """Between which shares of jobs the true one lies, nine times of ten."""
        return share_band(self.called_back, self.jobs)


def share_band(hits: int, of: int, errors: float = NINE_OF_TEN) -> tuple[float, float]:
    """Return between which shares the true one lies. Source: E. B. Wilson (1927), score interval. Errors: ValueError for none of none.

    >>> tuple(round(share, 3) for share in share_band(1, 10))
    (0.023, 0.348)
    """
    if of < 1 or not 0 <= hits <= of:
        raise ValueError("so many of at least one")
    share, z2 = hits / of, errors**2
    middle = (share + z2 / (2 * of)) / (1 + z2 / of)
    half = errors / (1 + z2 / of) * sqrt(share * (1 - share) / of + z2 / (4 * of * of))
    return max(0.0, middle - half), min(1.0, middle + half)


def counted(jobs: Sequence[DoneJob]) -> tuple[Count, ...]:
    """Return a count for each way of repair that was done or blamed, the dearest callbacks first."""
    methods = {m for job in jobs for m in job.methods} | {c.method for job in jobs for c in job.callbacks}
    return tuple(sorted((_count(m, jobs) for m in methods), key=lambda c: (-c.cost, -c.calls, c.method)))


def _count(method: str, jobs: Sequence[DoneJob]) -> Count:
    """A call that blames a way that was not sold counts its job among those where it was done."""
    mine = [[c for c in job.callbacks if c.method == method] for job in jobs]
    done = sum(method in job.methods or bool(calls) for job, calls in zip(jobs, mine, strict=True))
    calls = [c for some in mine for c in some]
    return Count(
        method,
        done,
        sum(bool(some) for some in mine),
        len(calls),
        sum(c.cause in OURS for c in calls),
        sum((c.cost for c in calls), Decimal(0)),
    )


def callbacks_sheet(jobs: Sequence[DoneJob]) -> SiteSheet:
    """Return the count as a sheet for the owner."""
    counts = counted(jobs)
    calls = [c for job in jobs for c in job.callbacks]
    title = Say.of("Callbacks by method")
    if not jobs:
        return SiteSheet(name=NAME, title=title, answer=Say.of("No job in this folder is noted as done."), blocks=())
    cost = sum((c.cost for c in calls), Decimal(0))
    answer = Say.of(
        "Jobs done: {jobs}. Callbacks: {calls}. They cost {cost}.", jobs=len(jobs), calls=len(calls), cost=Dollars(cost)
    )
    heads = (
        Say.of("method"), Say.of("jobs"), Say.of("called back"), Say.of("likely share, 9 of 10"),
        Say.of("callbacks"), Say.of("caused by us"), Say.of("cost"),
    )  # fmt: skip
    rows = tuple(
        (
            way(c.method),
            str(c.jobs),
            str(c.called_back),
            Say.of("{low} to {high}%", low=f"{100 * c.band[0]:.0f}", high=f"{100 * c.band[1]:.0f}"),
            str(c.calls),
            str(c.ours),
            Say.of("{amount}", amount=Dollars(c.cost)),
        )
        for c in counts
    )
    causes = Counter(c.cause for c in calls)
    by_cause = tuple(
        Say.of("{cause}: {count}", cause=CAUSES[cause], count=count) for cause, count in causes.most_common()
    )
    blocks = (
        Block(heading=Say.of("By method"), heads=heads, rows=rows),
        Block(heading=Say.of("By cause"), lines=by_cause),
    )
    return SiteSheet(name=NAME, title=title, answer=answer, blocks=tuple(b for b in blocks if not b.empty))
