"""A hole people work in and how deep it is in; what is said of its edge and its air, out."""

from estimator.knowledge.excavation import air_test, needs_guardrail, needs_system
from estimator.model.say import Feet
from estimator.model.stretch import Stretch
from estimator.takeoff.case import Case
from estimator.works.ground import leaks_here


def sides_are_held(case: Case, safety_ft: float) -> bool:
    """Whether the sides must be held at this depth, the locator's error in it; what the depth asks for is noted and said.

    The soil of a pit or an opening has been dug before: type C (29 CFR 1926.652(a), Appendix A to Subpart P).
    """
    facts = case.paper.facts
    if safety_ft > case.number("depth_slow_from_ft"):
        facts.add("depth_over_4")
    held = needs_system(safety_ft, "C", case.job.site.caving_signs)
    if held:
        facts.add("depth_over_5")
    say_edge_and_air(case, case.stretch, safety_ft)
    return held


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
