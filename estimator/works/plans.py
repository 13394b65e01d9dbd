"""One repair's case in, what each way of repair opens, lays, lines, bursts and leaves, out. The ways are in methods.py."""

from collections.abc import Iterable
from itertools import pairwise

from estimator.model import crawl_space
from estimator.model.frozen import replace
from estimator.model.opening import Opening
from estimator.model.say import Feet, Say
from estimator.model.stretch import Stretch, missing
from estimator.model.tool_reach import passed
from estimator.model.visit import fact
from estimator.model.works import Burst, Laid, Left, Lined, WayIn, Works
from estimator.works import burst_works, floor_cut, reroute_works, tunnel_plan
from estimator.works.case import Case
from estimator.works.ground import spans
from estimator.works.liner_pieces import pieces
from estimator.works.open_dig import hole_over, open_dig, opening


def _old_pipe(case: Case, renewed: Stretch | None) -> tuple[Left, ...]:
    whole = case.profile.extent
    rest = (whole,) if renewed is None else missing(whole, [renewed])
    return tuple(Left(line=case.line.name, stretch=part, how="in use") for part in rest if part.length_ft > 0)


def _capped(case: Case) -> tuple[Left, ...]:
    """The stretch closed off and left, the rest in use."""
    return (Left(line=case.line.name, stretch=case.stretch, how="capped"), *_old_pipe(case, case.stretch))


def _laid(case: Case, *, hung: bool = False) -> tuple[Laid, ...]:
    ties = tuple(b.station_ft for b in case.branches)
    return (
        Laid(
            line=case.line.name,
            stretch=case.stretch,
            size_in=case.bore_in,
            ties_ft=ties,
            new_wye=case.at_junction,
            hung=hung,
        ),
    )


def _new_pipe(case: Case, openings: tuple[Opening, ...], *, hung: bool = False, tested: bool = True) -> Works:
    return Works(
        line=case.line.name,
        openings=openings,
        laid=_laid(case, hung=hung),
        left=_old_pipe(case, case.stretch),
        toilets_pulled=toilets_to_pull(case, openings) if tested else 0,
        guesses=tuple(dict.fromkeys(o.why_assumed for o in openings if o.why_assumed is not None)),
        assumptions=tuple(case.paper.assumptions),
    )


def _piece(works: Works) -> Works:
    """A piece of the run is renewed by itself, whatever the rest of it is like."""
    return replace(works, piece=True)


def yard_spot(case: Case) -> Works:
    dug = open_dig(case, hole_over(case))
    return _piece(_new_pipe(case, (opening(case, dug, "pit", case.number("spot_days_open")),), tested=False))


def hole_to_the_lot(case: Case) -> Stretch:
    """The hole over the piece that ends at the property line: no further than that."""
    hole, lot = hole_over(case), case.profile.lot_line_ft
    if lot is None:
        return hole
    low, high = (
        (hole.from_ft, min(hole.to_ft, lot)) if case.line.downstream == 1 else (max(hole.from_ft, lot), hole.to_ft)
    )
    return Stretch(low, high) if low < high else hole


def hand_over(case: Case) -> Works:
    """New pipe up to the property line, with a way in for whoever repairs what lies beyond it."""
    if case.profile.lot_line_ft is None:
        return Works(line=case.line.name, left=_old_pipe(case, None))
    dug = open_dig(case, hole_to_the_lot(case))
    made = _new_pipe(case, (opening(case, dug, "pit", case.number("spot_days_open")),), tested=False)
    way_in = WayIn(what="cleanout", line=case.line.name, at_ft=case.stretch.middle_ft, new=True)
    return replace(made, ways_in=(way_in,))


def trench(case: Case) -> Works:
    dug = open_dig(case, hole_over(case))
    return _new_pipe(case, (opening(case, dug, "trench", case.number("trench_days_open")),))


def look_and_see(case: Case) -> Works:
    """One hole; the pipe stays as it is until it was seen. Under a floor the hole is an opening in the floor."""
    if case.profile.zone(case.stretch.middle_ft).value in ("slab", "basement"):
        openings = floor_cut.openings(case, floor_cut.spot(case))
    else:
        openings = (opening(case, open_dig(case, hole_over(case)), "pit", case.number("spot_days_open")),)
    return Works(line=case.line.name, openings=openings, left=_old_pipe(case, None))


def slab_spot(case: Case) -> Works:
    return _piece(_new_pipe(case, floor_cut.openings(case, floor_cut.spot(case))))


def break_through(case: Case) -> Works:
    return _new_pipe(case, floor_cut.openings(case, floor_cut.strip(case)))


def tunnel(case: Case) -> Works:
    return _new_pipe(case, tunnel_plan.openings(case, tunnel_plan.tunnel_plan(case)), hung=True)


