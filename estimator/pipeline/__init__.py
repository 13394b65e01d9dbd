"""The steps in their order: a Job and the firm's tables in, options with prices and the Quote out."""

from dataclasses import replace
from datetime import date

from estimator.diagnosis import diagnose
from estimator.model.frozen import Frozen
from estimator.model.job import Job
from estimator.model.judgement import Diagnosis
from estimator.model.offer import Quote
from estimator.model.problem import CannotGoOn, Level, Problem
from estimator.pipeline import options
from estimator.pipeline.costing import costing, place_of, with_job_settings
from estimator.pricing.add_ons import bound
from estimator.pricing.lines_off import sellable
from estimator.pricing.present_worth import with_cost_a_year
from estimator.quote import build_quote, build_report
from estimator.quote.invented import with_invented
from estimator.scopes import owners_words
from estimator.scopes.candidates import Offers, repairs
from estimator.scopes.choose import Choices, choose
from estimator.scopes.owners_words import lost_wishes, unknown_words
from estimator.tables import against_job
from estimator.tables.tables import Tables
from estimator.takeoff import measure_with

PROBLEMS = (*against_job.PROBLEMS, *owners_words.PROBLEMS, *options.PROBLEMS)


class Result(Frozen, kw_only=True):
    """Everything on the way, for the papers, the record and `explain`."""

    job: Job
    tables: Tables
    diagnosis: Diagnosis
    offers: Offers
    choices: Choices
    quote: Quote | None
    problems: tuple[Problem, ...] = ()


def run(job: Job, tables: Tables, day: date, revision: int = 1) -> Result:
    """The whole way once. `day` is the day the quote is dated; prices are those of `tables.day`.

    Errors: CannotGoOn with all that stops it: a setting nobody knows, a missing row, a quote that may not be issued.
    """
    return run_with(job, tables, day, revision, for_papers=True)


def run_with(job: Job, tables: Tables, day: date, revision: int, *, for_papers: bool) -> Result:
    """The same; where no papers are made, without the margins of extra work and the reasons why a way was never tried. Errors: as `run`."""
    said = _or_stop(unknown_words(job, tables))
    tables = with_job_settings(job, tables)
    place = place_of(job, tables)
    diagnosis = diagnose(job, tables)
    offers = _with_every_line(repairs(job, diagnosis, tables, untried=for_papers), job, tables)
    choices = choose(job, diagnosis, offers, costing(job, tables, place), tables)
    job = bound(job, [option.scope for option in choices.options])
    priced, problems = options.priced_options(choices.options, job, tables, place, for_papers=for_papers)
    if priced or diagnosis.needs:
        built = build_quote(job, diagnosis, priced, tables, day, revision, choices.verdicts, choices.unanswered)
        quote = with_invented(with_cost_a_year(built, tables), tables)
    else:  # a clean house: nothing to repair, nothing to sell
        quote = build_report(job, diagnosis, tables, day, revision)
    return Result(
        job=job, tables=tables, diagnosis=diagnosis, offers=offers, choices=choices, quote=quote,
        problems=(*said, *lost_wishes(job, choices), *problems),
    )  # fmt: skip


def report(job: Job, tables: Tables, day: date, revision: int = 1) -> Quote:
    """What was seen and why nothing is offered, where the rules leave no way of repair.

    Errors: CannotGoOn as `run`, but never for there being nothing to offer.
    """
    _or_stop(unknown_words(job, tables))
    tables = with_job_settings(job, tables)
    diagnosis = diagnose(job, tables)
    offers = _with_every_line(repairs(job, diagnosis, tables), job, tables)
    verdicts = choose(job, diagnosis, offers, costing(job, tables, place_of(job, tables)), tables).verdicts
    return build_report(job, diagnosis, tables, day, revision, verdicts)


def _with_every_line(offers: Offers, job: Job, tables: Tables) -> Offers:
    """The offers less those that need a work item out of use."""
    kept, against = sellable(offers.repairs, lambda repair: measure_with(tables)(repair, job), tables)
    spare, too = sellable(offers.instead, lambda repair: measure_with(tables)(repair, job), tables)
    return Offers(kept, (*offers.verdicts, *against, *too), spare)


def with_ranges(quote: Quote, tables: Tables, seed: int) -> Quote:
    """The quote with the range of each option, for the office alone. The same seed draws the same."""
    from estimator.pricing.likely_range import range_of

    own = with_job_settings(quote.job, tables)
    drawn = tuple(replace(o, likely_range=range_of(o.price, o.takeoffs, own, seed)) for o in quote.options)
    return replace(quote, options=drawn)


def _or_stop(problems: tuple[Problem, ...]) -> tuple[Problem, ...]:
    """The warnings among them. Errors: CannotGoOn with all of them where one is an error."""
    if any(p.level is Level.ERROR for p in problems):
        raise CannotGoOn(*problems)
    return problems
