"""A line put together comes in; what in it cannot be true at once, or must be asked, goes out."""

from collections.abc import Iterable
from itertools import combinations, pairwise

from estimator.fieldnotes.agreement import worst_pairs
from estimator.fieldnotes.hang import Hung
from estimator.fieldnotes.limits import MOST_DEPTH_FT, Limits
from estimator.fieldnotes.lines import ReadLine
from estimator.fieldnotes.unlikely import unlikely
from estimator.fieldnotes.where import LONGEST_REEL_FT
from estimator.model.line import Finding, Line, Mark, Origin
from estimator.model.problem import Place, Problem, error, question, warning
from estimator.model.profile import Profile
from estimator.model.say import Say

BEYOND_END = error(
    "log/beyond-end",
    "{at} lies beyond the end of this pass, which stopped at {end}.",
    "Check both readings: the camera saw nothing beyond its end.",
)
BEYOND_LENGTH = error(
    "job/beyond-length",
    "line {line} is given as {length} ft long, but {seen} ft of it are in the notes.",
    "Correct the length, or the readings.",
)
EDGE_GOING_OUT = error(
    "log/slab-edge-out",
    "the camera was under the slab before {at}, so the slab ends there, and nothing says what begins.",
    "Write the zone that begins, such as `{at} yard`.",
)
DEPTHS_DIFFER = error(
    "log/depths-differ",
    "two depths at one station differ: {one} ft here and {other} ft in line {row}.",
    "Locate it once more, or cross one out with #.",
    "The dig, its shoring and its price hang on this number.",
)
DEPTH_FROM = warning(
    "log/depth-from",
    "this depth does not say from which surface it was taken.",
    "Write it like `{word} 3.4ft from lawn` or `{word} 29in under tile`.",
    "Slab and lawn may lie a foot apart.",
)
NO_ZONE = error(
    "log/no-zone",
    "nobody said what lies over the pipe at {what}.",
    "Write a zone where it begins: slab, yard, drive, walk, street, crawl or basement, such as `2.3 yard lawn`.",
    "A dig in a lawn and one under a slab are different work.",
)
ZONE_GAP = warning(
    "log/zone-gap",
    "line {line} does not say what lies over the pipe from {low} to {high} ft (stations).",
    "Write a zone where it begins, such as `2.3 yard lawn`.",
)
SHRINKS = question(
    "log/size-shrinks",
    "the pipe gets smaller downstream: {above} in, then {below} in.",
    "Check the two sizes; if it is so, write it in a remark, for the inspector will ask.",
    "Paper and solids catch where a drain narrows; an old house may still have it.",
)
PERCENT = error("log/percent", "{percent}% is more than the whole bore.", "Write a percent from 1 to 100.")
BRANCH_NOT_PROVEN = question(
    "log/branch-not-proven",
    "nobody proved whether the {size} in branch at {at} is live.",
    "Run water into the fixture and look; write `live proven` or `dead`.",
    "A live branch that is taken for dead gets lined shut.",
)
TAPES = question(
    "log/tapes-and-reel",
    "by tape from the {wall} this place lies {tape} ft or more from the one in line {row}, by the reel only {reel} ft.",
    "Measure both tapes again, and check the readings and the riser.",
    "A pipe is never shorter than its two ends lie apart: one of the numbers sends the crew to the wrong place.",
)
TOO_LONG = error(
    "log/too-long",
    "{feet} ft is no {what} of a house drain.",
    "Look for a slip of the finger or the unit: 30 in is 2 ft 6 in.",
    "Earth, shoring and price grow with it.",
)
SIZE = error("job/size", "a pipe of {size} in is no house drain.", 'Write its inside size, such as size = "4 in".')
PROBLEMS = (
    BEYOND_END, BEYOND_LENGTH, EDGE_GOING_OUT, DEPTHS_DIFFER, DEPTH_FROM, NO_ZONE, ZONE_GAP, SHRINKS, PERCENT, BRANCH_NOT_PROVEN, TAPES, TOO_LONG, SIZE,
)  # fmt: skip

LEAST_SIZE_IN, MOST_SIZE_IN = 1.0, 24.0  # a reading of 4 ft for 4 in is caught, no real drain is


def place_of(origin: Origin) -> Place:
    return Place(origin.file, origin.row, origin.column)


def contradictions(read: ReadLine, limits: Limits) -> list[Problem]:
    """Everything that is wrong with this line, in no order."""
    line, profile = read.line, Profile(read.line)
    found: list[Problem] = []
    for hung in read.hung:
        found += [*_beyond_end(hung), *_edge_going_out(hung)]
    found += _length(read, profile)
    found += _depths(line, limits)
    found += _tapes(line, limits)
    found += _zones(read, profile, limits)
    found += _sizes(read, profile, limits)
    found += [*_too_long(line), *unlikely(line, profile)]
    found += [PERCENT(place_of(f.origin), percent=f.percent[1]) for f in _all(line) if f.percent and f.percent[1] > 100]
    found += [
        BRANCH_NOT_PROVEN(place_of(m.origin), size=m.size_in or 0.0, at=m.origin.reading_ft or 0.0)
        for m in profile.marks("branch")
        if m.proven is False and m.live != "dead"
    ]
    return found


