"""A way round with its size in; whether it falls enough, carries its fixtures and serves what it is said to, out."""

from estimator.knowledge.fixture_units import FLOOR_DRAINED, carries, fixture, fixture_units, is_fixture, toilets
from estimator.knowledge.flow import SOURCE as MANNING
from estimator.knowledge.flow import full_velocity_fps
from estimator.model.job import Reroute
from estimator.model.judgement import Effect, Verdict
from estimator.model.say import Say
from estimator.takeoff.case import Case
from estimator.works.depth import INCHES_PER_FT
from estimator.works.grade import code_families, least_fall_in_per_ft

UPRIGHT = ("drop", "rise", "stack", "vertical")


def needed_fall_ft(level_ft: float, fall_in_per_ft: float) -> float:
    """
    >>> needed_fall_ft(20, 0.25) * 12, needed_fall_ft(50, 0.125) * 12
    (5.0, 6.25)
    """
    return level_ft * fall_in_per_ft / INCHES_PER_FT


def fall_finds(case: Case, way: Reroute, size: float) -> tuple[Verdict, ...]:
    """Fall needed against what invert to invert leaves after the wye's drop and the clearance."""
    paper, fall = case.paper, least_fall_in_per_ft(case.place, size, case.number)
    longer = 1 + case.number("reroute_extra_percent") / 100
    level = sum(leg.length_ft for leg in way.legs if leg.zone not in UPRIGHT) * longer
    needed = paper.put(
        "fall_needed_ft",
        needed_fall_ft(level, fall),
        "level length x fall / 12",
        ("level length", level, "ft"),
        ("fall", fall, "in/ft"),
        source="place row; IPC table 704.1",
    )
    paper.put(
        "full_flow_fps",
        full_velocity_fps(size, fall),
        "1.486 / 0.013 x (bore / 48)^(2/3) x (fall / 12)^(1/2)",
        ("bore", size, "in"),
        ("fall", fall, "in/ft"),
        source=MANNING,
    )
    if way.fall_available_ft is None:
        paper.assume("the drop from end to end is not measured yet, so there is no firm price")
        homeowner = Say.of("We must measure the drop of the reroute before we can price it.")
        said = Say.of("fall not measured; {needed} in are needed", needed=round(needed * INCHES_PER_FT, 1))
        return (case.find("reroute-has-the-fall", Effect.NO_FIXED_PRICE, homeowner, said),)
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
    return () if left >= needed - 1e-9 else (_falls_too_little(case, needed, fall, left),)


def _falls_too_little(case: Case, needed: float, fall: float, left: float) -> Verdict:
    return case.find(
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
    )


def floor_finds(case: Case, way: Reroute) -> tuple[Verdict, ...]:
    """Toilets, tubs and showers drain through the floor: a way through the wall does not serve them."""
    low = [word for word, _ in served_by(case, way) if fixture(word) in FLOOR_DRAINED]
    outside = any(leg.zone in ("wall", "attic") for leg in way.legs)
    if not (low and outside):
        return ()
    return (
        case.find(
            "wall-way-serves-what-drains-above-the-floor",
            Effect.ADDS_WORK,
            Say.of("Toilets, tubs and showers drain through the floor. The floor must be opened at each of them."),
            Say.of(
                "{fixtures} drain through the floor: open it at each, or leave them on the old pipe",
                fixtures=", ".join(low),
            ),
        ),
    )


Fixtures = tuple[tuple[str, int], ...]


def served_by(case: Case, way: Reroute) -> Fixtures:
    """The fixtures the notes name, as far as the tables know them; a word they do not know is said, not guessed."""
    known = tuple((word, count) for word, count in way.serves if is_fixture(word))
    for word in sorted({w for w, _ in way.serves} - {w for w, _ in known}):
        case.paper.assume("no fixture units are listed for {word}, so the pipe size does not count it", word=word)
    return known


def size_for(case: Case, served: Fixtures) -> float:
    """The least of the firm's sizes that carries them at its own least fall, by the place's code or the stricter of both.

    0 where no fixture is named; the largest size where even that would not do.
    """
    if not served:
        return 0.0
    listed = case.numbers("pipe_sizes")
    return next((size for size in listed if _carries(case, size, served)), listed[-1])


def _carries(case: Case, size: float, served: Fixtures) -> bool:
    fall = least_fall_in_per_ft(case.place, size, case.number)
    return all(carries(size, served, fall, family) for family in code_families(case.place))


def size_finds(case: Case, way: Reroute, size: float) -> tuple[Verdict, ...]:
    """The size in the notes must carry the fixtures, and there must be one that does."""
    served = served_by(case, way)
    if not served or _carries(case, size, served):
        return ()
    return (
        case.find(
            "pipe-carries-its-fixtures",
            Effect.BLOCKS,
            Say.of("The new pipe must be larger for all the fixtures it serves."),
            Say.of(
                "{units} fixture units and {closets} toilets ask for {least} in or more, not {size} in",
                units=max(fixture_units(served, family) for family in code_families(case.place)),
                closets=toilets(served),
                least=f"{size_for(case, served):g}",
                size=f"{size:g}",
            ),
        ),
    )
