"""A stretch of a line in, where that is in the house out, in words."""

from estimator.model.line import Line
from estimator.model.profile import Profile
from estimator.model.say import Feet, Say
from estimator.model.stretch import Stretch
from estimator.wording.plain import LINES, ROOMS, ZONES, in_plain_words

POINT_FT = 1.5  # shorter than this is told as a place, not as a length


def line_name(line: Line) -> Say:
    return in_plain_words(LINES, line.name)


def rooms(line: Line, stretch: Stretch) -> tuple[str, ...]:
    """The rooms over the part of the stretch that lies under the house."""
    profile = Profile(line)
    inside = (part for part, zone in profile.zones(stretch) if zone in ("slab", "crawl", "basement"))
    return tuple(dict.fromkeys(room for part in inside for room in profile.rooms(part)))


def place(line: Line, stretch: Stretch) -> Say:
    """Under which rooms or what else: "under kitchen and hall", "under the yard"."""
    named = rooms(line, stretch)
    zones = [z for _, z in Profile(line).zones(stretch) if z and not (named and z in ("slab", "crawl", "basement"))]
    parts = [Say.of("under {rooms}", rooms=tuple(in_plain_words(ROOMS, r) for r in named))] if named else []
    parts += [in_plain_words(ZONES, zone) for zone in dict.fromkeys(zones)]
    if not parts:
        return Say.of("on the {line}", line=line_name(line))
    return Say.of("{places}", places=tuple(parts))


def distance(line: Line, stretch: Stretch) -> Say:
    """How far along: from the house wall where the line's zero is there, else from where the camera went in."""
    at, wall = stretch.from_ft, line.zero == "slab edge"
    if stretch.length_ft > POINT_FT and at >= 0:
        ends = {"start": Feet(at), "end": Feet(stretch.to_ft)}
        return (
            Say.of("from {start} to {end} inside the wall", **ends)
            if wall
            else Say.of("from {start} to {end} along the pipe", **ends)
        )
    if not wall:
        return Say.of("{distance} along the pipe", distance=Feet(at))
    return (
        Say.of("{distance} inside the wall", distance=Feet(at))
        if at >= 0
        else Say.of("{distance} outside the wall", distance=Feet(-at))
    )
