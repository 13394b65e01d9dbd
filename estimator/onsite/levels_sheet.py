"""Each line's profile as a sheet: the pipe's bottom every few feet, slopes, bellies, and the readings that do not fit."""

from collections.abc import Iterable

from estimator.model.job import Job
from estimator.model.line import Line
from estimator.model.profile import Profile
from estimator.model.say import Feet, Inches, Say
from estimator.model.stretch import Stretch
from estimator.onsite.elevations import NINE_OF_TEN, Elevations, Heard, Height, elevations
from estimator.onsite.height_readings import INCHES_PER_FT
from estimator.onsite.sheet import Block, SiteSheet, Words
from estimator.tables.tables import Tables

NAME = "levels"
EVERY_FT, SAME_FT = 5.0, 0.3
NEAR_FT = 10.0
"""So near to standing water a locate is compared with it."""


def levels_sheet(job: Job, tables: Tables) -> SiteSheet:
    """Return the profiles of all lines with a reading."""
    found = [(line, heights) for line in job.lines if (heights := elevations(job, line, tables))]
    blocks = [block for line, heights in found for block in _line(line, heights, job)]
    odd = sum(h.odd for _, heights in found for h in heights.heard)
    if not found:
        answer = Say.of("No level, locate or pothole in the notes: nothing to fit.")
    elif odd:
        answer = Say.of("Readings that do not fit: {count}. Take them again before you dig.", count=odd)
    else:
        answer = Say.of("The readings agree with one another.")
    return SiteSheet(
        name=NAME,
        title=Say.of("Levels: the bottom of the pipe below the slab top"),
        answer=answer,
        blocks=tuple(blocks),
    )


def _line(line: Line, heights: Elevations, job: Job) -> Iterable[Block]:
    low, high = heights.heights[0].station_ft, heights.heights[-1].station_ft
    profile = Profile(line)
    there = [b.station_ft for b in profile.branches] + [b.stretch.middle_ft for b in profile.beams]
    read = [h.station_ft for h in heights.heights]
    read += [at for at in there if low < at < high and all(abs(at - one) > SAME_FT for one in read)]
    stations = sorted([*read, *(at for at in _every(low, high) if all(abs(at - one) > SAME_FT for one in read))])
    heads = (
        Say.of("station"),
        Say.of("bottom below slab top"),
        Say.of("give or take (9 of 10)"),
        Say.of("what is there"),
    )
    rows = tuple(_row(heights.at(s), line) for s in stations)
    lines = tuple(_lines(line, heights, job))
    yield Block(heading=Say.of("Line {line}", line=line.name), lines=lines, heads=heads, rows=rows)
    yield Block(
        heading=Say.of("Readings on line {line}", line=line.name),
        heads=(Say.of("reading"), Say.of("where"), Say.of("against the others")),
        rows=tuple(_heard(h) for h in heights.heard),
    )


def _every(low: float, high: float) -> Iterable[float]:
    at = (low // EVERY_FT + 1) * EVERY_FT
    while at < high:
        yield at
        at += EVERY_FT


def _row(height: Height, line: Line) -> tuple[Words, ...]:
    profile = Profile(line)
    there: list[Words] = [
        b.name or Say.of("a branch") for b in profile.branches if abs(b.station_ft - height.station_ft) < 0.1
    ]
    there += [Say.of("beam") for b in profile.beams if b.stretch.padded(0.05, 0.05).holds(height.station_ft)]
    return (
        Say.of("{at}", at=Feet(round(height.station_ft, 1))),
        Say.of("{inches}", inches=Inches(round(height.below_slab_ft * INCHES_PER_FT, 1))),
        Say.of("{inches}", inches=Inches(round(NINE_OF_TEN * height.sigma_ft * INCHES_PER_FT, 1))),
        Say.of("{words}", words=tuple(there)) if there else "",
    )


def _lines(line: Line, heights: Elevations, job: Job) -> Iterable[Say]:
    if heights.levels == 0:
        yield Say.of("Locates only: good for digging, never for slope.")
    else:
        ends = Stretch(heights.heights[0].station_ft, heights.heights[-1].station_ft)
        slope = heights.slope_in_per_ft(ends, line.downstream)
        if slope is not None and slope > 0:
            yield Say.of("Slope from end to end: {slope} per foot with the flow.", slope=Inches(round(slope, 3)))
        elif slope is not None:
            yield Say.of(
                "Reverse slope from end to end: {slope} per foot against the flow.", slope=Inches(round(-slope, 3))
            )
    for heard in heights.heard:
        if heard.kind == "standing water":
            yield _belly(heard.at, heights, line)
            yield from _locator(heard.at, heights)
    if job.house.slab_above_grade_ft is None and any(m.surface for m in Profile(line).marks("loc", "depth")):
        yield Say.of(
            "How high the slab stands above the ground is not known, so depths from the ground are left out. Measure it."
        )


def _belly(at: Stretch, heights: Elevations, line: Line) -> Say:
    ends = heights.at(at.from_ft).below_slab_ft
    middle = heights.at(at.middle_ft).below_slab_ft
    deep = max(middle - ends, 0.0) * INCHES_PER_FT
    return Say.of(
        "Standing water from {low} to {high} is a level line: the bottom is equally high at both ends, and {deep} lower between them.",
        low=Feet(round(at.from_ft, 1)),
        high=Feet(round(at.to_ft, 1)),
        deep=Inches(round(deep, 1)),
    )


def _locator(water: Stretch, heights: Elevations) -> Iterable[Say]:
    """How the locates beside standing water agree with it: the one that is farthest off."""
    near = [h for h in heights.heard if h.kind in ("locate", "pothole") and h.at.gap_ft(water) <= NEAR_FT]
    if not near:
        return
    worst = max(near, key=lambda h: abs(h.off_ft))
    at, off = Feet(round(worst.at.from_ft, 1)), Inches(round(abs(worst.off_ft) * INCHES_PER_FT, 1))
    if any(h.odd for h in near):
        yield Say.of(
            "The locator does NOT agree with that water: at {at} it is {off} off. Locate again.", at=at, off=off
        )
    else:
        yield Say.of("The locator agrees with that water: it is {off} off at most, at {at}.", at=at, off=off)


KINDS = {
    "level": Say.of("level"),
    "locate": Say.of("locate depth"),
    "pothole": Say.of("pothole"),
    "riser": Say.of("riser at an access"),
    "standing water": Say.of("water stands level"),
    "water depth": Say.of("depth of the water"),
}


def _heard(heard: Heard) -> tuple[Words, ...]:
    at = Feet(round(heard.at.from_ft, 1))
    where = (
        Say.of("{at}", at=at)
        if heard.at.length_ft == 0
        else Say.of("{low} to {high}", low=at, high=Feet(round(heard.at.to_ft, 1)))
    )
    off = abs(heard.off_ft) * INCHES_PER_FT
    if off < 0.05:
        fits = Say.of("agrees")
    elif heard.off_ft > 0:
        fits = Say.of("{inches} lower", inches=Inches(round(off, 1)))
    else:
        fits = Say.of("{inches} higher", inches=Inches(round(off, 1)))
    return (KINDS[heard.kind], where, Say.of("{fits}. DOES NOT FIT: read again", fits=fits) if heard.odd else fits)
