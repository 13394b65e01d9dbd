"""A quote in, what each option's price hangs on out: the unknowns of every option, the greatest swing first."""

from collections.abc import Iterator

from estimator.model.job import Job
from estimator.model.offer import Option, Quote
from estimator.model.work import Scope
from estimator.pipeline.costing import with_job_settings
from estimator.quote.recommend import compared
from estimator.studies.sensitivity import Unknown, sensitivity
from estimator.tables.tables import Tables
from estimator.works.methods import record_of


def unknowns(quote: Quote, tables: Tables) -> Iterator[tuple[Option, tuple[Unknown, ...]]]:
    """Each option with its unknowns. Where a lining may not hold, the cheapest option without one is what comes instead."""
    job: Job = quote.job
    own = with_job_settings(job, tables)
    instead = without_lining(quote)
    for option in compared(quote):
        yield option, sensitivity(option.scope, job, own, instead)


def without_lining(quote: Quote) -> Scope | None:
    """The scope of the cheapest option that lines nothing, or None."""
    open_ = [o for o in compared(quote) if not any(record_of(r.method).lined for r in o.scope.repairs)]
    return min(open_, key=lambda o: (o.price.total, o.letter)).scope if open_ else None
