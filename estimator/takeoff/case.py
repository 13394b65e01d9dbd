"""One repair with everything a takeoff looks up beside it, and the sheet its quantities are written on."""

from estimator.takeoff.working import COMMON_PRACTICE, Given, Working
from estimator.works import case as planned
from estimator.works.case import surface_word as surface_word


class Case(planned.Case, dict=True):
    """What a takeoff function reads and, beside what planning notes, writes quantities on."""

    paper: Working

    @classmethod
    def sheet(cls) -> Working:
        return Working()

    def letter(self, why: str, *given: Given, source: str = COMMON_PRACTICE) -> None:
        """One letter of a registered engineer, whatever asks for it; none where the job file has his approval."""
        on_file = any("engineer" in a.what.lower() for a in self.job.approvals)
        self.paper.facts.add("engineer")
        self.paper.put(
            "engineer_letters",
            0 if on_file else 1,
            why,
            *given,
            ("letter on file", "yes" if on_file else "no"),
            source=source,
        )
