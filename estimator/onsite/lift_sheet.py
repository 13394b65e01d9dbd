"""After a foundation lift, as a sheet: falls that turn, joints that open, risers that were pulled, and what to test and inspect first."""

from collections.abc import Iterable, Sequence

from estimator.model.afterwards import Afterwards, LiftHeight
from estimator.model.job import Job
from estimator.model.line import plain_wall
from estimator.model.say import Feet, Inches, Say
from estimator.onsite.after_lift import Lifted, Run, after_lift
from estimator.onsite.elevations import NINE_OF_TEN
from estimator.onsite.lift_first import first_after_lift, may_open, spot, was_pulled
from estimator.onsite.lift_joints import LEVELS, Joint
from estimator.onsite.lift_points import Point
from estimator.onsite.lift_surface import Place, Surface, surface_of
from estimator.onsite.sheet import Block, SiteSheet, Words
from estimator.tables.tables import Tables
from estimator.wording import numbers

NAME = "lift"
TITLE = Say.of("After the lift")


def lift_sheet(job: Job, after: Afterwards, tables: Tables) -> SiteSheet:
    """Return what the lift did to every line that is taped to the walls its heights were taken from."""
    if not after.lifts:
        answer = Say.of("No lift heights in the notes. Type them into the -after file, one [[lift]] for each corner.")
        return SiteSheet(name=NAME, title=TITLE, answer=answer, blocks=())
    surface = surface_of(after.lifts, tables.number("lift_height_error_in"))
    found = [one for line in job.lines if (one := after_lift(line, job, after.lift_levels, surface, tables))]
    blocks = [first_after_lift(found, tables), _heights(after.lifts, surface)]
    for one in found:
        blocks += [_falls(one), _risers(one, tables), _joints(one, tables)]
    blocks.append(_limits(job, found, surface))
    return SiteSheet(
        name=NAME, title=TITLE, answer=_answer(found, tables), blocks=tuple(b for b in blocks if not b.empty)
    )


def _answer(found: Sequence[Lifted], tables: Tables) -> Say:
    if not found:
        return Say.of("No line is taped to the walls of the lift heights. Locate the drain and tape it to both walls.")
    turned = sum(run.turns in ("yes", "may") for one in found for run in one.runs)
    pulled = sum(was_pulled(p, tables) for one in found for p in one.points)
    opened = sum(may_open(joint, tables) for one in found for joint in one.joints)
    return Say.of(
        "Slopes reversed or in doubt: {turned}. Risers pulled: {pulled}. Joints that may open: {opened}. Water-test before anything is covered.",
        turned=turned,
        pulled=pulled,
        opened=opened,
    )


def _heights(heights: Sequence[LiftHeight], surface: Surface) -> Block:
    heads = (Say.of("place"), *(Say.of("from the {wall}", wall=wall) for wall in surface.walls), Say.of("raised"))
    rows: list[tuple[Words, ...]] = []
    for height in heights:
        away = {plain_wall(wall): ft for wall, ft in height.from_walls}
        tapes = [Say.of("{at}", at=Feet(round(away[wall], 1))) for wall in surface.walls]
        raised = height.raised_ft * 12
        off = raised - surface.at(Place(*(away[wall] for wall in surface.walls))).inches
        said = Say.of("{inches}", inches=Inches(round(raised, 2)))
        fits = said if abs(off) < 0.5 else Say.of("{raised}. Does not fit the others: read again", raised=said)
        rows.append((height.name, *tapes, fits))
    return Block(heading=Say.of("How far the house was raised"), heads=heads, rows=tuple(rows))


def _falls(one: Lifted) -> Block:
    heads = (Say.of("from"), Say.of("to"), Say.of("slope before, per foot"), Say.of("slope now, per foot"))
    measured = {run.measured for run in one.runs}
    lines: tuple[Say, ...] = ()
    if measured == {False}:
        lines = (Say.of("Without levels before and after, the pipe is assumed to rise with the slab."),)
    elif False in measured:
        lines = (Say.of("Beyond the levels read, the pipe is assumed to rise with the slab."),)
    return Block(
        heading=Say.of("Line {line}: slopes, with the flow", line=one.line),
        lines=lines,
        heads=heads,
        rows=tuple(_run(run) for run in one.runs),
    )


