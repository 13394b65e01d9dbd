"""A length of pipe to reach from the open air in; the dig, its protection, its fill and what is hauled away, out."""

from estimator.knowledge.excavation import SLOPE_SOURCE
from estimator.knowledge.trench import D2321_SOURCE
from estimator.model.stretch import Stretch
from estimator.takeoff.case import Case
from estimator.takeoff.dig_fill import fill, fill_as_it_was
from estimator.takeoff.dig_safety import footing_line, heap_room, machine_path, potholes, safety
from estimator.takeoff.haul import spoil
from estimator.takeoff.working import cubic_yards, shown
from estimator.works.depth import Bottom, bedding_ft, outside_ft
from estimator.works.earth import PRISMOIDAL, trench_end_area_cf
from estimator.works.ground import ground_facts, hand_only
from estimator.works.open_dig import OpenDig, open_dig
from estimator.works.protection import Way
from estimator.works.trench_width import exact_width_ft


def dig(case: Case, hole: Stretch, days: float, *, new_pipe: bool = True) -> OpenDig:
    """Everything a trench or pit over `hole` takes. `hole` has room at both ends in it already; `days` it stays open.

    Without new pipe, the soil that came out goes back.
    """
    return dig_as(case, open_dig(case, hole), days, new_pipe=new_pipe)


def dig_as(case: Case, dug: OpenDig, days: float, *, new_pipe: bool = True) -> OpenDig:
    """Everything that a dig takes whose bottom and sides are settled."""
    hole, way, under = dug.hole, dug.way, dug.under
    ground_facts(case)
    _depths(case, hole, way, under)
    _widths(case, way, dug.kind)
    _earth(case, way)
    safety(case, hole, way, under, dug.wet, days)
    potholes(case, hole)
    heap_room(case, way, dug.beside)
    machine_path(case)
    if new_pipe:
        fill(case, way)
    else:
        fill_as_it_was(case, way)
    footing_line(case, way, under, dug.beside)
    return dug


def _depths(case: Case, hole: Stretch, way: Way, under: Bottom) -> None:
    paper, outside, bed = case.paper, outside_ft(case), bedding_ft(case)
    paper.put(
        "dig_length_ft",
        way.length_ft,
        "pipe replaced + room at each end, with the locator's error where no pothole finds the pipe first; at least a box",
        ("pipe replaced", case.stretch.length_ft, "ft"),
        ("room at each end", (hole.length_ft - case.stretch.length_ft) / 2, "ft"),
        ("box", way.length_ft if way.length_ft > hole.length_ft else 0.0, "ft"),
    )
    paper.put(
        "dig_depth_ft",
        way.deepest_ft,
        "depth to the pipe's center + half its outside + bedding, up to the dig step",
        ("depth to center", under.exact_ft - outside / 2 - bed, "ft"),
        ("outside of the pipe", outside, "ft"),
        ("bedding", bed, "ft"),
        ("dig step", case.number("dig_step_ft"), "ft"),
    )
    paper.put(
        "safety_depth_ft",
        under.safety_ft,
        "bottom, not rounded, + what the locator may be off",
        ("bottom", under.exact_ft, "ft"),
        ("locator", under.tolerance_ft, "ft"),
    )


def _widths(case: Case, way: Way, kind: str) -> None:
    paper, shored = case.paper, way.name in ("boxed", "shored")
    paper.put(
        "dig_width_ft",
        way.width_ft,
        "the larger of the firm's rule and the standard's, up to the dig step",
        ("outside of the pipe", outside_ft(case), "ft"),
        ("before rounding", exact_width_ft(case, shored), "ft"),
        source=D2321_SOURCE,
    )
    paper.put(
        "dig_top_width_ft",
        way.top_width_ft,
        "bottom width + 2 x slope x depth",
        ("bottom width", way.width_ft, "ft"),
        ("slope, across to down", way.slope_h_to_v),
        ("soil type", kind),
        source=SLOPE_SOURCE,
    )


def _earth(case: Case, way: Way) -> None:
    """The earth in the bank, by hand or machine, and where it goes."""
    paper = case.paper
    cubic_ft = paper.put(
        "dig_cf",
        way.bank_cf,
        _volume_words(way),
        ("length", way.length_ft, "ft"),
        ("bottom width", way.width_ft, "ft"),
        ("deepest", way.deepest_ft, "ft"),
        ("shallowest", min(d.depth_ft for d in way.depths), "ft"),
        ("along the dig: depth", _along(way)),
        ("slope, across to down", way.slope_h_to_v),
        ("check by end areas", _check(way), "cu ft"),
        source=PRISMOIDAL,
    )
    bank = cubic_yards(cubic_ft)
    by_hand = hand_only(case)
    paper.put(
        "hand_dig_bcy" if by_hand else "dig_bcy",
        bank,
        f"{_volume_words(way)}; cubic ft / 27",
        *paper.inputs_of("dig_cf")[:-1],
        ("dug", cubic_ft, "cu ft"),
        source=PRISMOIDAL,
    )
    if by_hand:
        paper.facts.add("hand_only")
    elif way.deepest_ft > case.number("machine_slow_from_ft"):
        paper.facts.add("depth_over_8")
    spoil(case, bank)


def _along(way: Way) -> str:
    """How far along the dig and how deep there: enough to reckon the earth on paper."""
    return ", ".join(f"{shown(d.at_ft)} ft: {shown(d.depth_ft)} ft" for d in way.depths)


def _check(way: Way) -> float:
    return trench_end_area_cf(way.depths, way.width_ft, way.slope_h_to_v)


def _volume_words(way: Way) -> str:
    shape = {
        "vertical": "length x width x depth, upright sides",
        "boxed": "length x width x depth, made as large as the box",
        "shored": "length x width x depth, as wide as people need between shores",
        "sloped": "sloped on all sides: depth x length x width + slope x depth² x (length + width) + 4/3 slope² x depth³",
        "benched": "the outline of the slope and a little more",
    }[way.name]
    return shape + ("" if len({d.depth_ft for d in way.depths}) == 1 else ", depth changing evenly between readings")
