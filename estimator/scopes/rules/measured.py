"""A repair with its takeoff in; the depths, widths and lengths that rules compare out."""

from estimator.model.frozen import Frozen
from estimator.model.work import Repair, Takeoff
from estimator.scopes.rules.facts import StretchFacts


class Measured(Frozen):
    """What a rule is asked about once a repair is measured: the repair, its takeoff, the facts of its stretch."""

    repair: Repair
    takeoff: Takeoff
    at: StretchFacts

    def least(self, *names: str) -> float | None:
        """The least of these quantities that the takeoff holds; None where it holds none."""
        return min((q.value for q in self.takeoff.quantities if q.name in names), default=None)

    def most(self, *names: str) -> float | None:
        """The greatest of these quantities that the takeoff holds; None where it holds none."""
        return max((q.value for q in self.takeoff.quantities if q.name in names), default=None)

    @property
    def tunnel_height_ft(self) -> float | None:
        """The least height anywhere in the tunnel."""
        return self.least("tunnel_mouth_height_ft", "tunnel_face_height_ft")

    @property
    def entry_pit_ft(self) -> float | None:
        return self.most("burst_entry_ft")
