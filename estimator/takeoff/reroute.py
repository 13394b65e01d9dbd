"""A way round the estimator saw in; its developed length, fall needed and left, size, holes, vents, old pipe closed, out."""

from estimator.knowledge.fixture_units import FLOOR_DRAINED, Family, fixture, fixture_units, least_size_in, toilets
from estimator.knowledge.hydrostatics import pipe_gal_per_ft
from estimator.model.job import Reroute
from estimator.model.judgement import Effect, Verdict
from estimator.model.say import Say
from estimator.model.stretch import Stretch
from estimator.takeoff.case import Case
from estimator.takeoff.depth import INCHES_PER_FT
from estimator.takeoff.grade import least_fall_in_per_ft
from estimator.takeoff.reroute_yard import yard_legs
from estimator.takeoff.working import up

GAL_PER_CUBIC_YARD = 201.974
UPRIGHT = ("drop", "rise", "stack", "vertical")


def reroute(case: Case) -> tuple[Verdict, ...]:
    """New pipe on another way; the old one capped, and filled where it could sink or let rats in."""
    way = next((r for r in case.job.reroutes if r.name == case.repair.reroute), None)
    if way is None:
        case.paper.assume("no way round of that name is in the notes: nothing could be measured")
        return ()
    size = _size_in(case, way)
    length = _length(case, way)
    _holes(case, way)
    yard_legs(case, way, size)
    _old_pipe(case, way)
    case.paper.put(
        "pipe_buy_ft",
        length,
        "developed length; waste and whole sticks come on top",
        ("developed length", length, "ft"),
    )
    case.paper.put("tests", 1, "the new pipe, before it is covered", source="IPC 312: 10 ft of water, 15 min")
    return (*_fall_finds(case, way, size), *_floor_finds(case, way), *_size_finds(case, way, size))


def family(case: Case) -> Family:
    return "UPC" if case.place and case.place.code == "UPC" else "IPC"


def _size_in(case: Case, way: Reroute) -> float:
    """What the fixtures need at the place's least fall; never smaller than the notes say."""
    served = way.serves
    least = 0.0
    if served:
        slope = least_fall_in_per_ft(case, case.bore_in)
        least = least_size_in(served, slope, family(case))
    size = way.size_in or max(least, case.bore_in if not served else 0.0)
    case.paper.put(
        "reroute_size_in",
        size,
        "what the notes say, or the least that carries the fixtures",
        ("least for the fixtures", least, "in"),
        ("fixture units", fixture_units(served)),
        ("toilets", toilets(served)),
        source=f"{family(case)} tables of fixture units",
    )
    case.paper.put(
        "fixture_units",
        fixture_units(served),
        "sum over the fixtures served, a bathroom group as one",
        ("fixtures", ", ".join(f"{count} {word}" for word, count in served)),
        source="IPC table 709.1",
    )
    return size


def _length(case: Case, way: Reroute) -> float:
    legs = sum(leg.length_ft for leg in way.legs)
    extra = case.number("reroute_extra_percent")
    return case.paper.put(
        "reroute_ft",
        legs * (1 + extra / 100),
        "all legs, level and upright, + extra for turns",
        ("legs", ", ".join(f"{leg.zone} {leg.length_ft:g} ft" for leg in way.legs)),
        ("extra", extra, "percent"),
    )


def needed_fall_ft(level_ft: float, fall_in_per_ft: float) -> float:
    """
    >>> needed_fall_ft(20, 0.25) * 12, needed_fall_ft(50, 0.125) * 12
    (5.0, 6.25)
    """
    return level_ft * fall_in_per_ft / INCHES_PER_FT


