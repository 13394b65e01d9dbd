"""Answers about fixtures in, `2 1/2 baths, kitchen, washer`; how many of each out."""

import re
from collections.abc import Mapping
from typing import Any

from estimator.fieldnotes.answers import Got, Known, Unread, nearest
from estimator.knowledge.fixture_units import OTHER_WORDS, UNITS, fixture, is_fixture
from estimator.model.lengths import plain_marks

_COUNT_WORDS = {"a": 1, "an": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8}
_BATHS = (
    "bath", "baths", "bathroom", "bathrooms", "full bath", "full baths", "ba", "bathroom group", "bathroom groups",
)  # fmt: skip
_HALF_BATHS = ("half bath", "half baths", "powder room", "powder rooms", "powder")
_MORE_WORDS = {
    "kitchen": "kitchen sink",
    "dish washer": "dishwasher",
    "w/d": "clothes washer",
    "utility sink": "laundry tray",
}
_PART = re.compile(
    r"(?:(?P<whole>\d{1,3})(?P<half>\.5|\s*(?:1/2|½))?(?!\s*/)|(?P<only_half>1/2|½)|(?P<word>an?|one|two|three|four|five|six|seven|eight)\b)?"
    r"\s*x?\s*(?P<what>[^\d].*)",
    re.IGNORECASE | re.ASCII | re.DOTALL,
)
_NAMES = "|".join(sorted((*UNITS, *OTHER_WORDS, *_MORE_WORDS, *_BATHS, *_HALF_BATHS), key=len, reverse=True))
_ONE = re.compile(
    rf"(?:(?:\d{{1,3}}(?:\.5|\s*(?:1/2|½))?|1/2|½)\s*x?\s*|(?:{'|'.join(_COUNT_WORDS)})\s+)?(?:{_NAMES})s?\b",
    re.IGNORECASE,
)


def _apart(part: str) -> list[str]:
    """`2 baths kitchen washer` as three; a part that holds any other word stays whole."""
    found = _ONE.findall(part)
    return found if "".join(found).replace(" ", "") == part.replace(" ", "") else [part]


def _fixture_key(word: str) -> str:
    name = fixture(word)
    return "bathroom_groups" if name == "bathroom group" else name.replace(" ", "_")


def _counted(part: str) -> dict[str, int] | Unread:
    """`2 1/2 baths` as two bathrooms, a toilet and a lavatory; `kitchen` as one sink."""
    match = _PART.fullmatch(part.strip())
    what = " ".join(match["what"].lower().strip(" .").split()) if match else ""
    if not match or not what:
        return Unread.of("“{part}” counts nothing: write it like 2 baths, kitchen, washer", part=part.strip())
    count = int(match["whole"] or 0) or (_COUNT_WORDS[match["word"].lower()] if match["word"] else 0)
    half = bool(match["half"] or match["only_half"])
    if what in _HALF_BATHS or (what in _BATHS and half):
        halves = 1 if half else max(count, 1)
        return {"toilet": halves, "lavatory": halves} | ({"bathroom_groups": count} if half and count else {})
    what = "bathroom group" if what in _BATHS else _MORE_WORDS.get(what.removesuffix("s"), _MORE_WORDS.get(what, what))
    if not is_fixture(what):
        near = nearest(what, (*UNITS, *OTHER_WORDS, *_MORE_WORDS, "half bath"))
        return Unread.of("“{what}” is no fixture known here", offer=f"{count or 1} {near}" if near else "", what=what)
    return {_fixture_key(what): count if match["whole"] else count or 1}


def counted_fixtures(answer: str) -> dict[str, int] | Unread:
    """
    >>> counted_fixtures("2 1/2 baths, kitchen and a washer")
    {'toilet': 1, 'lavatory': 1, 'bathroom_groups': 2, 'kitchen_sink': 1, 'clothes_washer': 1}
    >>> counted_fixtures("2 baths kitchen washer")
    {'bathroom_groups': 2, 'kitchen_sink': 1, 'clothes_washer': 1}
    """
    found: dict[str, int] = {}
    said = (part.strip() for part in re.split(r"[,;+&]|\band\b", plain_marks(answer)))
    parts = [one for part in said if part for one in _apart(part)]
    for number, part in enumerate(parts):
        counts = _counted(part)
        if isinstance(counts, Unread):
            whole = ", ".join([*parts[:number], counts.offer, *parts[number + 1 :]])
            return Unread(counts.wrong, " ".join(whole.split()) if counts.offer else "")
        for key, count in counts.items():
            found[key] = found.get(key, 0) + count
    return found or Unread.of("nothing is counted there: write it like 2 baths, kitchen, washer")


def fixtures_said(counts: Mapping[str, Any]) -> str:
    return ", ".join(f"{count} {word.replace('_', ' ')}" for word, count in counts.items())


def fixtures(answer: str, key: str, known: Known) -> Got | Unread:
    counts = counted_fixtures(answer)
    return counts if isinstance(counts, Unread) else Got({key: counts}, fixtures_said(counts))


def house_fixtures(answer: str, key: str, known: Known) -> Got | Unread:
    """The fixtures, and how many bathrooms they make."""
    got = fixtures(answer, key, known)
    if isinstance(got, Unread):
        return got
    counts = got.values[key]
    baths = counts.get("bathroom_groups", 0)
    baths += max(counts.get("toilet", 0), 0)
    return Got({key: counts, "bathrooms": baths or None}, got.said)
