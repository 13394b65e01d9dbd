"""The short methods in: isolation test, look and see, abandon, crawl replace; their quantities out."""

from estimator.knowledge.hydrostatics import GAL_PER_CF, pipe_gal_per_ft
from estimator.model import crawl_space
from estimator.model.stretch import Stretch
from estimator.takeoff.case import Case
from estimator.takeoff.pipe import hangers, new_pipe
from estimator.takeoff.water_test import old_pipe_test, to_slab_top_ft
from estimator.takeoff.working import CUBIC_FT_PER_CY
from estimator.takeoff.yard import look


def isolation_test(case: Case) -> None:
    """Each side drain and the line itself is plugged and watched apart."""
    sections = 1 + len(case.branches)
    case.paper.put(
        "isolation_tests", sections, "the line and each side drain apart", ("side drains", len(case.branches))
    )
    case.paper.put("toilets", case.number("toilets_per_test"), "one to fill through")
    old_pipe_test(case, to_slab_top_ft(case))


def look_and_see(case: Case) -> None:
    """One hole to find out; what is found is priced by the extras agreed before."""
    look(case)
    case.paper.put("looks", 1, "one hole")
    case.paper.assume("the price covers the inspection only; repairs are at the unit prices agreed before work starts")


def abandon(case: Case) -> None:
    abandoned(case, case.stretch)


def crawl_replace(case: Case) -> None:
    """Pipe hung under the floor of a crawl space: no earth, but little room."""
    new_pipe(case, tunnel=False, tested=True)
    case.paper.drop("pipe_trench_ft")
    case.paper.put(
        "pipe_crawl_ft",
        case.stretch.length_ft,
        "new pipe hung in the crawl space",
        ("pipe", case.stretch.length_ft, "ft"),
    )
    hangers(case, case.stretch.length_ft)
    marks = case.profile.marks(*crawl_space.WORDS)
    if crawl_space.is_muddy(marks, case.job.house):
        case.paper.facts.add("crawl_mud")
    height = crawl_space.height_ft(marks, case.job.house)
    if height is not None and height < case.number("crawl_low_ft"):
        case.paper.facts.add("crawl_low")


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
