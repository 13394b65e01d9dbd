"""Step 2 of a log line: what and how much. Text after the reading comes in; Things with their slots filled go out."""

import re
from dataclasses import dataclass, field
from typing import Any

from estimator.fieldnotes.slots import ALWAYS, LEGS, READERS, Found, canonical, phrase
from estimator.fieldnotes.words import BY_NAME, FIXTURE_ROOMS, MATERIALS, PLURALS, WHOSE_ROOM, Word
from estimator.model.line import ZONES


@dataclass(slots=True)
class Thing:
    """One word of a line with its slots; `bad` are pieces nobody understood, as (text, position)."""

    word: Word
    at: int
    values: dict[str, Any] = field(default_factory=dict)
    bad: list[tuple[str, int]] = field(default_factory=list)
    amount: tuple[int, int] | None = None  # where its last slot stands, when that was an amount after a comma

    def add(self, slot: str, value: Any) -> None:
        if slot in ("lengths", "ties", "signs"):
            self.values[slot] = (*self.values.get(slot, ()), value)
        else:
            self.values[slot] = value


_THING = phrase((*BY_NAME, *PLURALS))
_MATERIAL = phrase(MATERIALS)
_ROOM = phrase(FIXTURE_ROOMS).pattern
_ROOM_NAME = re.compile(rf"(?:(?:{'|'.join(WHOSE_ROOM)})\s+)?{_ROOM}(?:\s+{_ROOM})?", re.IGNORECASE)
_UNDER_ZONE = re.compile(rf"under\s+(?:the\s+)?({'|'.join(ZONES)})(?![\w'])", re.IGNORECASE)
_LEG_FIRST = re.compile(rf"\s*({'|'.join(LEGS)})\s+(?=[A-Za-z])", re.IGNORECASE)
_FILLER = re.compile(r"[\s]+|,|:")
_PIECE = re.compile(r"[^\s,]+")
_FREE = re.compile(
    r"[^,]+?(?=\s*(?:,|$|\s{3,}|\bphoto\s+\d|\bvideo\s+\d|\bcalled\b|\bloc\b|\bsuspected\b|\?))", re.IGNORECASE
)


def read_thing_word(text: str, at: int) -> tuple[Word, int] | None:
    """The word that begins here; a material alone means pipe, and `under drive` the zone drive."""
    if match := _UNDER_ZONE.match(text, at):
        return BY_NAME[match.group(1).lower()], match.end()
    if match := _THING.match(text, at):
        name = match.group().lower()
        return BY_NAME[PLURALS.get(name, name)], match.end()
    return (BY_NAME["pipe"], at) if _MATERIAL.match(text, at) else None


def _slot(thing: Thing, text: str, at: int, names: frozenset[str]) -> Found | None:
    for name, reader in READERS:
        if name in thing.word.slots or (name == "choice" and thing.word.choices):
            filled = name in thing.values and name not in ("lengths", "signs")
            found = None if filled else reader(thing.word, text, at)
            if found:
                return found
    for reader in ALWAYS:
        found = reader(thing.word, text, at)
        if found and not (found[0] == "leg" and thing.word.kind == "place"):  # a place neither starts nor goes on
            return found
    known = _known_name(text, at, names) if thing.word.kind == "place" else None
    return known or _room_name(thing, text, at)


def _known_name(text: str, at: int, names: frozenset[str]) -> Found | None:
    match = phrase(tuple(names)).match(text, at) if names else None
    return ("name", match.group(), match.end()) if match else None


def _room_name(thing: Thing, text: str, at: int) -> Found | None:
    """`branch kitchen left` is the branch called kitchen, as `branch left called kitchen` is."""
    match = _ROOM_NAME.match(text, at) if thing.word.word == "branch" and "name" not in thing.values else None
    return ("name", match.group().lower(), match.end()) if match else None


def _free_text(thing: Thing, text: str, at: int, names: frozenset[str]) -> int | None:
    """Words up to the next comma, for a word that takes any: what an end reached, a room, a soil."""
    slot = "name" if thing.word.word == "room" else "choice"
    match = _FREE.match(text, at)
    if not thing.word.free or slot in thing.values or not match or not match.group().strip():
        return None
    if any(
        name in thing.values and reader(thing.word, text, at) for name, reader in READERS if name in thing.word.slots
    ):
        return None  # `cleanout left left slab`: a slot said twice is no place
    words = match.group().strip()
    if thing.word.word in ("end", "access", "cleanout"):
        for name in sorted(names, key=len, reverse=True):
            if words.lower().endswith(name.lower()):
                thing.values["name"] = name
                words = words[: len(words) - len(name)].strip()
                break
    if words:
        thing.values[slot] = words
    return match.end()


def read_things(
    text: str, at: int, names: frozenset[str], begun: list[Thing] | None = None
) -> tuple[list[Thing], list[tuple[str, int]]]:
    """All things of a line from position `at` on, and pieces that stand before any word. `begun` is already named."""
    things: list[Thing] = list(begun or ())
    stray: list[tuple[str, int]] = []
    early_leg = None if things else _LEG_FIRST.match(text, at)  # `24 still sag` as well as `24 sag still`
    at = early_leg.end() if early_leg else at
    while at < len(text):
        if filler := _FILLER.match(text, at):
            at = filler.end()
            continue
        at = _step(text, at, things, stray, names)
    if early_leg and things and things[0].word.kind != "place":
        things[0].values.setdefault("leg", LEGS[early_leg.group(1).lower()])
    return things, stray


def _step(text: str, at: int, things: list[Thing], stray: list[tuple[str, int]], names: frozenset[str]) -> int:
    current = things[-1] if things else None
    after_comma = text[:at].rstrip().endswith(",")
    if current and (found := _slot(current, text, at, names)):
        current.add(found[0], found[1])
        current.amount = (at, found[2]) if after_comma and found[0] in ("size", "percent") else None
        return max(found[2], at + 1)
    begins = read_thing_word(text, at)
    takes_words = current is not None and current.word.free and not ({"choice", "name"} & set(current.values))
    if begins and current and current.amount and not text[current.amount[1] : at].strip():
        current.bad.append((text[slice(*current.amount)], current.amount[0]))  # `crack, 2in hole`: whose are the 2 in?
        current.amount = None
    if begins and not (takes_words and not after_comma and begins[0].word != "loc"):
        things.append(Thing(begins[0], at))
        return begins[1] if begins[1] > at else _material(things[-1], text, at)
    if current and (end := _free_text(current, text, at, names)):
        return end
    piece = _PIECE.match(text, at)
    end = piece.end() if piece else at + 1
    (current.bad if current else stray).append((text[at:end], at))
    return end


def _material(thing: Thing, text: str, at: int) -> int:
    match = _MATERIAL.match(text, at)
    assert match is not None  # read_thing_word saw it
    thing.values["choice"] = canonical(match.group(), MATERIALS)
    return match.end()
