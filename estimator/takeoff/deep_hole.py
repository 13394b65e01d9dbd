"""A hole people work in and how deep it is in; what is said of its edge and its air, out."""

from estimator.knowledge.excavation import air_test, needs_guardrail
from estimator.model.say import Feet
from estimator.model.stretch import Stretch
from estimator.takeoff.case import Case
from estimator.takeoff.ground import leaks_here


def say_edge_and_air(case: Case, hole: Stretch, safety_ft: float) -> None:
    """A rail from 6 ft on; air tested past 4 ft where sewage has been getting into the soil (29 CFR 1926.501(b)(7), .651(g))."""
    if needs_guardrail(safety_ft):
        case.paper.warn(
            "the edge of a hole {depth} deep is railed or fenced wherever it is not plainly seen",
            depth=Feet(round(safety_ft, 2)),
        )
    if air_test(safety_ft, leaks_here(case, hole)):
        case.paper.warn(
            "sewage has been getting into this soil: the air in the hole is tested before anyone goes in and while they work"
        )
