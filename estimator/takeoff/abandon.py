"""Old pipe left in the ground in; caps and fill, out."""

from estimator.knowledge.hydrostatics import GAL_PER_CF, pipe_gal_per_ft
from estimator.model.stretch import Stretch
from estimator.takeoff.case import Case
from estimator.takeoff.working import CUBIC_FT_PER_CY


def abandoned(case: Case, left: Stretch) -> None:
    """Caps at both ends and at each dead side drain; fill where the pipe is large and something stands on it, or a rule asks."""
    paper = case.paper
    ties = sum(1 for b in case.profile.branches if left.holds(b.station_ft))
    paper.put("caps", 2 + ties, "both ends and each side drain", ("side drains", ties))
    over = {zone for _, zone in case.profile.zones(left)}
    size = max(s for _, s in case.profile.sizes(left))
    large = size >= case.number("abandon_fill_from_in") and over & {"slab", "drive", "street"}
    if large or "fill_old_pipe" in case.repair.facts:
        gallons = pipe_gal_per_ft(size) * left.length_ft
        paper.put(
            "abandon_fill_cy",
            gallons / (GAL_PER_CF * CUBIC_FT_PER_CY),
            "gal/ft x length / (7.48 x 27)",
            ("bore", size, "in"),
            ("length", left.length_ft, "ft"),
            ("gal/ft", pipe_gal_per_ft(size)),
        )
