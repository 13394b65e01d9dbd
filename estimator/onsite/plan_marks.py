"""A plan in; what stands on it beside pipe and walls: ways in, branches, beams, utilities, trees, lot lines, rooms, as places with words, out."""

from collections.abc import Iterable
from typing import Literal

from estimator.model.crossing import near_drain
from estimator.model.frozen import Frozen
from estimator.model.job import Job
from estimator.model.line import Line, Mark
from estimator.model.profile import Profile
from estimator.model.say import Inches, Say
from estimator.onsite.dead_reckoning import XY, Track
from estimator.onsite.plan import Plan, distance_ft
from estimator.onsite.ways_in import PLAIN, SAME_FT
from estimator.wording.crew_words import UTILITIES
from estimator.wording.plain import ROOMS, in_plain_words

Kind = Literal["access point", "branch", "beam", "utility", "tree", "footing", "lot line", "room"]
Words = Say | str
TREE_FT, FOOTING_FT = 5.0, 3.0
"""How far beside the pipe a tree or footing is drawn whose distance nobody noted (judgment; it is drawn as not measured)."""


class Thing(Frozen):
    """One thing on the plan: where, the direction of the pipe there, its words, the station it was logged at, and whether its place was noted."""

    kind: Kind
    at: XY
    along: XY
    words: Words
    line: str
    station_ft: float
    noted: bool = True
    choice: str = ""
    side: Literal["left", "right"] = "left"


def things_on(plan: Plan, job: Job) -> tuple[Thing, ...]:
    """Return all of it, rooms last, each room once; a way in that several lines share once, by the name people use."""
    found = [thing for line in job.lines for thing in _of_line(line, plan.tracks[line.name], job)]
    once: list[Thing] = []
    for thing in sorted(found, key=lambda t: (t.kind == "room", t.words in PLAIN)):
        if not any(_same(thing, other) for other in once):
            once.append(thing)
    return tuple(once)


def _same(one: Thing, other: Thing) -> bool:
    if one.kind != other.kind:
        return False
    return (
        distance_ft(one.at, other.at) < SAME_FT
        if one.kind == "access point"
        else one.kind == "room" and one.words == other.words
    )


def _of_line(line: Line, track: Track, job: Job) -> Iterable[Thing]:
    profile = Profile(line)
    named = {m.stretch.from_ft: m.name or m.word for m in profile.marks("cleanout", "access")}
    named |= {p.start_ft: p.access for p in line.passes if p.access}
    for at, name in named.items():
        yield Thing("access point", track.at(at), track.heading(at), name, line.name, at)
    filmed = {round(o.joins.station_ft) for o in job.lines if o.joins is not None and o.joins.line == line.name}
    for branch in profile.branches:
        if round(branch.station_ft) in filmed:
            continue
        size = Inches(branch.size_in)
        words = Say.of("{branch}, {size}", branch=branch.name or Say.of("branch"), size=size) if branch.size_in else branch.name or Say.of("branch")  # fmt: skip
        noted = branch.side in ("left", "right")
        side = _plan_side(branch.side, line)
        at = branch.station_ft
        yield Thing("branch", track.at(at), track.heading(at), words, line.name, at, noted, side=side)
    for beam in profile.beams:
        at = beam.stretch.middle_ft
        yield Thing("beam", track.at(at), track.heading(at), Say.of("beam"), line.name, at)
    for mark in profile.marks("crossing", "tree", "footing", "property line"):
        yield _beside(mark, line, track)
    for part, room in _rooms(profile):
        words = ROOMS.get(room, room)
        yield Thing("room", track.at(part), track.heading(part), words, line.name, part)


def _plan_side(side: str | None, line: Line) -> Literal["left", "right"]:
    """A side looking with the flow, turned to the way stations grow."""
    if line.downstream > 0:
        return "right" if side == "right" else "left"
    return "left" if side == "right" else "right"


def _beside(mark: Mark, line: Line, track: Track) -> Thing:
    at = mark.stretch.middle_ft
    along, (x, y) = track.heading(at), track.at(at)
    if mark.word == "crossing":
        name = in_plain_words(UTILITIES, mark.choice or "unknown")
        words: Words = Say.of("{utility}, {near}", utility=name, near=near_drain(mark)) if mark.lengths else name
        return Thing("utility", (x, y), along, words, line.name, at, choice=mark.choice or "")
    if mark.word == "property line":
        return Thing("lot line", (x, y), along, Say.of("lot line"), line.name, at)
    usual = TREE_FT if mark.word == "tree" else FOOTING_FT
    away, side = mark.length("away"), _looking(mark, line)
    far = usual if away is None else away
    beside = (-along[1], along[0]) if side == "left" else (along[1], -along[0])
    words = _named(mark)
    place = (x + beside[0] * far, y + beside[1] * far)
    kind: Kind = "tree" if mark.word == "tree" else "footing"
    return Thing(kind, place, along, words, line.name, at, away is not None and bool(_side(mark)))


def _looking(mark: Mark, line: Line) -> Literal["left", "right"]:
    """The side as stations grow; the log gives it as the camera looked. Not noted: left."""
    sign = next((p.sign for p in line.passes if p.number == mark.origin.pass_number), 1)
    return "right" if _side(mark) and (_side(mark) == "right") == (sign > 0) else "left"


def _side(mark: Mark) -> str:
    """Left or right as it was noted, in its place or in the remark; "" where it was not."""
    words = [mark.side or "", *mark.note.lower().split()]
    return next((word for word in words if word in ("left", "right")), "")


def _named(mark: Mark) -> Words:
    if mark.word == "footing":
        return Say.of("footing")
    size = mark.size_in or (12 * trunk if (trunk := mark.length()) else None)
    kind = mark.choice or Say.of("tree")
    return Say.of("{tree}, {size} trunk", tree=kind, size=Inches(round(size, 1))) if size else kind


def _rooms(profile: Profile) -> Iterable[tuple[float, str]]:
    """The middle of each stretch under a named room."""
    extent = profile.extent
    step, at, runs = 0.5, extent.from_ft, list[tuple[float, float, str]]()
    while at <= extent.to_ft:
        room = profile.room(at) if profile.zone(at).value in ("slab", "crawl", "basement") else None
        if room and runs and runs[-1][2] == room:
            runs[-1] = (runs[-1][0], at, room)
        elif room:
            runs.append((at, at, room))
        at += step
    return [((low + high) / 2, room) for low, high, room in runs]
