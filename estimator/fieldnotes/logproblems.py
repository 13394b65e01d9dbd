"""What can be wrong with a line of a log, and how each place word is written."""

import re

from estimator.fieldnotes import heading, where
from estimator.fieldnotes.kinds import error, nearest, question
from estimator.fieldnotes.things import Thing
from estimator.fieldnotes.words import ALL_SIGNS, BY_NAME, MATERIALS, PLURALS, SURFACES
from estimator.model.line import FINDING_WORDS
from estimator.model.problem import Place, Problem

NO_PASS = error(
    "log/no-pass",
    "there are readings before any pass is named.",
    "Begin with a heading such as `pass front cleanout to house, riser 28in`.",
    "Without its access, riser and direction a reading has no place.",
)
UNKNOWN_WORD = error(
    "log/word",
    "“{text}” is not a word this program knows.{nearest}",
    "Use a word of the log table; a remark goes after ; and your own shortening goes under [words].",
)
NOTHING_SAID = error("log/nothing", "the reading {text} says nothing.", "Write what is there, or take the line out.")
STRAY = error(
    "log/order", "“{text}” stands before any word.", "Write the word first, then how much: `hole 2in`, `roots 30%`."
)
BARE_NUMBER = error(
    "log/bare-number",
    "“{text}” after {word} has no unit.",
    "Write a percent of the bore (40%), inches (2in), a clock (at 5-7), or put a remark after ;",
)
AMOUNT = error(
    "log/amount",
    "“{text}” gives no amount this program knows.",
    "Write a percent of the bore ({word} 30%), inches ({word} 2in) or one of light, moderate, severe.",
)
SWALLOWED = error(
    "log/swallowed",
    "“{text}” would all be one name, with {word} in it.",
    "Write a comma before {word}, or put the rest after ; if it is a remark.",
    "A finding hidden in a name would never be repaired.",
)
NEAR_SIGN = error(
    "log/near-sign",
    "“{text}” would be a soil of that name; was “soil seen” meant?",
    "Write `soil seen`; or the soil's own name after a comma, such as `hole 3in, soil firm clay`.",
    "A hole through which soil is seen loses the ground over the pipe.",
)
NEEDS = error("log/needs", "“{text}” leaves out what {word} needs.", "Write it like `{example}`.")
SAME_AS_NOTHING = error("log/same", "`same` has no reading before it.", "Write the reading.")
NO_READING = question(
    "log/no-reading",
    "“{text}” begins with the word {word} but has no reading, so it is kept as a note.",
    "Write the reel reading in front, or begin the line with # if it is a note.",
)
PROBLEMS = (
    NO_PASS, UNKNOWN_WORD, NOTHING_SAID, STRAY, BARE_NUMBER, AMOUNT, SWALLOWED, NEAR_SIGN, NEEDS, SAME_AS_NOTHING, NO_READING,
    *heading.PROBLEMS, *where.PROBLEMS,
)  # fmt: skip

EXAMPLES: dict[str, str] = {
    "pipe": "pipe clay", "size": "size 4in", "soil": "soil firm clay", "under": "under cabinets",
    "room": "room kitchen", "ground": "ground 18in below slab", "beam": "beam 24in deep 12in wide",
    "branch": "branch 3in left live", "depth": "depth 3.4ft from lawn", "invert": "invert 2.6ft below slab",
    "level": "level 31.5in below slab", "pothole": "pothole 3.1ft from lawn", "beside": "beside 14ft",
    "clear": "clear 20ft", "edge": "edge 4ft away", "crossing": "crossing gas 18in above",
    "footing": "footing 3ft away 18in deep", "water table": "water table 6ft",
}  # fmt: skip

TWO_MEANINGS: dict[str, str] = {"broken": " Say “crack” where the pieces still lie in their place, or “collapse”."}
"""Words that say how a thing looks and leave open what it is: what to write is never guessed by likeness."""


def near_word(text: str) -> str:
    """What a word nobody knows may have meant, to hang on a sentence; nothing where nothing is near."""
    if " " in text:  # several words are likened to signs of several, and narrowly: `no roots` is no `no flow`
        from difflib import get_close_matches

        signs = [sign for sign in ALL_SIGNS if " " in sign]
        return next((f" Did you mean “{sign}”?" for sign in get_close_matches(text, signs, n=1, cutoff=0.8)), "")
    return TWO_MEANINGS.get(text) or nearest(text, (*BY_NAME, *PLURALS, *ALL_SIGNS, *SURFACES, *MATERIALS))


def swallowed(thing: Thing, place: Place) -> list[Problem]:
    """A finding with its amount inside words that were taken whole, such as `room kitchen hole 2in`."""
    taken = " ".join(str(thing.values[slot]) for slot in ("choice", "name") if slot in thing.values)
    if thing.word.word == "soil" and _like_seen(taken):
        return [NEAR_SIGN(place, text=f"soil {taken}")]
    found = re.search(rf"\b({'|'.join(FINDING_WORDS)})\b.*\d", taken)
    return [SWALLOWED(place, text=taken, word=found[1])] if found else []


_CLOCK = re.compile(r"\bat \d{1,2}\b", re.IGNORECASE)


def _like_seen(taken: str) -> bool:
    """A soil is no `sene`, and stands at no clock.

    >>> _like_seen("sene at 5-7"), _like_seen("firm clay"), _like_seen("sand")
    (True, False, False)
    """
    return bool(_CLOCK.search(taken)) or bool(nearest(taken.partition(" ")[0].lower(), ("seen",)))


def together(stray: list[tuple[str, int]], text: str) -> list[str]:
    """The first pieces nobody understood, as far as they stand side by side and are words."""
    words: list[str] = []
    end = stray[0][1]
    for piece, at in stray:
        if text[end:at].strip() or piece[:1].isdigit():
            break
        words.append(piece)
        end = at + len(piece)
    return words
