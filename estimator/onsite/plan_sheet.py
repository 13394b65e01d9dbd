"""The plan sketch's own words as a sheet: how much of each line is measured, what was guessed, and what to tape to make it true."""

from collections.abc import Iterable, Sequence
from itertools import pairwise

from estimator.model.afterwards import LiftHeight
from estimator.model.job import Job
from estimator.model.say import Feet, Say
from estimator.onsite.dead_reckoning import Track
from estimator.onsite.plan import Outline, Plan, plan_of
from estimator.onsite.sheet import Block, SiteSheet, Words

NAME = "plan"


def plan_sheet(job: Job, heights: Sequence[LiftHeight] = ()) -> SiteSheet:
    """Return what the sketch rests on, line by line."""
    plan = plan_of(job, heights)
    known = sum(measured_ft(track) for track in plan.tracks.values())
    whole = sum(_length(track) for track in plan.tracks.values())
    answer = Say.of(
        "{known} of {whole} of pipe: drawn between points taped to two walls. The rest is drawn in dashes.",
        known=Feet(round(known)),
        whole=Feet(round(whole)),
    )
    heads = (Say.of("line"), Say.of("length"), Say.of("measured"), Say.of("its direction"))
    rows = tuple(_row(track) for track in plan.tracks.values())
    blocks = (
        Block(heading=Say.of("What the sketch is based on"), heads=heads, rows=rows),
        Block(heading=Say.of("House"), lines=tuple(_house(plan.outline))),
        Block(heading=Say.of("To make it true to scale"), lines=tuple(_missing(plan))),
    )
    return SiteSheet(
        name=NAME,
        title=Say.of("Plan sketch: not a survey"),
        answer=answer,
        blocks=tuple(b for b in blocks if not b.empty),
    )


def measured_ft(track: Track) -> float:
    """Return how much of a line lies between places taped to two walls, ft."""
    return max(track.taped) - min(track.taped) if track.known == "taped" else 0.0


def _length(track: Track) -> float:
    return sum(b[0] - a[0] for a, b in pairwise(track.corners))


HOW = {
    "taped": Say.of("from tapes"),
    "from one tape": Say.of("guessed, moved to one taped point"),
    "guessed": Say.of("guessed from where it joins and its bends"),
}


def _row(track: Track) -> tuple[Words, ...]:
    whole, known = _length(track), measured_ft(track)
    return (
        Say.of("{line}", line=track.line),
        Say.of("{at}", at=Feet(round(whole, 1))),
        Say.of("{at}", at=Feet(round(known, 1))) if known else Say.of("none"),
        HOW[track.known],
    )


SIDES = {
    "front": Say.of("front"),
    "back": Say.of("back"),
    "left": Say.of("left side"),
    "right": Say.of("right side"),
}


def _house(outline: Outline | None) -> Iterable[Say]:
    if outline is None:
        yield Say.of("No line in the notes runs under the house, so it is not drawn.")
        return
    measured = tuple(said for side, said in SIDES.items() if side in outline.measured)
    guessed = tuple(said for side, said in SIDES.items() if side not in outline.measured)
    if measured:
        yield Say.of("Walls from tapes: {sides}.", sides=measured)
    if guessed:
        yield Say.of("Walls not measured, drawn in dashes: {sides}.", sides=guessed)
    yield Say.of("South wall drawn as the front, east wall as the right side. If that is wrong, note it on the sketch.")


def _missing(plan: Plan) -> Iterable[Say]:
    for track in plan.tracks.values():
        if track.known != "taped":
            yield Say.of("Line {line}: locate two points far apart and tape each to two walls.", line=track.line)
    if plan.outline is not None and len(plan.outline.measured) < 4:
        yield Say.of(
            "Tape one point to both side walls and one to the front and back walls. That gives the size of the house."
        )