def burst(case: Case) -> Works:
    plan = burst_works.pull_plan(case)
    ends = (case.stretch.from_ft, *burst_works.pull_ends(case, plan))
    pulls = tuple(
        Burst(line=case.line.name, stretch=Stretch(low, high), size_in=case.bore_in) for low, high in pairwise(ends)
    )
    openings = burst_works.openings(case, plan)
    return Works(
        line=case.line.name,
        openings=openings,
        burst=pulls,
        left=_old_pipe(case, case.stretch),
        ways_in=(WayIn(what="pit", line=case.line.name, at_ft=case.stretch.from_ft, new=True),),
        toilets_pulled=toilets_to_pull(case, openings),
        assumptions=tuple(case.paper.assumptions),
    )


def crawl_replace(case: Case) -> Works:
    """Pipe hung under the floor; where nobody can work over it, soil is dug out to make room first."""
    return _new_pipe(case, crawl_dig(case), hung=True)


def crawl_height_ft(case: Case) -> float | None:
    """The lowest height between soil and joists over the stretch; None where nobody measured it."""
    marks = [m for m in case.profile.marks(*crawl_space.WORDS) if m.stretch.touches(case.stretch) or m.holds]
    return crawl_space.height_ft(marks, case.job.house)


def crawl_dig(case: Case) -> tuple[Opening, ...]:
    height, least = crawl_height_ft(case), case.number("crawl_work_ft")
    if height is None or height >= least:
        return ()
    deep = least - height
    return (
        Opening(
            kind="dig in the crawl space",
            line=case.line.name,
            along=case.stretch,
            depth_ft=deep,
            bottom_width_ft=case.number("tunnel_width_ft"),
            top_width_ft=case.number("tunnel_width_ft"),
            spans=spans(case, case.stretch),
            name=Say.of("the dig in the crawl space, {deep} deep", deep=Feet(round(deep, 2))),
        ),
    )


def reroute(case: Case) -> Works:
    way = reroute_works.way_of(case)
    if way is None:
        return Works(line=case.line.name, left=_old_pipe(case, None))
    size = way.size_in or case.bore_in
    legs = sum(leg.length_ft for leg in way.legs)
    return Works(
        line=case.line.name,
        openings=reroute_works.openings(case, way, size),
        laid=(Laid(line="", stretch=Stretch(0.0, legs), size_in=size),),
        left=_capped(case),
    )


def abandon(case: Case) -> Works:
    return Works(line=case.line.name, left=_capped(case))


def reline(case: Case) -> Works:
    lined = Lined(line=case.line.name, stretch=case.stretch, size_in=case.bore_in)
    return _lining(case, lined)


def sectional(case: Case) -> Works:
    lined = Lined(line=case.line.name, stretch=case.stretch, size_in=case.bore_in, pieces_ft=pieces(case))
    return _piece(_lining(case, lined))


def _lining(case: Case, lined: Lined) -> Works:
    at = min(case.profile.accesses(), key=lambda a: abs(a - case.stretch.from_ft), default=None)
    ways = () if at is None else (WayIn(what="cleanout", line=case.line.name, at_ft=at),)
    return Works(
        line=case.line.name,
        lined=(lined,),
        left=_old_pipe(case, case.stretch),
        ways_in=ways,
        cleans=(passed(case.profile, case.stretch),),
    )


def clean(case: Case) -> Works:
    return Works(line=case.line.name, left=_old_pipe(case, None), cleans=(passed(case.profile, case.stretch),))


def visit(case: Case) -> Works:
    """Somebody comes, inspects and measures; no pipe is touched, and nothing is opened but a hole that shows the pipe."""
    at = case.stretch.middle_ft
    hole = Opening(
        kind="pothole",
        line=case.line.name,
        along=Stretch(at, at),
        depth_ft=case.profile.depth_to_centre_ft(at).value or case.number("depth_if_unlocated_ft"),
        name=Say.of("the hole that shows the pipe"),
        spans=spans(case, Stretch(at, at)),
        people=False,
    )
    shown = fact("pothole") in case.repair.facts
    return Works(line=case.line.name, openings=(hole,) if shown else (), left=_old_pipe(case, None))


def isolation_test(case: Case) -> Works:
    off = int(case.number("toilets_per_test"))
    return Works(line=case.line.name, left=_old_pipe(case, None), toilets_pulled=off, tested=(case.stretch,))


LEAST_TOILET_IN = 3.0
"""No toilet drains into smaller pipe (IPC table 709.1, UPC 702.1: water closet trap and drain 3 in, from memory)."""


def toilets_to_pull(case: Case, openings: Iterable[Opening]) -> int:
    """Return the firm's number for each test below a floor; none where one is off for the camera already.

    Pipe laid in a yard or hung in a crawl space is filled through a riser of its own (common practice), and no toilet can
    drain into a line of less than 3 in.
    """
    below_floor = any(o.cuts_floor or o.kind == "tunnel" for o in openings)
    off = any("toilet" in p.access.lower() for p in case.line.passes)
    return int(case.number("toilets_per_test")) if below_floor and not off and case.bore_in >= LEAST_TOILET_IN else 0
