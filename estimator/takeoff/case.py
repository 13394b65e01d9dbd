"""One repair with everything a takeoff looks up beside it, and the sheet its quantities are written on."""

from estimator.takeoff.working import Working
from estimator.works import case as planned
from estimator.works.case import surface_word as surface_word


class Case(planned.Case, dict=True):
    """What a takeoff function reads and, beside what planning notes, writes quantities on."""

    paper: Working

    @classmethod
    def sheet(cls) -> Working:
        return Working()
