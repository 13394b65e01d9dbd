"""What a lift did to the lines in; what to test and inspect first, the likeliest harm first, out."""

from collections.abc import Iterable, Sequence

from estimator.model.say import Feet, Say
from estimator.onsite.after_lift import Lifted
from estimator.onsite.elevations import NINE_OF_TEN
from estimator.onsite.lift_joints import Joint
from estimator.onsite.lift_points import Point
from estimator.onsite.sheet import Block
from estimator.tables.tables import Tables


def was_pulled(point: Point, tables: Tables) -> bool:
    return point.riser and abs(point.pull.inches) >= tables.number("riser_pull_in")


def may_open(joint: Joint, tables: Tables) -> bool:
    return abs(joint.turn.inches) + NINE_OF_TEN * joint.turn.sigma_in >= tables.number("joint_turn_in_per_ft")


def spot(point: Point) -> Say:
    at = Feet(round(point.station_ft, 1))
    if point.what in ("taped", "level"):
        return Say.of("{at}", at=at)
    return Say.of("{what}, {at}", what=SPOTS.get(point.what, point.what), at=at)


SPOTS = {
    "slab edge": Say.of("slab edge"),
    "branch": Say.of("branch"),
    "access point": Say.of("access point"),
    "upper end": Say.of("upper end"),
    "end": Say.of("upper end"),
}


def first_after_lift(found: Sequence[Lifted], tables: Tables) -> Block:
    """What to do, the likeliest harm first: joints by how far they turned, pulled risers by how far, falls that turned."""
    return Block(heading=Say.of("Test and inspect first, in this order"), lines=tuple(_steps(found, tables)))


def _steps(found: Sequence[Lifted], tables: Tables) -> Iterable[Say]:
    if found:
        yield Say.of(
            "Water test of the whole drain under the slab. Then, if the level drops, section by section (sheet tests)."
        )
    for one in found:
        yield from _levels(one)
        for joint in sorted(one.joints, key=lambda j: -abs(j.turn.inches)):
            if may_open(joint, tables):
                yield _look_at(joint, one.line)
    pulled = [(p, one) for one in found for p in one.points if was_pulled(p, tables)]
    for point, one in sorted(pulled, key=lambda pair: -pair[0].pull.inches)[:5]:
        yield Say.of(
            "Check: riser at {where}, line {line}. Test its branch alone; check trap, closet flange and roof vent.",
            where=spot(point),
            line=one.line,
        )
    for one in found:
        for run in one.runs:
            if run.turns in ("yes", "may"):
                yield Say.of(
                    "Camera with water running: line {line}, {low} to {high}. Standing water shows where the slope reversed.",
                    line=one.line,
                    low=Feet(round(min(run.upper.station_ft, run.lower.station_ft), 1)),
                    high=Feet(round(max(run.upper.station_ft, run.lower.station_ft), 1)),
                )


def _levels(one: Lifted) -> Iterable[Say]:
    """The levels that would tell the joints under the slab."""
    if one.again:
        yield Say.of(
            "Shoot line {line} again at {stations}, where it was read before the lift. That shows which joints under the slab moved.",
            line=one.line,
            stations=tuple(Feet(round(at, 1)) for at in one.again),
        )
    elif one.another:
        yield Say.of(
            "Line {line} was read at too few points before the lift: only the camera shows its joints. Before another lift, read {stations}.",
            line=one.line,
            stations=tuple(Feet(round(at, 1)) for at in one.another),
        )


def _look_at(joint: Joint, line: str) -> Say:
    if joint.outside:
        return Say.of(
            "Camera: line {line}, the first joint outside the slab edge. Look for an offset and soil.", line=line
        )
    at = spot(joint.point)
    return Say.of(
        "Camera: line {line}, the joint at {where} and those next to it. Look for an offset and soil.",
        line=line,
        where=at,
    )
