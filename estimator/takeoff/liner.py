"""A stretch to line in; liner cut, shots, resin, side drains to reopen, cure, what is left of the bore, out."""

import math

from estimator.model.judgement import Verdict
from estimator.takeoff.case import Case
from estimator.takeoff.cleaning import clean, descale
from estimator.takeoff.liner_wall import wall_finds
from estimator.takeoff.water_test import new_pipe_test
from estimator.takeoff.working import shown, up
from estimator.works.liner_pieces import stock_length

CUBIC_IN_PER_GAL = 231.0
INCHES_PER_FT = 12.0
MM_PER_IN = 25.4
CURES = {"ambient": "cure_ambient_h", "hot": "cure_hot_h", "light": "cure_light_h"}
RESIN_SOURCE = "geometry; share of voids as in published resin charts; ASTM F1216 7.2: 5 to 10 % excess"


def resin_gal(bore_in: float, wall_in: float, length_ft: float, void_percent: float, excess_percent: float) -> float:
    """pi x (D - t) x t x 12 x length / 231 x share of the tube's wall that is hollow x (1 + excess), gal.

    >>> round(resin_gal(4, 3 / 25.4, 1, 100, 0), 4), round(resin_gal(8, 6 / 25.4, 1, 87, 7.5), 4)
    (0.0748, 0.2799)
    """
    wall_sq_in = math.pi * (bore_in - wall_in) * wall_in
    hollow = wall_sq_in * INCHES_PER_FT * length_ft / CUBIC_IN_PER_GAL * void_percent / 100
    return hollow * (1 + excess_percent / 100)


def finished_bore_in(bore_in: float, wall_in: float) -> float:
    """
    >>> round(finished_bore_in(4, 3 / 25.4), 3)
    3.764
    """
    return bore_in - 2 * wall_in


def reline(case: Case) -> tuple[Verdict, ...]:
    """A liner from end to end of the stretch, after cleaning and another look."""
    clean(case)
    if case.is_iron():
        descale(case)
    paper, host = case.paper, case.stretch.length_ft
    shots = _shots(case)
    paper.put(
        "liner_ft", host, "old pipe lined", ("from", case.stretch.from_ft, "ft"), ("to", case.stretch.to_ft, "ft")
    )
    extra = _extra_ft(case)
    cut = paper.put(
        "liner_cut_ft",
        host + shots * extra,
        "old pipe + (overlap + launch + tail + riser) x shots",
        ("old pipe", host, "ft"),
        ("shots", shots),
        ("each shot", extra, "ft"),
    )
    _resin(case, cut / host if host else 1.0)
    paper.put("bladders", shots, "one a shot", ("shots", shots))
    _reopen(case)
    _times(case, shots)
    case.paper.put("tests", 1, "the new lining, filled before its side drains are cut open", source="common practice")
    new_pipe_test(case)
    return wall_finds(case, _wall_in(case))


def _wall_in(case: Case) -> float:
    return case.number("liner_thickness_mm") / MM_PER_IN


def _extra_ft(case: Case) -> float:
    """Overlap past the coupling, launch, tail, and the riser of the way in."""
    riser = min((p.riser_ft for p in case.line.passes if "toilet" not in p.access.lower()), default=0.0)
    return case.number("liner_overlap_ft") + case.number("liner_launch_ft") + case.number("liner_tail_ft") + riser


def _shots(case: Case) -> float:
    """A new shot where the bore changes, and where a shot would be too long."""
    paper = case.paper
    pieces = case.profile.sizes(case.stretch)
    longest = [
        case.number("liner_small_max_ft" if size <= case.number("liner_small_bore_in") else "liner_max_ft")
        for _, size in pieces
    ]
    shots = sum(max(1.0, up(part.length_ft / most)) for (part, _), most in zip(pieces, longest, strict=True))
    paper.put(
        "size_changes",
        len(pieces) - 1,
        "changes of bore in the stretch",
        ("bores", ", ".join(f"{s:g} in" for _, s in pieces)),
    )
    return paper.put(
        "shots",
        shots,
        "each bore: length / longest shot, up",
        ("pieces", ", ".join(f"{shown(p.length_ft)} ft of {s:g} in" for p, s in pieces)),
        ("longest shot", ", ".join(f"{m:g} ft" for m in longest)),
    )


def _excess_percent(case: Case) -> float:
    return case.number("resin_excess_percent") + (case.number("resin_iron_percent") if case.is_iron() else 0.0)


