"""A way round the estimator saw in; its developed length, fall needed and left, size, holes, vents, old pipe closed, out."""

from estimator.knowledge.fixture_units import fixture_units, toilets
from estimator.model.job import Reroute
from estimator.model.judgement import Verdict
from estimator.model.stretch import Stretch
from estimator.takeoff.case import Case
from estimator.takeoff.reroute_checks import fall_finds, floor_finds, served_by, size_finds, size_for
from estimator.takeoff.reroute_yard import yard_legs
from estimator.takeoff.slab_concrete import concrete_back, concrete_out, in_words
from estimator.takeoff.slab_room import floor_and_dust
from estimator.takeoff.small_methods import abandoned
from estimator.takeoff.water_test import new_pipe_test
from estimator.takeoff.working import cubic_yards, up
from estimator.works.grade import code_families
from estimator.works.reroute_works import BURIED, floor_holes


def reroute(case: Case) -> tuple[Verdict, ...]:
    """New pipe on another way; the old one capped, and filled where it could sink or let rats in."""
    way = next((r for r in case.job.reroutes if r.name == case.repair.reroute), None)
    if way is None:
        case.paper.assume("the notes hold no reroute of that name, so nothing is measured")
        return ()
    size = _size_in(case, way)
    length = _length(case, way)
    _holes(case, way)
    yard_legs(case, way, size)
    _floors(case, way)
    _old_pipe(case, way)
    case.paper.put(
        "pipe_buy_ft",
        length,
        "developed length; waste and whole sticks come on top",
        ("developed length", length, "ft"),
    )
    new_pipe_test(case, length, size)
    return (*fall_finds(case, way, size), *floor_finds(case, way), *size_finds(case, way, size))


def _size_in(case: Case, way: Reroute) -> float:
    """What the notes say; else the least size on the firm's list that carries the fixtures at the place's fall."""
    served = served_by(case, way)
    least = size_for(case, served)
    size = way.size_in or least or case.bore_in
    families = code_families(case.place)
    units = max(fixture_units(served, family) for family in families)
    case.paper.put(
        "reroute_size_in",
        size,
        "what the notes say, or the least that carries the fixtures",
        ("least for the fixtures", least, "in"),
        ("fixture units", units),
        ("toilets", toilets(served)),
        source=" and ".join(families) + " tables of fixture units",
    )
    case.paper.put(
        "fixture_units",
        units,
        "sum over the fixtures served, by the code of the place",
        ("fixtures", ", ".join(f"{count} {word}" for word, count in served)),
        source=" and ".join({"IPC": "IPC table 709.1", "UPC": "UPC table 702.1"}[family] for family in families),
    )
    return size


def _length(case: Case, way: Reroute) -> float:
    legs = sum(leg.length_ft for leg in way.legs)
    extra = case.number("reroute_extra_percent")
    buried = sum(leg.length_ft for leg in way.legs if leg.zone in BURIED)
    longer, hung = 1 + extra / 100, legs - buried
    turns = ("extra", extra, "percent")
    case.paper.put(
        "reroute_buried_ft", buried * longer, "legs in the ground + extra for turns", ("legs", buried, "ft"), turns
    )
    case.paper.put(
        "reroute_hung_ft",
        hung * longer,
        "legs on walls and in crawl spaces + extra for turns",
        ("legs", hung, "ft"),
        turns,
    )
    return case.paper.put(
        "reroute_ft",
        legs * longer,
        "all legs, level and upright, + extra for turns",
        ("legs", ", ".join(f"{leg.zone} {leg.length_ft:g} ft" for leg in way.legs)),
        turns,
    )


def _holes(case: Case, way: Reroute) -> None:
    paper = case.paper
    paper.put(
        "penetrations",
        sum(count for _, count in way.penetrations),
        "holes through walls, roof or floor",
        ("holes", ", ".join(f"{count} {word}" for word, count in way.penetrations)),
    )
    paper.put(
        "roof_flashings", sum(count for word, count in way.penetrations if word == "roof"), "one a hole in the roof"
    )
    asked = 1 if "vent_needed" in case.repair.facts else 0
    paper.put(
        "vents",
        max(way.vents, asked),
        "as the notes say; one where the way is longer than a trap arm may be",
        ("in the notes", way.vents),
        ("a trap arm too long", "yes" if asked else "no"),
    )
    paper.put("eighth_bends", 2 * way.turns, "two a turn", ("turns", way.turns))
    paper.put("wyes", 1, "where it ties in")
    paper.put("end_couplings", 2, "where it begins and where it ties in")
    paper.put(
        "cleanouts",
        1 + max(0.0, up(paper.value("reroute_ft") / case.number("cleanout_every_ft")) - 1),
        "one at the upper end, more along a long way",
        source="IPC 708",
    )
    if any(leg.zone == "wall" for leg in way.legs):
        paper.facts.add("wall_pipe")
    paper.put(
        "wall_cover_ft",
        sum(leg.length_ft for leg in way.legs if leg.zone == "wall"),
        "pipe on the wall to box in",
        ("legs on a wall", sum(1 for leg in way.legs if leg.zone == "wall")),
    )


def _floors(case: Case, way: Reroute) -> None:
    """The floor opened at each fixture the notes count: saw, concrete, a little earth by hand, and back."""
    cut = floor_holes(case, way)
    if not cut:
        return
    paper, deep = case.paper, case.number("floor_hole_deep_ft")
    paper.facts.add("inside_work")
    concrete_out(case, cut)
    earth = paper.put(
        "inside_dig_bcy",
        cubic_yards(sum(long * wide * deep for long, wide in cut)),
        "each opening in the floor: length x width x depth below the slab / 27",
        ("openings", in_words(cut)),
        ("depth", deep, "ft"),
    )
    paper.put("inside_backfill_ccy", earth, "all that was dug, packed by hand", ("dug", earth, "cy"))
    concrete_back(case, cut)
    floor_and_dust(case, cut)


def _old_pipe(case: Case, way: Reroute) -> None:
    """Both ends of what is left are capped; larger pipe under a slab or a drive is filled."""
    line = case.line
    whole = case.profile.extent
    left = (
        Stretch.between(
            whole.from_ft if way.replaces_from_ft is None else way.replaces_from_ft,
            whole.to_ft if way.replaces_to_ft is None else way.replaces_to_ft,
        )
        if line.name == way.replaces_line
        else case.stretch
    )
    abandoned(case, left)
