"""The table of log words: what each means and which slots may follow it. One row a word; nothing else knows them."""

from typing import Literal

from estimator.model.frozen import Frozen
from estimator.model.lengths import Unit
from estimator.model.line import FINDING_WORDS, SIGNS, ZONES

Kind = Literal["zone", "holds", "place", "finding"]

MATERIALS: tuple[str, ...] = (
    "cast iron", "clay", "PVC SDR 35", "PVC SDR 26", "PVC", "ABS", "fiber", "concrete", "asbestos cement",
    "galvanized", "lead", "copper", "HDPE", "steel", "liner", "unknown",
)  # fmt: skip
SURFACES: tuple[str, ...] = (
    "lawn", "bed", "bare ground", "dirt", "gravel", "concrete", "asphalt", "pavers", "brick", "tile", "wood", "vinyl",
    "carpet", "laminate", "stone", "slab top", "slab", "floor", "drive", "walk", "street", "ground", "crawl floor",
)  # fmt: skip
OVER_IT: tuple[str, ...] = ("cabinets", "tub", "shower", "wall", "stairs", "fireplace", "tree", "deck", "porch", "pool")
UTILITIES: tuple[str, ...] = (
    "gas", "water", "power", "phone", "cable", "fiber optic", "irrigation", "storm drain", "sewer", "conduit", "unknown",
)  # fmt: skip
CLEANING: tuple[str, ...] = ("jet", "cutter", "cable machine", "descaled", "vacuum")
LABELS: tuple[str, ...] = ("wide", "deep", "thick", "away", "above", "below")
SIDES: tuple[str, ...] = ("left", "right", "up", "down")
GRADE_WORDS: tuple[str, ...] = ("light", "moderate", "severe")
EXTRA_SIGNS: tuple[str, ...] = ("encased", "hung", "buried", "mud", "thin", "two-way", "dry", "capped")
FIXTURE_ROOMS: tuple[str, ...] = (
    "bath", "bathroom", "toilet", "kitchen", "laundry", "washer", "tub", "shower", "sink", "lav", "powder room",
)  # fmt: skip
"""What a branch is most often called by: a word of these right after `branch` is its name."""
WHOSE_ROOM: tuple[str, ...] = ("hall", "master", "guest", "front", "back", "half", "kids", "kid's", "kids'")
ALL_SIGNS: tuple[str, ...] = (*SIGNS, *EXTRA_SIGNS)


class Word(Frozen):
    """A log word. `bare` is the unit of a number without one ("" refuses it); `free` takes words up to the next comma;
    `needs` names slots of which at least one must be filled."""

    word: str
    kind: Kind
    slots: frozenset[str]
    choices: tuple[str, ...] = ()
    bare: Unit = ""
    needs: tuple[str, ...] = ()
    free: bool = False


def _word(word: str, kind: Kind, slots: str, **more: object) -> Word:
    return Word(word, kind, frozenset(slots.split()), **more)  # type: ignore[arg-type]


_AMOUNT = "percent size count grade_word clock direction signs"
_MUST_SAY_HOW_MUCH = ("roots", "offset", "sag", "oval", "grease")
_HOW_MUCH = ("percent", "size", "grade_word", "signs", "count")

_PLACES: tuple[Word, ...] = (
    _word("pipe", "holds", "choice signs", choices=MATERIALS, needs=("choice",)),
    _word("size", "holds", "size", bare="in", needs=("size",)),
    _word("soil", "holds", "", free=True, needs=("choice",)),
    _word("under", "holds", "", choices=OVER_IT, free=True, needs=("choice",)),
    _word("room", "holds", "", free=True, needs=("name",)),
    _word("ground", "holds", "depth", bare="ft", needs=("depth",)),
    _word("crawl space", "holds", "lengths signs", bare="ft"),
    _word("access", "place", "choice signs", free=True),
    _word("cleanout", "place", "signs side", free=True),
    _word("beam", "place", "lengths through", needs=("lengths",)),
    _word("branch", "place", "size side live proven reach lengths clock signs", bare="in", needs=("size",)),
    _word("bend", "place", "degrees side choice", choices=("long sweep", "short", "sweep")),
    _word("joint", "place", "every size percent direction signs count", bare=""),
    _word("depth", "place", "depth to", bare="ft", needs=("depth",)),
    _word("invert", "place", "depth", bare="ft", needs=("depth",)),
    _word("level", "place", "depth", bare="ft", needs=("depth",)),
    _word("loc", "place", "depth to tie flag", bare="ft"),
    _word("pothole", "place", "depth to tie flag", bare="ft", needs=("depth",)),
    _word("beside", "place", "lengths", bare="ft", needs=("lengths",)),
    _word("clear", "place", "lengths", bare="ft", needs=("lengths",)),
    _word("edge", "place", "lengths", bare="ft", needs=("lengths",)),
    _word("tree", "place", "size lengths", bare="in"),
    _word("crossing", "place", "choice lengths", choices=UTILITIES, needs=("choice",)),
    _word("footing", "place", "lengths", needs=("lengths",)),
    _word("property line", "place", ""),
    _word("water table", "place", "depth", bare="ft", needs=("depth",)),
    _word("end", "place", "", free=True),
    _word("stop", "place", "", free=True),
    _word("cleaned", "place", "", choices=CLEANING, free=True),
)
_ZONE_WORDS: tuple[Word, ...] = tuple(
    _word(
        zone,
        "zone",
        {"crawl": "choice signs lengths", "slab": "choice edge"}.get(zone, "choice"),
        choices=SURFACES,
        bare="ft",
    )
    for zone in ZONES
)
_FINDINGS: tuple[Word, ...] = tuple(
    _word(
        kind,
        "finding",
        _AMOUNT,
        needs=_HOW_MUCH if kind in _MUST_SAY_HOW_MUCH else (),
    )
    for kind in FINDING_WORDS
)

WORDS: tuple[Word, ...] = (*_ZONE_WORDS, *_PLACES, *_FINDINGS)
BY_NAME: dict[str, Word] = {word.word: word for word in WORDS}


def standard_word(meaning: str) -> str:
    """Return the word that a meaning of the lexicon begins with.

    >>> standard_word("reverse fall flat"), standard_word("sag, lens under")
    ('reverse fall', 'sag')
    """
    text = meaning.replace(",", " ").split()
    return next((w for w in (" ".join(text[:2]), text[0]) if w in BY_NAME), text[0])


PLURALS: dict[str, str] = {
    "joints": "joint", "cracks": "crack", "holes": "hole", "gaps": "gap", "offsets": "offset", "beams": "beam",
    "branches": "branch", "bends": "bend", "sags": "sag", "leaks": "leak", "root": "roots",
}  # fmt: skip
"""Words that mean the same with an s."""
