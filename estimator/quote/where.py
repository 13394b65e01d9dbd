"""A stretch of a line in, where that is in the house out, in words."""

from collections.abc import Iterable
from math import floor

from estimator.model.line import Line
from estimator.model.profile import Profile
from estimator.model.say import Feet, Say
from estimator.model.stretch import Stretch, missing
from estimator.model.tool_reach import passed
from estimator.model.work import Repair
from estimator.wording.numbers import INCHES_IN_FT, SHOW_INCHES_BELOW_FT
from estimator.wording.places import OVER, PLACES, THE_ROOMS
from estimator.wording.plain import LINES, ZONES, in_plain_words
from estimator.works.methods import record_of

INDOORS = ("slab", "crawl", "basement")
POINT_FT = 1.5  # shorter than this is told as a place, not as a length


def line_name(line: Line) -> Say:
    return in_plain_words(LINES, line.name)


def rooms(line: Line, stretch: Stretch) -> tuple[str, ...]:
    """The rooms over the part of the stretch that lies under the house."""
    profile = Profile(line)
    inside = (part for part, zone in profile.zones(stretch) if zone in INDOORS)
    return tuple(dict.fromkeys(room for part in inside for room in profile.rooms(part)))


def in_the_open_yard(line: Line, stretch: Stretch) -> bool:
    """Nothing but the yard is over it, which a drawing shows without words."""
    return {zone for _, zone in Profile(line).zones(stretch)} == {"yard"}


def place(line: Line, stretch: Stretch) -> Say:
    """Under which rooms or what else: "under the hall, the kitchen, and the yard", "in the crawl space"."""
    named = rooms(line, stretch)
    zones = dict.fromkeys(z for _, z in Profile(line).zones(stretch) if z and not (named and z in INDOORS))
    over = [*(in_plain_words(THE_ROOMS, r) for r in named), *(OVER[z] for z in zones if z in OVER)]
    parts = [Say.of("under {places}", places=tuple(over))] if over else []
    parts += [in_plain_words(ZONES, zone) for zone in zones if zone not in OVER]
    if not parts:
        return Say.of("on the {line}", line=line_name(line))
    return Say.of("{places}", places=tuple(parts))


def worked_on(line: Line, repair: Repair) -> Stretch:
    """Return the stretch a repair works on: of cleaning all that the tool passes, from the way in to the far end."""
    if record_of(repair.method).kind == "clean":
        return passed(Profile(line), repair.stretch)
    return repair.stretch


def ends(line: Line, stretch: Stretch) -> Say:
    """From where to where along the line, as long as it is on paper: "2 ft to 14 ft 6 in", "3 ft outside the wall to 20 ft"."""
    start = to_the_step(line, stretch.from_ft)
    end = Feet(start + on_paper(line, stretch.length_ft))
    if line.zero == "slab edge" and start < 0:
        if end.ft > 0:
            return Say.of("{start} outside the wall to {end}", start=Feet(-start), end=end)
        return Say.of("{start} to {end} outside the wall", start=Feet(-start), end=Feet(-end.ft))
    return Say.of("{start} to {end}", start=Feet(start), end=end)


def distance(line: Line, stretch: Stretch, *, drawn: bool = False) -> Say:
    """How far along: from the outside wall where the line's zero is there, else from where the camera went in.

    Beside a drawing, which says what its feet are counted from (`drawn`), the feet stand alone.
    """
    at, wall, point = stretch.from_ft, line.zero == "slab edge", counted_from(line)
    if stretch.length_ft > POINT_FT and at >= 0:
        first, last = Feet(at), Feet(stretch.to_ft)
        return (
            Say.of("from {start} to {end}", start=first, end=last)
            if drawn
            else Say.of("{start} to {end} from {point}", start=first, end=last, point=point)
        )
    if wall and at < 0:
        return Say.of("{distance} outside the house wall", distance=Feet(-at))
    if drawn:
        return Say.of("at {distance}", distance=Feet(at))
    return Say.of("{distance} from {point}", distance=Feet(at), point=point)


def counted_from(line: Line) -> Say:
    """What the feet of the line are counted from: the wall, or the place where the camera first went in."""
    if line.zero == "slab edge":
        return Say.of("the outside wall")
    known = PLACES.get(line.passes[0].access) if line.passes and line.passes[0].start_ft == 0 else None
    return known or Say.of("where the camera went in")


LONG_LINE_STEP_FT, SHORT_LINE_STEP_FT = 0.5, 1 / INCHES_IN_FT


def on_paper(line: Line, length_ft: float) -> float:
    """To the half foot on a line so long that its own length is told so, to the inch on a short one; never nothing."""
    step = _step(line)
    return max(1, int(length_ft / step + 0.5)) * step


def to_the_step(line: Line, station_ft: float) -> float:
    """Return a station to the step in which the line's lengths are told, ft."""
    step = _step(line)
    return floor(station_ft / step + 0.5) * step


def _step(line: Line) -> float:
    long = Profile(line).extent.length_ft >= SHOW_INCHES_BELOW_FT
    return LONG_LINE_STEP_FT if long else SHORT_LINE_STEP_FT


def old_on_paper(line: Line, renewed: Iterable[Stretch]) -> float:
    """What the renewed stretches leave of the line; 0 where that is less than a step of its length."""
    whole, parts = Profile(line).extent, list(renewed)
    if not any(part.length_ft for part in missing(whole, parts)):
        return 0.0
    covered, before = 0.0, list[Stretch]()
    for part in parts:
        fresh = sum(piece.length_ft for piece in missing(part, before) if whole.touches(piece))
        covered += on_paper(line, fresh) if fresh else 0.0
        before.append(part)
        whole = whole.union(part)
    return max(0.0, on_paper(line, whole.length_ft) - covered)
