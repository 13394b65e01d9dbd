"""A job and one of the scopes on offer in; the job with the discounts that this scope gets, out."""

from dataclasses import replace

from estimator.model.job import Job
from estimator.model.work import Scope, all_repairs
from estimator.works.methods import record_of


def discounted(job: Job, scope: Scope, offered: int) -> Job:
    """Return the job; a discount is for the repair, so a visit that is one of several `offered` keeps its price."""
    visits = (record_of(repair.method).measure == "visit" for repair in all_repairs(scope.repairs))
    return replace(job, discounts=()) if offered > 1 and all(visits) else job
