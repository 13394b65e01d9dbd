"""A dig with its sides settled in; ladders, boxes, pumping, potholes, the engineer and what is said to the crew, out."""

from estimator.knowledge.excavation import (
    FOOTING_SOURCE,
    LADDER_TRAVEL_FT,
    SPOIL_BACK_FT,
    clear_of_footing,
    ladders,
    needs_engineer,
    needs_ladder,
    needs_system,
)
from estimator.model.say import Feet
from estimator.model.stretch import Stretch
from estimator.takeoff.case import Case
from estimator.takeoff.hole_safety import hand_shores, say_edge_and_air, trench_boxes
from estimator.works.depth import Bottom, pothole_reaches
from estimator.works.protection import Way
from estimator.works.room import Room


def safety(case: Case, hole: Stretch, way: Way, under: Bottom, wet: bool, days: float) -> None:
    paper, depth = case.paper, under.safety_ft
    facts = paper.facts
    if depth > case.number("depth_slow_from_ft"):
        facts.add("depth_over_4")
    if needs_system(depth, "C", None):
        facts.add("depth_over_5")
    if depth > case.number("hand_dig_deep_ft") and "hand_only" in facts:
        facts.add("depth_over_6")
    if needs_ladder(depth):
        paper.put(
            "ladders",
            ladders(way.length_ft),
            "nobody walks more than 25 ft sideways to one",
            ("length", way.length_ft, "ft"),
            ("most travel", LADDER_TRAVEL_FT, "ft"),
            source="29 CFR 1926.651(c)(2)",
        )
    if way.name in ("sloped", "benched"):
        facts.add("sloped")
    if way.name == "boxed":
        trench_boxes(case, (way.length_ft,), way.deepest_ft, days)
    if way.name == "shored":
        hand_shores(case, 2 * (way.length_ft + way.width_ft), way.deepest_ft)
    if wet:
        facts.add("wet")
        paper.put("dewater_days", days, "days the dig is open", ("days open", days))
    _say_protection(case, way, depth)
    say_edge_and_air(case, hole, depth)


def _say_protection(case: Case, way: Way, depth_ft: float) -> None:
    paper = case.paper
    if needs_engineer(depth_ft):
        case.letter(
            "deeper than 20 ft a registered engineer designs the protection",
            {"engineer-past-twenty-feet"},
            source="29 CFR 1926.652(b), (c)",
        )
    if way.name != "vertical":  # what stands by itself is said by protect-from-five-feet
        paper.warn(
            "nobody goes in before the sides are held ({way}) and the competent person has looked, "
            "each day and after every rain",
            way=way.name,
        )
    paper.warn("spoil, tools and machines stay at least {back} from the edge", back=Feet(SPOIL_BACK_FT))


def heap_room(case: Case, way: Way, beside: Room) -> None:
    """The heap lies beside the dig, back from its edge, where the free width takes both; else it is carried off."""
    if beside.clear_ft is None:
        return
    heap_ft = case.paper.value("pile_sf") / way.length_ft
    needed = way.top_width_ft + SPOIL_BACK_FT + heap_ft
    if needed > beside.clear_ft:
        case.paper.warn(
            "dig and heap side by side need {needed}, {clear} is free: the heap goes elsewhere",
            needed=Feet(round(needed, 1)),
            clear=Feet(beside.clear_ft),
        )


def machine_path(case: Case) -> None:
    """Plywood over the lawn from the street to the hole, where a machine digs and the way was measured."""
    carry = case.job.site.carry_ft
    if carry and "hand_only" not in case.paper.facts:
        case.paper.put("plywood_path_ft", carry, "from the street to the hole", ("way", carry, "ft"))


def potholes(case: Case, hole: Stretch) -> None:
    """What is uncovered by hand: before anyone digs, or, of a pipe too deep for that, within the held dig; it takes no less."""
    crossings = len([m for m in case.profile.marks("crossing") if m.stretch.touches(hole)])
    potholed = any(m.stretch.touches(hole) for m in case.profile.marks("pothole"))
    by_hand = pothole_reaches(case, hole)
    if not by_hand:
        case.paper.warn(
            "the pipe lies too deep to be uncovered in a pothole by hand: the last foot over it is dug by hand, "
            "with the sides held, and the locator's error stays in every depth"
        )
    case.paper.put(
        "potholes",
        crossings + (0 if potholed else 1),
        "utilities that cross, and the pipe itself unless it was uncovered before; where it lies too deep for a pothole, by hand within the held dig",
        ("crossings", crossings),
        ("pipe uncovered before", "yes" if potholed else "no"),
        ("within reach of a pothole", "yes" if by_hand else "no"),
    )


def footing_line(case: Case, way: Way, under: Bottom, beside: Room) -> None:
    """A dig that comes below the 45 degree line from a footing's lower edge takes an engineer's letter."""
    for footing in beside.footings:
        offset = footing.away_ft - way.width_ft / 2
        below = under.safety_ft - footing.deep_ft
        if clear_of_footing(offset, below):
            continue
        case.letter(
            "the dig comes below the 45 degree line from a footing",
            {"footing-below-dig"},
            ("from the dig's edge to the footing", offset, "ft"),
            ("below the footing", below, "ft"),
            source=FOOTING_SOURCE,
        )
