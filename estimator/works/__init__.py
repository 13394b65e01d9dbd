"""What a repair does to the ground, the floor and the house: openings, pipe laid, lined, burst and left, ways in.

`works_of(repair, job, tables)` plans one repair; rules, takeoff and papers read the same answer.
"""

from typing import TYPE_CHECKING

from estimator.model.job import Job
from estimator.model.opening import Opening, Span
from estimator.model.stretch import Stretch
from estimator.model.work import Repair
from estimator.model.works import Burst, Laid, Left, Lined, WayIn, Works, together
from estimator.works.case import Case
from estimator.works.methods import record_of

if TYPE_CHECKING:
    from estimator.tables.tables import Tables


def works_of(repair: Repair, job: Job, tables: "Tables", open_ft: float = 0.0) -> Works:
    """Return what this repair does, without the repairs that come first (each has works of its own).

    Works follow from the way, the stretch and how one gets there alone, so each is planned once a job. `open_ft` of its
    lower end lie in the open floor over the line it joins.
    Errors: KeyError for a method or a line nobody knows; CannotGoOn for a setting the tables lack.
    """
    planned = _planned(job, tables)
    asked = repair.method, repair.line, repair.stretch, repair.reroute, repair.entry, open_ft
    if asked not in planned:
        planned[asked] = record_of(repair.method).plan(Case.of(repair, job, tables, open_ft=open_ft))
    return planned[asked]


Planned = dict[tuple[str, str, Stretch, str, str, float], Works]
_last: list[tuple[Job, "Tables", Planned]] = []


def _planned(job: Job, tables: "Tables") -> Planned:
    """Those of the job asked about last."""
    if not _last or _last[0][0] is not job or _last[0][1] is not tables:
        _last[:] = [(job, tables, {})]
    return _last[0][2]


__all__ = ["Burst", "Laid", "Left", "Lined", "Opening", "Span", "WayIn", "Works", "together", "works_of"]
