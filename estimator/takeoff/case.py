"""One repair with everything a takeoff looks up beside it, and the sheet its quantities are written on."""

from collections.abc import Collection

from estimator.takeoff.working import COMMON_PRACTICE, Given, Working
from estimator.works import case as planned
from estimator.works.case import surface_word as surface_word


class Case(planned.Case, dict=True):
    """What a takeoff function reads and, beside what planning notes, writes quantities on."""

    paper: Working

    @classmethod
    def sheet(cls) -> Working:
        return Working()

    def letter(self, why: str, rules: Collection[str], *given: Given, source: str = COMMON_PRACTICE) -> None:
        """One letter of a registered engineer, whatever asks for it; none where approvals in the job file cover all these rules."""
        covered = {rule for paper in self.job.approvals for rule in paper.covers}
        on_file = covered.issuperset(rules)
        self.paper.facts.add("engineer")
        if self.paper.value("engineer_letters"):
            return  # asked for already
        self.paper.put(
            "engineer_letters",
            0 if on_file else 1,
            why,
            *given,
            ("letter on file", "yes" if on_file else "no"),
            source=source,
        )
