"""What the search is handed to measure and price with, bound to one job and the firm's tables."""

from collections.abc import Sequence

from estimator.model.job import Job
from estimator.model.work import Repair, Takeoff, all_repairs
from estimator.pricing.build import price_scope
from estimator.pricing.rough import rough_cost, smooth_price
from estimator.pricing.total import Total, total_of
from estimator.scopes.costing import Costing
from estimator.scopes.rules import conditions
from estimator.tables import against_job
from estimator.tables.rows import PlaceRow
from estimator.tables.tables import Tables
from estimator.takeoff import follows_days_off, measure_with, on_rent, rented_for, take_off_job
from estimator.takeoff.together import beside, together


def with_job_settings(job: Job, tables: Tables) -> Tables:
    """The tables with the settings this job changes. Errors: CannotGoOn naming each that the tables would refuse."""
    return against_job.with_settings_of(job, tables)


def place_of(job: Job, tables: Tables) -> PlaceRow | None:
    """The row of the job's jurisdiction; None when the tables have none (then nothing about it is answered)."""
    return tables.known_place(job.house.jurisdiction)


def costing(job: Job, tables: Tables, place: PlaceRow | None) -> Costing:
    """The functions of takeoff and pricing that the search is handed, each bound to this job and these tables.

    Prices are those before any discount: a discount must not be refused for a repair that nobody is shown.
    """
    return Costing(
        take_off=lambda repair: measure_with(tables)(repair, job),
        unscheduled=lambda takeoffs: _unscheduled(takeoffs, job, tables, place),
        in_figures=lambda takeoffs: in_figures(takeoffs, job, tables, place),
        rough=lambda takeoff: rough_cost(takeoff, tables, place),
        price=lambda takeoffs: price_scope(takeoffs, tables, place, allowances=job.allowances),
        conditions=lambda repair, takeoff: conditions(repair, takeoff, job, tables),
        smooth=smooth,
        together=lambda takeoffs: together(takeoffs, job, tables),
        beside=lambda takeoff, others: beside(takeoff, others, job, tables),
    )


def _unscheduled(own: Sequence[Takeoff], job: Job, tables: Tables, place: PlaceRow | None) -> Total:
    """The scope with nothing rented for longer than its takeoffs say by themselves."""
    return total_of((*own, take_off_job(job, own, tables)), tables, place, job.allowances)


def in_figures(own: Sequence[Takeoff], job: Job, tables: Tables, place: PlaceRow | None) -> Total:
    """The takeoffs of a scope's repairs and what it has once, reckoned to the cent. Errors: those of takeoff and pricing.

    What is rented as long as the drains are off, such as a portable toilet, or the ground is open, as boxes, pumps and the
    excavator are, is known only once the hours are.
    """
    found = _unscheduled(own, job, tables, place)
    for_so_long, once = tuple(own), found.takeoffs[-1]
    if any(map(on_rent, own)):
        for_so_long = rented_for(own, found.days_dug, tables)
        once = take_off_job(job, for_so_long, tables)
    if follows_days_off(once):
        once = take_off_job(job, for_so_long, tables, found.days_without_drains)
    whole = (*for_so_long, once)
    return found if whole == found.takeoffs else total_of(whole, tables, place, job.allowances)


def smooth(repairs: Sequence[Repair], job: Job, tables: Tables) -> float:
    """These repairs measured and priced as one scope, nothing rounded, dollars. Errors: those of takeoff and pricing."""
    return smooth_as_measured([measure_with(tables)(one, job) for one in all_repairs(repairs)], job, tables)


def smooth_as_measured(takeoffs: Sequence[Takeoff], job: Job, tables: Tables) -> float:
    """The same for repairs that are measured already. Errors: those of pricing."""
    own = together(takeoffs, job, tables)
    return smooth_price([*own, take_off_job(job, own, tables)], tables, place_of(job, tables))
