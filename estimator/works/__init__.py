"""What a repair does to the ground, the floor and the house: openings, pipe laid, lined, burst and left, ways in.

`works_of(repair, job, tables)` plans one repair; rules, takeoff and papers read the same answer.
"""

from estimator.model.job import Job
from estimator.model.work import Repair
from estimator.model.works import Burst, Laid, Left, Lined, Opening, Span, WayIn, Works, together
from estimator.tables.tables import Tables
from estimator.works.case import Case
from estimator.works.methods import record_of


def works_of(repair: Repair, job: Job, tables: Tables) -> Works:
    """Return what this repair does, without the repairs that come first (each has works of its own).

    Errors: KeyError for a method or a line nobody knows; CannotGoOn for a setting the tables lack.
    """
    return record_of(repair.method).plan(Case.of(repair, job, tables))


__all__ = ["Burst", "Laid", "Left", "Lined", "Opening", "Span", "WayIn", "Works", "together", "works_of"]
