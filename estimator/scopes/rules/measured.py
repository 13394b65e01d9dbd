"""A repair with its takeoff in; the depths, widths and lengths that rules compare out."""

from dataclasses import dataclass

from estimator.model.work import Repair, Takeoff
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits


@dataclass(frozen=True, slots=True)
class Measured:
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

    def safe_depth_ft(self, limits: Limits) -> float | None:
        """Deepest bottom with bedding and the locator's tolerance, ft; None where nothing was dug.

        The takeoff gives it for a dig; a tunnel pit's depth gets the tolerance here: the greater of a share and a least.
        """
        depths = [q.value for q in self.takeoff.quantities if q.name == "safety_depth_ft"]
        pit_ft = self.most("pit_depth_ft")
        if pit_ft is not None:
            share, least = limits("locator_tolerance_percent") / 100, limits("locator_tolerance_min_ft")
            depths.append(pit_ft + max(share * pit_ft, least))
        return max(depths, default=None)

    @property
    def bottom_width_ft(self) -> float | None:
        return self.most("dig_width_ft")

    @property
    def top_width_ft(self) -> float | None:
        return self.most("dig_top_width_ft")

    @property
    def tunnel_height_ft(self) -> float | None:
        """The least height anywhere in the tunnel."""
        return self.least("tunnel_mouth_height_ft", "tunnel_face_height_ft")

    @property
    def entry_pit_ft(self) -> float | None:
        return self.most("burst_entry_ft")
