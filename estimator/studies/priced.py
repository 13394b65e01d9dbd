"""Repairs on a job in, the Option and the smooth price out: what every study asks again and again."""

from collections.abc import Sequence

from estimator.model.frozen import Frozen
from estimator.model.job import Job
from estimator.model.judgement import Diagnosis
from estimator.model.offer import Option
from estimator.model.work import Repair, all_repairs
from estimator.pipeline.costing import costing, place_of, smooth_as_measured
from estimator.pricing.rough import smooth_price
from estimator.quote import Chosen as InWords
from estimator.quote.option import option
from estimator.scopes.chosen import chosen, resting
from estimator.scopes.counter import Counter
from estimator.scopes.measures import floor_sf
from estimator.tables.tables import Tables
from estimator.takeoff import measure_with


class Studied(Frozen):
    """A scope on a job as it would be sold, and its price with nothing rounded, in dollars."""

    option: Option
    smooth: float


def study(repairs: Sequence[Repair], job: Job, diagnosis: Diagnosis, tables: Tables, letter: str = "A") -> Studied:
    """These repairs measured and priced on this job. Errors: those of takeoff and pricing."""
    counter = Counter(job, diagnosis.needs, (), costing(job, tables, place_of(job, tables)), tables)
    picked = resting(chosen(tuple(repairs), counter), counter)
    words = InWords(
        scope=picked.scope,
        takeoffs=picked.takeoffs,
        price=picked.price,
        days_on_site=picked.days_on_site,
        days_without_drains=picked.days_without_drains,
        floor_sf=picked.floor_sf,
        yard_sf=picked.yard_sf,
        old_pipe_left_ft=picked.old_pipe_left_ft,
        basis=picked.basis,
    )
    smooth = smooth_price(picked.takeoffs, tables, place_of(job, tables))
    return Studied(option(job, diagnosis, words, tables, letter), smooth)


def with_floor(repairs: Sequence[Repair], job: Job, tables: Tables) -> float:
    """The smooth price and this homeowner's own floor put back, dollars."""
    bare, opened_sf = bare_and_opened(repairs, job, tables)
    return bare + opened_sf * float(job.house.floor_price_sf or 0)


def bare_and_opened(repairs: Sequence[Repair], job: Job, tables: Tables) -> tuple[float, float]:
    """The smooth price without the homeowner's own floor, dollars, and how much of it is opened, square feet."""
    takeoffs = [measure_with(tables)(one, job) for one in all_repairs(repairs)]
    return smooth_as_measured(takeoffs, job, tables), floor_sf(takeoffs)
