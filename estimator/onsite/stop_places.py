"""An option's openings and what was noted beside or across the line in; the places at which digging stops and somebody calls, out."""

from collections.abc import Iterable, Sequence

from estimator.model.crossing import near_drain
from estimator.model.job import Job
from estimator.model.line import Line, Mark
from estimator.model.opening import Opening
from estimator.model.profile import Profile
from estimator.model.say import Feet, Say
from estimator.onsite.sheet import Block, Words
from estimator.wording.crew_words import UTILITIES
from estimator.wording.plain import in_plain_words

HAND_FT = 2.0
"""So near to a utility people dig by hand: 18 to 24 in each side in most states (from memory; your state's law counts)."""
ROOT_FT = 10.0
"""So near to a trunk roots thicker than a wrist hold the tree (judgment)."""
WHAT = {
    "footing": Say.of("footing"),
    "beam": Say.of("beam"),
    "tree": Say.of("tree"),
    "property line": Say.of("lot line"),
}
WORDS = ("crossing", *WHAT)


def stop_places(openings: Sequence[Opening], job: Job) -> Block:
    """Return where along each opening to stop and call."""
    heads = (Say.of("opening"), Say.of("what is there"), Say.of("station"), Say.of("stop and call"))
    rows = tuple(row for o in openings if o.line for row in _rows(o, job.line(o.line)))
    return Block(heading=Say.of("Places to stop"), heads=heads, rows=rows)


def _rows(opening: Opening, line: Line) -> Iterable[tuple[Words, ...]]:
    for mark in Profile(line).marks(*WORDS):
        away = mark.length("away") or 0.0
        if opening.distance_ft(mark.stretch, away, at_top=True) <= _reach_ft(mark):
            at = Say.of("{at}", at=Feet(round(mark.stretch.from_ft, 1)))
            yield (opening.name, _what(mark), at, _stop(mark))


def _reach_ft(mark: Mark) -> float:
    return ROOT_FT if mark.word == "tree" else HAND_FT


def _what(mark: Mark) -> Words:
    if mark.word == "crossing":
        return Say.of(
            "crossing, {utility}, {near}", utility=in_plain_words(UTILITIES, mark.choice or "unknown"), near=near_drain(mark)
        )  # fmt: skip
    return WHAT[mark.word]


def _stop(mark: Mark) -> Say:
    if mark.word == "crossing":
        near = Feet(HAND_FT)
        return (
            Say.of("by hand within {near}; gas: stop at any smell or scratch, leave, call 911", near=near)
            if mark.choice == "gas"
            else Say.of("by hand within {near}; stop at any scratch or bare cable", near=near)
        )
    if mark.word in ("footing", "beam"):
        return Say.of("if it is deeper than noted, cracked or loose. Dig below it only with the engineer's approval")
    if mark.word == "tree":
        return Say.of("at a root thicker than a wrist: ask before you cut it")
    return Say.of("at the lot line: nothing past it without written permission from the neighbor or the city")