def _resin(case: Case, cut_share: float) -> None:
    """Each bore by its own size; rough iron drinks more."""
    paper, wall, excess, void = case.paper, _wall_in(case), _excess_percent(case), case.number("resin_void_percent")
    gallons = sum(
        resin_gal(size, wall, part.length_ft * cut_share, void, excess)
        for part, size in case.profile.sizes(case.stretch)
    )
    paper.put(
        "resin_gal",
        gallons,
        "pi x (bore - wall) x wall x 12 x liner cut / 231 x voids + excess",
        ("bore", case.size, "in"),
        ("wall", wall, "in"),
        ("liner cut", paper.value("liner_cut_ft"), "ft"),
        ("voids", void, "percent"),
        ("excess", excess, "percent"),
        source=RESIN_SOURCE,
    )
    least_bore = min(size for _, size in case.profile.sizes(case.stretch))
    paper.put(
        "finished_bore_in",
        finished_bore_in(least_bore, wall),
        "bore - 2 x wall",
        ("bore", least_bore, "in"),
        ("wall", wall, "in"),
    )
    paper.put("liner_wall_in", wall, "the firm's cured wall", ("wall", case.number("liner_thickness_mm"), "mm"))


def _reopen(case: Case) -> None:
    live = [b for b in case.branches if b.size_in >= case.number("liner_branch_min_in") and not b.out_of_reach]
    shut = len(case.branches) - len(live)
    case.paper.put(
        "reinstatements",
        len(live),
        "side drains a cutter can open again",
        ("side drains", len(case.branches)),
        ("out of the cutter's reach", shut),
    )
    case.paper.put("dig_to_reopen", shut, "side drains too small or out of reach: reached from outside")
    dead = [b for b in case.profile.branches if case.stretch.holds(b.station_ft) and b.live == "dead"]
    if dead:
        case.paper.warn("{count} dead side drain(s) stay closed under the liner", count=len(dead))
    for branch in case.branches:
        if branch.proven is not True:
            case.paper.assume(
                "the branch drain at {at} is in use and is reopened; we run water to verify it first",
                at=branch.station_ft,
            )


def _times(case: Case, shots: float) -> None:
    cure = CURES[case.word("liner_cure", *CURES)]
    hours = case.number(cure)
    case.paper.put(
        "cure_hours",
        shots * hours,
        "shots x hours",
        ("shots", shots),
        ("one shot", hours, "h"),
        source="common practice, from memory",
    )
    case.paper.put(
        "bypass_hours",
        shots * (hours + case.number("liner_set_h")),
        "plugs in and flow held while a shot is set and cures",
        ("shots", shots),
        ("cure", hours, "h"),
    )
    case.paper.warn(
        "drains stay shut during the cure; traps are filled and the house is aired against the resin's smell"
    )


def sectional(case: Case) -> tuple[Verdict, ...]:
    """Short liners over one bad piece, its margins in the stretch already, in stock lengths; iron scraped bare first."""
    clean(case)
    if case.is_iron():
        descale(case)
    overlap = case.number("sectional_overlap_ft")
    count, long = stock_length(case.stretch.length_ft, case.numbers("sectional_stock_ft"), overlap)
    pieces = case.paper.put(
        "sectional_pieces",
        count,
        "the shortest stock length that covers it, else several of the longest, each lapping onto the one before",
        ("bad place with its margins", case.stretch.length_ft, "ft"),
        ("stock", case.text("sectional_stock_ft"), "ft"),
        ("overlap of two pieces", overlap, "ft"),
    )
    case.paper.put("liner_ft", pieces * long, "pieces x stock length", ("pieces", pieces), ("stock", long, "ft"))
    _resin_sectional(case, pieces * long)
    case.paper.put("bladders", pieces, "one a piece", ("pieces", pieces))
    _reopen(case)
    return wall_finds(case, _wall_in(case))


def _resin_sectional(case: Case, length_ft: float) -> None:
    wall, excess, void = _wall_in(case), _excess_percent(case), case.number("resin_void_percent")
    case.paper.put(
        "resin_gal",
        resin_gal(case.bore_in, wall, length_ft, void, excess),
        "pi x (bore - wall) x wall x 12 x length / 231 x voids + excess",
        ("bore", case.bore_in, "in"),
        ("wall", wall, "in"),
        ("length", length_ft, "ft"),
        ("voids", void, "percent"),
        ("excess", excess, "percent"),
        source=RESIN_SOURCE,
    )
