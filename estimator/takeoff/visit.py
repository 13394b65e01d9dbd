"""A return visit in; what is filmed, located, leveled and measured on it, out."""

from estimator.model.visit import kinds_in
from estimator.takeoff.case import Case
from estimator.takeoff.water_test import old_pipe_test, to_slab_top_ft
from estimator.works.depth import pothole_reaches

QUANTITY: dict[str, tuple[str, str]] = {
    "locate": ("locates", "places located from above, with their depth"),
    "pothole": ("potholes", "the pipe uncovered by hand, its depth read with a stick"),
    "level": ("level_shots", "levels of the pipe bottom"),
    "measure": ("site_measures", "the way in, measured"),
    "test": ("whole_tests", "all drains under the floor filled and watched together"),
    "smoke": ("smoke_tests", "drains and vents filled with smoke"),
    "scan": ("tendon_scans", "the slab scanned before anybody plans to cut it"),
    "engineer": ("engineer_letters", "what an engineer must say before a price holds"),
}
BY_VACUUM = ("vacuum_potholes", "the pipe uncovered by a vacuum truck: too deep for a hole by hand")
"""A hole so deep counts as a reading where pothole_max_ft of the firm, or of the job, allows it."""


def visit(case: Case) -> None:
    """One of each that the repair names; both ends of the stretch are located and leveled, and a place beyond each."""
    ends = 2 if case.stretch.length_ft else 1
    many = {"locate": ends, "level": 2 * ends}
    kinds = kinds_in(case.repair.facts)
    if "locate" in kinds and "film" not in kinds:
        case.paper.put("films_before", 1, "a transmitter is located on the camera, in the pipe")
    if "film" in kinds:
        case.paper.put("films_before", 1, "the line inspected from the side nobody came from", ("kind", "film"))
    for kind in (one for one in kinds if one != "film"):
        name, why = BY_VACUUM if kind == "pothole" and not pothole_reaches(case, case.stretch) else QUANTITY[kind]
        case.paper.put(name, many.get(kind, 1), why, ("kind", kind))
    if "test" in kinds:
        old_pipe_test(case, to_slab_top_ft(case))
