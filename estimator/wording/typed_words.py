"""What people typed in, the same in the reader's language out where its words are known, else as typed and in quotes.

Places are made of few words in many ways: `kitchen wye`, `at the hall bath branch`, `kitchen along the east wall`.
"""

import re
from collections.abc import Callable

from estimator.model.say import Say
from estimator.wording import numbers
from estimator.wording.places import WALLS
from estimator.wording.plain import ROOMS
from estimator.wording.say import NOTES_LANGUAGE, known_words, say

OF_A_ROOM: dict[str, Say] = {
    "wye": Say.of("the wye of the {room}"),
    "branch": Say.of("the side drain of the {room}"),
    "toilet": Say.of("the toilet of the {room}"),
    "shower": Say.of("the shower of the {room}"),
    "tub": Say.of("the tub of the {room}"),
    "sink": Say.of("the sink of the {room}"),
    "cleanout": Say.of("the cleanout of the {room}"),
    "wall cleanout": Say.of("the cleanout in the wall of the {room}"),
}
"""What a room has, by the word that follows the room's name."""
BEFORE = re.compile(r"^(?:(?:at|in|by|from|to) )?(?:the )?(?:its )?")
THING = re.compile(rf"^(?P<room>.+?) (?P<thing>{'|'.join(sorted(OF_A_ROOM, key=len, reverse=True))})$")
ALONG = re.compile(r"^(?P<what>.+) along the (?P<wall>\w+ wall)$")
UNDER_SLAB = re.compile(r"^(?P<what>.+) under the slab$")


def as_typed(text: str, language: str) -> str:
    """Each part between commas in the language of the reader; what is not known stands as typed, in quotes.

    >>> as_typed("front cleanout, house side", "es_US"), as_typed("Mrs. Den's plug", "es_US")
    ('el registro del frente, hacia la casa', "“Mrs. Den's plug”")
    >>> as_typed("at the kitchen wye", "en_US")
    'at the kitchen wye'
    """
    if numbers.family(language) == NOTES_LANGUAGE or not text:
        return text
    parts = [text] if text in known_words() else text.split(", ")
    found = [known(part) for part in parts]
    if not any(found):
        return f"“{text}”"
    said = (say(what, language) if what else f"“{part}”" for part, what in zip(parts, found, strict=True))
    return ", ".join(said)


def known(text: str) -> Say | None:
    """The sentence for a place of known words; None where one of them is not known."""
    return _known(text) or _known(BEFORE.sub("", text))


def _known(text: str) -> Say | None:
    if text in known_words():
        return known_words()[text]
    return next((found for way in WAYS if (found := way(text))), None)


def _fixture_in_room(text: str) -> Say | None:
    match = THING.match(text)
    if match and match["room"] in ROOMS:
        return Say.of(OF_A_ROOM[match["thing"]].text, room=ROOMS[match["room"]])
    return None


def _along(text: str) -> Say | None:
    match = ALONG.match(text)
    if match is None or match["wall"] not in WALLS:
        return None
    what = ROOMS.get(match["what"]) or _known(match["what"])
    return Say.of("{what}, along {wall}", what=what, wall=WALLS[match["wall"]]) if what else None


def _under_slab(text: str) -> Say | None:
    match = UNDER_SLAB.match(text)
    what = match and _known(match["what"])
    return Say.of("{what}, under the slab", what=what) if what else None


WAYS: tuple[Callable[[str], Say | None], ...] = (_fixture_in_room, _along, _under_slab)
