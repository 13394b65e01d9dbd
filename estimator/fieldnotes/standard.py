"""One line in standard words comes in; what it says goes out, or nothing where a word, a unit or an amount is missing.

The grammar is where, what, how much: `11.5 branch 3in left live`. `docs/field-notes.md` lists the words.
"""

import re
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from estimator.fieldnotes.bare_figures import SIZES_IN
from estimator.fieldnotes.deep import most_bare_depth
from estimator.fieldnotes.drafts import FILLS
from estimator.fieldnotes.lexicon import lexicon
from estimator.fieldnotes.limits import FARTHEST_LEAP_FT, MAIN_DEPTH_FT
from estimator.fieldnotes.logproblems import swallowed
from estimator.fieldnotes.skeleton import with_vowels
from estimator.fieldnotes.spelling import nearest
from estimator.fieldnotes.things import Thing, read_thing_word, read_things
from estimator.fieldnotes.tidy import Tidied
from estimator.fieldnotes.where import Bad, Where, read_where

if TYPE_CHECKING:
    from estimator.fieldnotes.meaning import Context

_TIE = re.compile(r"\s*=\s*(flag\s+\w+|[\d.]+|[A-Za-z][\w' ]*?)(?=\s*(?:,|:|$|\s{2,}|\d|\?))", re.IGNORECASE)
_TO_END = re.compile(r"\s*(~?\d+(?:\.\d+)?)-end\b", re.IGNORECASE)
_FEET_AMOUNT = re.compile(r"\d\s*(?:'|ft\b|feet\b|foot\b)", re.IGNORECASE)


AT_ONE_PLACE = frozenset(("branch", "cleanout", "bend", "tree", "access", "stop", "end"))
"""What lies at one footage: `9-11 branch` is 9 ft 11 in, or anywhere in 2 ft; `9- branch` is no stretch either."""


MAY_BE_DEGREES = (11.25, 22.5, 45.0, 90.0)
"""`22 1/2 bend` is a fitting, and a reading."""


@dataclass(slots=True)
class Said:
    """What a line in standard words says; `same` is what it saw again, written at `same_at`; `to_end` a stretch to where the run ends."""

    where: Where
    things: list[Thing] = field(default_factory=list)
    same: str = ""
    to_end: bool = False
    same_at: int = 0


def tied(line: Tidied, last: Where | None, names: frozenset[str]) -> Said | None:
    """The line, or None where it is not in standard words. `last` is the place of the line before, for `same` and `loc`."""
    text = line.text
    to_end = _TO_END.match(text)
    if to_end:
        where: Where | Bad | str | None = Where(
            float(to_end[1].lstrip("~")), None, False, to_end[1].startswith("~"), to_end.end()
        )
    else:
        where = read_where(line)
    at = 0
    if where is None:
        word = read_thing_word(text, len(text) - len(text.lstrip()))
        if not (word and word[0].word == "loc" and last):
            return None
        where = "same"
    if where == "same":
        if last is None:
            return None
        match = re.match(r"\s*(?:same\b)?", text, re.IGNORECASE)
        at = match.end() if match else 0
        where = last
    elif isinstance(where, Where):
        at = where.end
    if not isinstance(where, Where):
        return None
    tie = _TIE.match(text, at)
    extra: list[Thing] = []
    same = ""
    if tie:
        at, same = tie.end(), tie[1].strip()
        word = read_thing_word(same, 0)
        says_more = bool(text[at:].strip()) and text[at:].lstrip()[0] not in ":,"
        if word and word[1] == len(same) and word[0].kind == "finding" and says_more:
            extra = [Thing(word[0], tie.start(1))]
    things, stray = read_things(text, at, names, extra)
    if stray or not (things or tie) or any(not _whole(t, where, bool(to_end)) for t in things):
        return None
    return Said(where, things, same, bool(to_end), tie.start(1) if tie else 0)


def _whole(thing: Thing, where: Where, to_end: bool) -> bool:
    """Nothing in it is left over, swallowed or missing."""
    if thing.bad or swallowed(thing):
        return False
    going = thing.values.get("leg") or where.open_end or to_end
    if not thing.word.needs or (going and thing.word.kind not in ("zone", "holds") and not to_end):
        return True
    return any(need in thing.values for need in thing.word.needs)