def _fall_finds(case: Case, way: Reroute, size: float) -> tuple[Verdict, ...]:
    """Fall needed against what invert to invert leaves after the wye's drop and the clearance."""
    paper, fall = case.paper, least_fall_in_per_ft(case, size)
    level = sum(leg.length_ft for leg in way.legs if leg.zone not in UPRIGHT) * (
        1 + case.number("reroute_extra_percent") / 100
    )
    needed = paper.put(
        "fall_needed_ft",
        needed_fall_ft(level, fall),
        "level length x fall",
        ("level length", level, "ft"),
        ("fall", fall, "in/ft"),
        source="place row; IPC table 704.1",
    )
    if way.fall_available_ft is None:
        paper.assume("the fall from end to end was not measured: no fixed price until it is")
        return (
            case.find(
                "reroute-has-the-fall",
                Effect.NO_FIXED_PRICE,
                Say.of("We must measure the fall of the new way before we can price it."),
                Say.of("fall not measured; {needed} in are needed", needed=round(needed * INCHES_PER_FT, 1)),
            ),
        )
    drop, clear = case.number("wye_drop_in") / INCHES_PER_FT, case.number("reroute_clearance_in") / INCHES_PER_FT
    left = way.fall_available_ft - drop - clear
    paper.put(
        "fall_available_ft",
        max(0.0, left),
        "invert to invert - wye drop - clearance",
        ("invert to invert", way.fall_available_ft, "ft"),
        ("wye drop", drop, "ft"),
        ("clearance", clear, "ft"),
    )
    if left >= needed - 1e-9:
        return ()
    return (
        case.find(
            "reroute-has-the-fall",
            Effect.BLOCKS,
            Say.of(
                "The new way does not fall enough for the water to run: it needs {needed} inches and has {left}.",
                needed=round(needed * INCHES_PER_FT, 1),
                left=round(max(0.0, left) * INCHES_PER_FT, 1),
            ),
            Say.of(
                "needs {needed} in at {fall} in/ft, has {left} in after wye drop and clearance",
                needed=round(needed * INCHES_PER_FT, 2),
                fall=fall,
                left=round(left * INCHES_PER_FT, 2),
            ),
            "wye_drop_in",
            "reroute_clearance_in",
        ),
    )


def _floor_finds(case: Case, way: Reroute) -> tuple[Verdict, ...]:
    """Toilets, tubs and showers drain through the floor: a way through the wall does not serve them."""
    low = [word for word, _ in way.serves if fixture(word) in FLOOR_DRAINED]
    outside = any(leg.zone in ("wall", "attic") for leg in way.legs)
    if not (low and outside):
        return ()
    return (
        case.find(
            "wall-way-serves-what-drains-above-the-floor",
            Effect.ADDS_WORK,
            Say.of("Toilets, tubs and showers drain through the floor: the floor must be opened at each of them."),
            Say.of(
                "{fixtures} drain through the floor: open it at each, or leave them on the old pipe",
                fixtures=", ".join(low),
            ),
        ),
    )


def _size_finds(case: Case, way: Reroute, size: float) -> tuple[Verdict, ...]:
    """The size in the notes must carry the fixtures."""
    if not way.serves or way.size_in is None:
        return ()
    least = least_size_in(way.serves, least_fall_in_per_ft(case, size), family(case))
    if size >= least:
        return ()
    return (
        case.find(
            "pipe-carries-its-fixtures",
            Effect.BLOCKS,
            Say.of("The new pipe must be larger for all that drains into it."),
            Say.of(
                "{units} fixture units and {closets} toilets ask for {least} in, not {size} in",
                units=fixture_units(way.serves),
                closets=toilets(way.serves),
                least=f"{least:g}",
                size=f"{size:g}",
            ),
        ),
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
    paper.put("vents", way.vents, "as the notes say")
    paper.put("eighth_bends", 2 * way.turns, "two a turn", ("turns", way.turns))
    paper.put("wyes", 1, "where it ties in")
    paper.put(
        "cleanouts",
        1 + max(0.0, up(paper.value("reroute_ft") / case.number("cleanout_every_ft")) - 1),
        "one at the upper end, more along a long way",
        source="IPC 708",
    )
    paper.put(
        "wall_cover_ft",
        sum(leg.length_ft for leg in way.legs if leg.zone == "wall"),
        "pipe on the wall to box in, insulate and paint",
    )


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


def abandoned(case: Case, left: Stretch) -> None:
    """Caps at both ends and at each dead side drain; fill where the pipe is large and something stands on it."""
    paper = case.paper
    ties = sum(1 for b in case.profile.branches if left.holds(b.station_ft))
    paper.put("caps", 2 + ties, "both ends and each side drain", ("side drains", ties))
    over = {zone for _, zone in case.profile.zones(left)}
    size = max(s for _, s in case.profile.sizes(left))
    if size >= case.number("abandon_fill_from_in") and over & {"slab", "drive", "street"}:
        gallons = pipe_gal_per_ft(size) * left.length_ft
        paper.put(
            "abandon_fill_cy",
            gallons / GAL_PER_CUBIC_YARD,
            "gal/ft x length / gal in a cubic yard",
            ("bore", size, "in"),
            ("length", left.length_ft, "ft"),
            ("gal/ft", pipe_gal_per_ft(size)),
        )