def _run(run: Run) -> tuple[Words, ...]:
    ends = (spot(run.upper), spot(run.lower))
    if run.before is None or run.after is None:
        return (*ends, Say.of("no levels"), _change(run))
    now = Say.of("{slope}", slope=Inches(round(abs(run.after), 3)))
    if run.turns == "yes":
        now = Say.of("REVERSED {slope}", slope=now)
    elif run.turns == "may":
        now = Say.of("{slope}, may be reversed", slope=now)
    return (*ends, Say.of("{slope}", slope=Inches(round(run.before, 3))), now)


def _change(run: Run) -> Say:
    """By how much a run without levels slopes more or less than before."""
    change = Inches(round(abs(run.change), 3))
    if numbers.inches(change.inches) == numbers.inches(0):
        return Say.of("no change")
    return Say.of("{change} more", change=change) if run.change > 0 else Say.of("{change} less", change=change)


def _risers(one: Lifted, tables: Tables) -> Block:
    heads = (Say.of("riser or vent"), Say.of("slab rose"), Say.of("pulled up"), Say.of("give or take (9 of 10)"))
    rows = tuple(_riser(p) for p in sorted(one.points, key=lambda p: -p.pull.inches) if was_pulled(p, tables))
    return Block(
        heading=Say.of("Line {line}: risers and vents that were pulled", line=one.line), heads=heads, rows=rows
    )


def _riser(point: Point) -> tuple[Words, ...]:
    slab = Say.of("{inches}", inches=Inches(round(point.slab.inches, 2)))
    pull = Say.of("{inches}", inches=Inches(round(point.pull.inches, 2)))
    return (
        spot(point),
        slab,
        pull if point.pipe else Say.of("up to {inches}", inches=pull),
        Say.of("{inches}", inches=Inches(round(NINE_OF_TEN * point.pull.sigma_in, 2))),
    )


def _joints(one: Lifted, tables: Tables) -> Block:
    heads = (Say.of("joint"), Say.of("turned, per foot"), Say.of("give or take (9 of 10)"), Say.of("what it means"))
    return Block(
        heading=Say.of("Line {line}: joints, with the flow", line=one.line),
        lines=tuple(_joints_rest_on(one, tables)),
        heads=heads,
        rows=tuple(_joint(joint, tables) for joint in one.joints),
    )


def _joints_rest_on(one: Lifted, tables: Tables) -> Iterable[Say]:
    if one.joints:
        yield Say.of(
            "A joint may open at a turn of {limit} per foot or more.",
            limit=Inches(tables.number("joint_turn_in_per_ft")),
        )
    if any(joint.outside and joint.point.pipe is None for joint in one.joints):
        yield Say.of("Outside the slab edge, the pipe is assumed to rise with the slab.")
    if sum(point.own for point in one.points) < LEVELS:
        yield Say.of(
            "Joints under the slab: not known without levels at three points, before and after. Inspect every joint."
        )


def _joint(joint: Joint, tables: Tables) -> tuple[Words, ...]:
    where = spot(joint.point)
    return (
        Say.of("first joint outside the {where}", where=where) if joint.outside else where,
        Say.of("{inches}", inches=Inches(round(abs(joint.turn.inches), 2))),
        Say.of("{inches}", inches=Inches(round(NINE_OF_TEN * joint.turn.sigma_in, 2))),
        Say.of("MAY OPEN: inspect it") if may_open(joint, tables) else Say.of("turn within its limit"),
    )


def _limits(job: Job, found: Sequence[Lifted], surface: Surface) -> Block:
    named = {one.line for one in found}
    left = tuple(Say.of("{line}", line=line.name) for line in job.lines if line.name not in named)
    lines = [
        Say.of(
            "Between the points read, we assume that the slab bends evenly. A cracked slab does not: read more points beside the crack."
        )
    ]
    if left:
        lines.append(
            Say.of(
                "Not on this sheet: {lines}. Fewer than two points under the slab are taped to the {one} and the {other}.",
                lines=left,
                one=surface.walls[0],
                other=surface.walls[1],
            )
        )
    if any(not run.measured for one in found for run in one.runs):
        lines.append(
            Say.of(
                "Where there are no levels, the pipe may also have stayed in the ground. Shoot its bottom there again and type a [[lift_level]] for each point."
            )
        )
    return Block(heading=Say.of("What this is based on"), lines=tuple(lines))
