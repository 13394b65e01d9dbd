"""Step 1 of a log line: where. `12.5`, `8-`, `17-21`, `~5 call 5.3`, `16 no 16.6`, `same` come in; reel readings go out."""

import re
from typing import Literal

from estimator.fieldnotes.tidy import Tidied
from estimator.model.frozen import Frozen
from estimator.model.lengths import match_length, unit_written

LONGEST_REEL_FT = 2000
"""Common practice: push reels are 100 to 400 ft, crawlers for city mains go to about 1,500 ft."""

_TIME_OF_DAY = re.compile(r"\d{1,2}:\d\d\b")  # `8:12 rec on` is a note
_COMMA = re.compile(r"\d+,\d+")
_NOT_THAT = re.compile(r"\s*(?:no|call it|call|make it|make that)\s+~?(?=[\d.])", re.IGNORECASE)
_TO = re.compile(r"\s*(?:to|\.\.|-)\s*~?(?=[\d.])", re.IGNORECASE)
_OPEN = re.compile(r"\s*-(?=\s|$|[A-Za-z])")


class Where(Frozen):
    """Reel readings in ft, lower first; `open_end` for `8-`; `about` for `~5`; `end` is where the rest begins."""

    from_ft: float
    to_ft: float | None
    open_end: bool
    about: bool
    end: int


Bad = Literal["bad"]
"""A reading that cannot be one: a comma for a point, inches, farther than any reel, a unit at one end only."""


def _reading(text: str, at: int) -> tuple[float, int, str] | Bad | None:
    comma = _COMMA.match(text, at)
    if comma and "." not in comma.group():
        return "bad"
    found = match_length(text, at, "ft")
    if found is None:
        return None
    written = text[at : found[1]].strip()
    if unit_written(written) == "in":
        return "bad"
    if found[0] > LONGEST_REEL_FT:
        return "bad"
    return found[0], found[1], unit_written(written)


def read_where(line: Tidied) -> Where | Bad | Literal["same"] | None:
    """None: the line has no reading and is a note."""
    text = line.text
    at = len(text) - len(text.lstrip())
    if _TIME_OF_DAY.match(text, at):
        return None
    if re.match(r"same\b", text[at:], re.IGNORECASE):
        return "same"
    about = text[at : at + 1] == "~"
    first = _reading(text, at + about)
    if first is None or first == "bad":
        return first
    low, end, unit = first
    return _rest(text, low, end, unit, about)


def _rest(text: str, low: float, end: int, unit: str, about: bool) -> Where | Bad:
    while last_word := _NOT_THAT.match(text, end):
        again = _reading(text, last_word.end())
        if again is None or again == "bad":
            break
        low, end, unit = again
    to = _TO.match(text, end)
    if to:
        second = _reading(text, to.end())
        if second == "bad":
            return second
        if second is not None:
            high, high_end, high_unit = second
            if bool(unit) != bool(high_unit):
                return "bad"
            return Where(min(low, high), max(low, high), False, about, high_end)
    opened = _OPEN.match(text, end)
    if opened:
        return Where(low, None, True, about, opened.end())
    return Where(low, None, False, about, end)
