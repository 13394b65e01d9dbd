"""How much: one reader for each slot of a log word. A text and a position come in; slot, value and where it ends go out."""

import re
from collections.abc import Callable
from typing import Any

from estimator.fieldnotes.deep import MOST_BARE_DEPTH
from estimator.fieldnotes.tidy import CALLED
from estimator.fieldnotes.words import (
    ALL_SIGNS,
    GRADE_WORDS,
    LABELS,
    SIDES,
    SURFACES,
    UTILITIES,
    Word,
)
from estimator.model.lengths import match_length

Found = tuple[str, Any, int]  # slot, value, where it ends


def phrase(words: tuple[str, ...]) -> re.Pattern[str]:
    longest_first = sorted(words, key=len, reverse=True)
    return re.compile(rf"(?:{'|'.join(map(re.escape, longest_first))})(?![\w'])", re.IGNORECASE)


def canonical(text: str, words: tuple[str, ...]) -> str:
    """The word as the table spells it."""
    return next((w for w in words if w.lower() == text.lower()), text)


_SURFACE = re.compile(
    rf"\s*(?:from|under|below|on|to)?\s*(?:the\s+)?(?P<surface>{phrase(SURFACES).pattern})", re.IGNORECASE
)
_NUM = r"(?:\d+(?:\.\d+)?|\.\d+)"
_PERCENT = re.compile(rf"~?({_NUM})\s*%?\s*(?:\.\.|-|to)\s*({_NUM})\s*%|~?({_NUM})\s*%", re.IGNORECASE)
_COUNT = re.compile(r"(\d{1,4})\s+(?:joints|places)\b", re.IGNORECASE)
_CLOCK = re.compile(r"at\s+(\d{1,2})(?:\s*(?:-|to)\s*(\d{1,2}))?(?![\d.'\"])(?:\s*o'?\s?cl(?:oc)?k)?", re.IGNORECASE)
_EVERY = re.compile(r"every\s+", re.IGNORECASE)
_LABEL = re.compile(rf"\s*({'|'.join(LABELS)})\b", re.IGNORECASE)
_PHOTO = re.compile(r"photo\s+(\d{1,6})\b(?:\s+([\w-]+\.(?:jpe?g|png|heic)))?", re.IGNORECASE)
_VIDEO = re.compile(r"video\s+(\d{1,3}:[0-5]\d)\b", re.IGNORECASE)
_TIE_TO = re.compile(
    r"\s*(?:(?:from|off|to)\s+)?([A-Za-z][A-Za-z .]*?)\s*(?=,|$|\s{2,}|\bflag\b|\bphoto\b)", re.IGNORECASE
)
_SIZE = re.compile(rf"({_NUM})\s?[x×]\s?{_NUM}(?:\s*(?:in\b|\"))?", re.IGNORECASE)

LEGS = {"starts": "starts", "begins": "starts", "start": "starts", "still": "still", "ends": "ends", "stops": "ends"}
_LEG = re.compile(rf"({'|'.join(LEGS)})\b", re.IGNORECASE)

Reader = Callable[[Word, str, int], Found | None]


def _words(slot: str, words: tuple[str, ...]) -> Reader:
    pattern = phrase(words)

    def read(word: Word, text: str, at: int) -> Found | None:
        match = pattern.match(text, at)
        return (slot, canonical(match.group(), words), match.end()) if match else None

    return read


def _grade(word: Word, text: str, at: int) -> Found | None:
    if match := re.compile(r"suspected\b|\?", re.IGNORECASE).match(text, at):
        return "grade", "suspected", match.end()
    if match := re.compile(r"after (?:cleaning|jetting|descaling|cutting)\b", re.IGNORECASE).match(text, at):
        return "after_cleaning", True, match.end()
    return None


def _leg(word: Word, text: str, at: int) -> Found | None:
    match = _LEG.match(text, at)
    return ("leg", LEGS[match.group(1).lower()], match.end()) if match else None


def _reference(word: Word, text: str, at: int) -> Found | None:
    if match := _PHOTO.match(text, at):
        return "photo", (int(match.group(1)), match.group(2)), match.end()
    if match := _VIDEO.match(text, at):
        return "video", match.group(1), match.end()
    if match := CALLED.match(text, at):
        return "name", match.group(1).strip(), match.end()
    return None


def _percent(word: Word, text: str, at: int) -> Found | None:
    match = _PERCENT.match(text, at)
    if not match:
        return None
    low, high, only = match.groups()
    pair = sorted((float(low), float(high))) if only is None else [float(only)] * 2
    return "percent", tuple(pair), match.end()


def _count(word: Word, text: str, at: int) -> Found | None:
    match = _COUNT.match(text, at)
    return ("count", int(match.group(1)), match.end()) if match else None