def suspicious(said: Said, text: str, context: "Context") -> bool:
    """Words in order, but an amount that cannot be: the line is weighed as any other is."""
    where = said.where
    written = text[: where.end]
    low, high = where.from_ft, where.to_ft
    dash = re.fullmatch(r"\s*~?(\d+)-(\d+)\s*", written)
    if dash and int(dash[2]) < 12 and int(dash[2]) < int(dash[1]):
        return True
    goes_on = said.to_end or where.open_end or (high is not None and high > low)
    if goes_on and any(t.word.word in AT_ONE_PLACE for t in said.things):
        return True
    if (
        low in MAY_BE_DEGREES
        and high is None
        and any(t.word.word == "bend" and "degrees" not in t.values for t in said.things)
    ):
        return True
    if low > 400 or (
        high is None
        and "." not in written
        and low >= 200
        and low > context.furthest_ft + FARTHEST_LEAP_FT
        and not any(t.word.word in ("end", "stop") for t in said.things)
    ):
        return True
    if re.search(r"(?:ft|feet)\s+\d+\s*$", written) and any(
        "size" not in t.values and "percent" not in t.values for t in said.things
    ):
        return bool(re.match(r"\s*(?:in|\")", text[where.end :]))
    if re.search(r"\d\s*(?:ft|feet)\.?\s+\d+(?:\.\d+)?\s*(?:in|\")", written):
        return True
    wide = any(t.word.word in ("hole", "gap", "branch") and "size" not in t.values for t in said.things)
    if wide and re.search(r"\d'\s+\d+(?:\.\d+)?\s*(?:in|\")", written):
        return True
    return any(_cannot_be(t, text, context) for t in said.things)


_NOT_OVER_IT = re.compile(
    r"\b(?:house|hse|slab|floor|drive|driveway|street|yard|walk|sidewalk|home|building|now)\b", re.IGNORECASE
)
_NO_WALL = re.compile(
    r"\b(?:flag|deep|down|depth|long|wide|top|slab|floor|tile|lawn|grass|grade|ground|asphalt|concrete|surface)\b",
    re.IGNORECASE,
)
_OF_CABLE = re.compile(r"\b(?:cable|rod|reel|hose)\b", re.IGNORECASE)


def _nothing_over_it(choice: str) -> bool:
    """`under house` is a slab, `under hosue` too; `under 27` is no thing over the pipe."""
    return bool(
        _NOT_OVER_IT.search(choice)
        or any(c.isdigit() for c in choice)
        or any(nearest(w)[0] or "zone" in lexicon().means((w,)) for w in re.findall(r"[a-z]+", choice.lower()))
    )


def _names_a_surface(to: str) -> bool:
    """`28in turf`, `28in grsas`: what a depth is counted from, and no wall that a tape is held at."""
    last = re.findall(r"[a-z]+", to.lower())[-1:]
    return any("surface" in lexicon().means((nearest(word)[0] or word,)) for word in last)


def _cannot_be(thing: Thing, text: str, context: "Context") -> bool:
    values, word = thing.values, thing.word
    if word.word == "branch" and re.search(r"\d\s*(?:in|\")?\s?x\s?\d", text[thing.at :].lower()):
        return True  # main by branch, or branch by main
    if word.word == "joint" and values.get("size") is not None and "open" in values.get("signs", ()):
        return True  # a gap of so much
    named = tuple(text[thing.at :].lower().split()[:2])
    if word.word == "utility" and "room" in lexicon().means(named):
        return True  # `utility room`
    if word.word == "under" and _nothing_over_it(str(values.get("choice", ""))):
        return True
    if word.word in ("end", "stop") and re.match(
        r"(?:at|in|to|the|into|of|my|our)\b", str(values.get("choice", "")), re.IGNORECASE
    ):
        return True
    if word.word == "end" and _OF_CABLE.search(str(values.get("choice", ""))):
        return True
    if any(
        (_NO_WALL.search(with_vowels(to)) or _names_a_surface(to)) and f"off {to}" not in text.lower()
        for _, to in values.get("ties", ())
    ):
        return True
    size = values.get("size")
    leg = values.get("leg")
    if leg in ("ends", "still") and word.kind == "finding" and word.word not in context.started:
        return False  # it may start further on in the log; spans tells
    if word.kind == "finding" and "long" in values.get("signs", ()):
        return True
    if word.word in FILLS and size is not None and values.get("direction") in ("left", "right"):
        return True  # `scale 2in left`: of the opening
    lip = word.kind == "finding" and word.word not in ("hole", "gap", "crack")
    if lip and size is not None and (size >= context.bore_in or _FEET_AMOUNT.search(text[thing.at :])):
        return True
    if word.word in ("hole", "gap") and size is not None and size > 2 * max(context.bore_in, 4):
        return True
    if word.word == "branch" and size is not None and size not in SIZES_IN:
        return True
    if "depth" in values and word.word in ("depth", "loc", "pothole", "invert"):
        depth = values["depth"][0]
        if depth > most_bare_depth(context.zone) and re.search(rf"\b{depth:g}\s*(?![\d.]|'|ft|feet|\")", text):
            return True
        if depth > MAIN_DEPTH_FT:
            return True
    percent = values.get("percent")
    return bool(percent and percent[1] > 100)