def _too_long(line: Line) -> list[Problem]:
    """Depths deeper than anybody digs for a house drain, lengths longer than any reel."""
    deep = [
        TOO_LONG(place_of(m.origin), feet=f"{m.depth_ft:,.0f}", what=Say.of("depth"))
        for m in line.marks
        if (m.depth_ft or 0) > MOST_DEPTH_FT
    ]
    lengths = ((m, ft) for m in line.marks for ft in (*(ft for _, ft in m.lengths), *(t.length_ft for t in m.ties)))
    return deep + [
        TOO_LONG(place_of(m.origin), feet=f"{ft:,.0f}", what=Say.of("length"))
        for m, ft in lengths
        if ft > LONGEST_REEL_FT
    ]


def _all(line: Line) -> Iterable[Finding]:
    return (s for f in (*line.findings, *line.superseded) for s in (f, *f.history))


def _beyond_end(hung: Hung) -> list[Problem]:
    ends = [e.from_ft for e in hung.entries if e.thing.word.word in ("end", "stop")]
    if not ends:
        return []
    end = max(ends)
    return [
        BEYOND_END(e.place, at=reading, end=end)
        for e in hung.entries
        if (reading := e.from_ft if e.to_ft is None else e.to_ft) > end
    ]


def _edge_going_out(hung: Hung) -> list[Problem]:
    zones = sorted((e for e in hung.entries if e.thing.word.kind == "zone"), key=lambda e: e.from_ft)
    return [
        EDGE_GOING_OUT(here.place, at=here.from_ft)
        for before, here in pairwise(zones)
        if "edge" in here.thing.values and before.thing.word.word == "slab"
    ]


def _length(read: ReadLine, profile: Profile) -> list[Problem]:
    line = read.line
    seen = [end for stretch in profile.filmed for end in (stretch.from_ft, stretch.to_ft)]
    if line.length_ft is None or not seen or max(seen) - min(seen) <= line.length_ft:
        return []
    return [BEYOND_LENGTH(read.place, line=line.name, length=line.length_ft, seen=round(max(seen) - min(seen), 1))]


def _depths(line: Line, limits: Limits) -> list[Problem]:
    marks = [m for m in line.marks if m.word in ("depth", "loc", "pothole", "invert") and m.depth_ft is not None]
    found = [DEPTH_FROM(place_of(m.origin), word=m.word) for m in marks if m.surface is None and m.word != "invert"]
    for one, other in combinations(marks, 2):
        if _differ(one, other, limits):
            first, last = sorted((one, other), key=lambda m: (m.origin.pass_number, m.origin.row))
            here, there = f"{last.depth_ft:.2f}", f"{first.depth_ft:.2f}"
            found.append(DEPTHS_DIFFER(place_of(last.origin), one=here, other=there, row=first.origin.row))
    return found


def _tapes(line: Line, limits: Limits) -> list[Problem]:
    """As far apart as two passes may put one thing, so far a tape and the reel may differ."""
    found = []
    for pair in worst_pairs(line):
        first, last = sorted((pair.one, pair.other), key=lambda m: (m.origin.pass_number, m.origin.row))
        if pair.short_ft > limits.passes_disagree_ft:
            words = {
                "wall": pair.to,
                "tape": f"{pair.tape_ft:.1f}",
                "reel": f"{pair.reel_ft:.1f}",
                "row": first.origin.row,
            }
            found.append(TAPES(place_of(last.origin), **words))
    return found


def _differ(one: Mark, other: Mark, limits: Limits) -> bool:
    together = one.stretch.gap_ft(other.stretch) <= limits.same_station_ft
    alike = one.surface == other.surface and one.to == other.to
    apart = abs((one.depth_ft or 0.0) - (other.depth_ft or 0.0))
    return together and alike and round(apart, 6) > limits.depth_differs_ft


def _zones(read: ReadLine, profile: Profile, limits: Limits) -> list[Problem]:
    line = read.line
    unsaid = [f for f in line.findings if profile.zone(f.stretch.middle_ft).value is None]
    if unsaid:
        where = ", ".join(f"{f.origin.reading_ft:g} ({f.kind})" for f in unsaid)
        return [NO_ZONE(place_of(unsaid[0].origin), what=where)]
    zones = [zone for filmed in profile.filmed for zone in profile.zones(filmed)]
    if zones and not any(zone for _, zone in zones):
        return [NO_ZONE(read.place, what=Say.of("the whole of line {line}", line=line.name))]
    return [
        ZONE_GAP(read.place, line=line.name, low=round(stretch.from_ft, 1), high=round(stretch.to_ft, 1))
        for stretch, zone in zones
        if zone is None and stretch.length_ft > limits.same_place_ft
    ]


def _sizes(read: ReadLine, profile: Profile, limits: Limits) -> list[Problem]:
    line = read.line
    sizes = profile.sizes(profile.extent)
    found = []
    for size in {size for _, size in sizes}:
        if not LEAST_SIZE_IN <= size <= MOST_SIZE_IN:
            found.append(SIZE(read.place, size=size))
    downwards = sizes if line.downstream == 1 else sizes[::-1]
    for (_, above), (_, below) in pairwise(downwards):
        if above - below > limits.bore_differs_in:
            found.append(SHRINKS(read.place, above=above, below=below))
    return found