def _clock(word: Word, text: str, at: int) -> Found | None:
    match = _CLOCK.match(text, at)
    if not match:
        return None
    first = int(match.group(1))
    second = int(match.group(2) or first)
    if not (1 <= first <= 12 and 1 <= second <= 12):
        return None
    return "clock", (first, second), match.end()


def _size(word: Word, text: str, at: int) -> Found | None:
    if match := _SIZE.match(text, at):
        return "size", float(match.group(1)), match.end()
    found = match_length(text, at, word.bare)
    if found is None or re.match(r"\s*(?:%|away|joints|places)", text[found[1] :]):
        return None
    return "size", round(found[0] * 12, 6), found[1]


def _labelled(word: Word, text: str, at: int) -> Found | None:
    found = match_length(text, at, "" if word.word in ("branch", "tree", "beam", "crossing", "footing") else "ft")
    if found is None:
        return None
    label = _LABEL.match(text, found[1])
    if label:
        return "lengths", (label.group(1).lower(), found[0]), label.end()
    return None if word.word in ("branch", "tree", "beam") else ("lengths", ("", found[0]), found[1])


def _depth(word: Word, text: str, at: int) -> Found | None:
    start = re.compile(r"(?:~\s*)?").match(text, at)
    found = match_length(text, start.end() if start else at, word.bare)
    if found is None:
        return None
    surface = _SURFACE.match(text, found[1])
    away = (
        word.word in ("loc", "pothole")
        and found[0] > MOST_BARE_DEPTH
        and re.match(r"\s*(?:from|off|to)\b", text[found[1] :])
    )
    if surface and not away:  # `14 ft from drive` is a tape along the ground
        return "depth", (found[0], canonical(surface["surface"], SURFACES)), surface.end()
    if word.word in ("loc", "pothole") and _TIE_TO.match(text, found[1]):
        return None  # a tape tie such as 14'2" front wall
    return "depth", (found[0], None), found[1]


def _tie(word: Word, text: str, at: int) -> Found | None:
    found = match_length(text, at, "")
    to = _TIE_TO.match(text, found[1]) if found else None
    return ("ties", (found[0], to.group(1).strip().lower()), to.end()) if found and to else None


def _every(word: Word, text: str, at: int) -> Found | None:
    every = _EVERY.match(text, at)
    found = match_length(text, every.end() if every else at, "ft" if every else "")
    if found is None:
        return None
    least_ft = 0.5 if every else 1  # a lip is inches, a pipe length is feet
    return ("every", found[0], found[1]) if found[0] >= least_ft else None


def _pattern(slot: str, pattern: str, value: Callable[[re.Match[str]], Any]) -> Reader:
    compiled = re.compile(pattern, re.IGNORECASE)

    def read(word: Word, text: str, at: int) -> Found | None:
        match = compiled.match(text, at)
        return (slot, value(match), match.end()) if match else None

    return read


def _choice(word: Word, text: str, at: int) -> Found | None:
    match = phrase(word.choices).match(text, at) if word.choices else None
    return ("choice", canonical(match.group(), word.choices), match.end()) if match else None


_SIGN = _words("signs", ALL_SIGNS)
_UTILITY = _words("signs", UTILITIES)


def _signs(word: Word, text: str, at: int) -> Found | None:
    """A sign; of a utility in the bore, which one it is."""
    return _SIGN(word, text, at) or (_UTILITY(word, text, at) if word.word == "utility" else None)


READERS: tuple[tuple[str, Reader], ...] = (
    ("clock", _clock),
    ("percent", _percent),
    ("count", _count),
    ("every", _every),
    ("depth", _depth),
    ("lengths", _labelled),
    ("tie", _tie),
    ("size", _size),
    ("degrees", _pattern("degrees", rf"({_NUM})\s*(?:degrees?|deg\b|°)?(?![\w'\"%])", lambda m: float(m.group(1)))),
    ("flag", _pattern("flag", r"flag\s+(\w+)", lambda m: m.group(1).upper())),
    (
        "to",
        _pattern(
            "to", r"to (?:the )?(centre|center|invert)\b", lambda m: "invert" if m.group(1) == "invert" else "centre"
        ),
    ),
    ("edge", _pattern("edge", r"edge\b(?!\s*~?\d)", lambda m: True)),
    ("live", _words("live", ("live", "dead"))),
    ("proven", _pattern("proven", r"(not )?(?:proven|flushed)\b", lambda m: not m.group(1))),
    ("reach", _pattern("reach", r"out of reach\b", lambda m: True)),
    ("through", _pattern("through", r"through\b", lambda m: True)),
    ("side", _words("side", SIDES)),
    ("direction", _words("direction", SIDES)),
    ("grade_word", _words("grade_word", GRADE_WORDS)),
    ("choice", _choice),
    ("signs", _signs),
)
"""Slots in the order they are tried."""
ALWAYS: tuple[Reader, ...] = (_leg, _grade, _reference)
