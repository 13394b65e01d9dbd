"""What can be wrong with a line of a log, and how each place word is written."""

import re

from estimator.fieldnotes import heading
from estimator.fieldnotes.drafts import shown
from estimator.fieldnotes.lexicon import lexicon
from estimator.fieldnotes.nearest import nearest
from estimator.fieldnotes.things import Thing
from estimator.model.line import FINDING_WORDS
from estimator.model.problem import error, question
from estimator.model.say import Say

NO_PASS = error(
    "log/no-pass",
    "there are readings before any pass is named.",
    "Begin with a heading such as `pass front cleanout to house, riser 28in`.",
    "Without its access, riser and direction a reading has no place.",
)
ASKED = question(
    "log/asked",
    "“{text}”: {question}",
    "{write}",
    "A line that may mean more than one thing is asked back; its stretch has no firm price until it is answered.",
)
GAS_ASKED = question(
    "log/asked-utility",
    "“{text}”: {question}",
    "{write} Until then treat it as gas: nothing is cut, jetted or pulled there.",
    "A gas line through a drain kills; whatever may be one is never guessed.",
)
NOTHING_READ = question(
    "log/nothing-read",
    "no line of this log has a footage, so nothing of the drain is known to be inspected.",
    "Write the footage in front of each line, such as `18.5 hole 3in soil seen`.",
    "A report of a clean line needs footage that was seen.",
)
WHAT = Say.of("what is there?")


def how_much(word: str) -> Say:
    """Return the question for a finding without its amount."""
    return Say.of("{word}: how much? such as {word} 30%, {word} 2in, light, moderate or severe?", word=word)


def more_than_whole(percent: float) -> Say:
    """Return the question for more than the whole pipe."""
    return Say.of("{percent} percent is more than the whole pipe; how much?", percent=shown(percent))


PROBLEMS = (NO_PASS, ASKED, GAS_ASKED, NOTHING_READ, *heading.PROBLEMS)

EXAMPLES: dict[str, str] = {
    "pipe": "pipe clay", "size": "size 4in", "soil": "soil firm clay", "under": "under cabinets",
    "room": "room kitchen", "ground": "ground 18in below slab", "beam": "beam 24in deep 12in wide",
    "branch": "branch 3in left live", "depth": "depth 3.4ft from lawn", "invert": "invert 2.6ft below slab",
    "level": "level 31.5in below slab", "pothole": "pothole 3.1ft from lawn", "beside": "beside 14ft",
    "clear": "clear 20ft", "edge": "edge 4ft away", "crossing": "crossing gas 18in above",
    "footing": "footing 3ft away 18in deep", "water table": "water table 6ft",
}  # fmt: skip


_OWN_CABLE = re.compile(r"\bcable (?:end|machine)\b")


def swallowed(thing: Thing) -> bool:
    """Whether words that were taken whole hold a finding with its amount, such as `room kitchen hole 2in`, or `soil seen` misspelt."""
    taken = " ".join(str(thing.values[slot]) for slot in ("choice", "name") if slot in thing.values)
    if thing.word.word == "soil" and (_like_seen(taken) or re.search(r"\d|\b(?:in|pipe)\b", taken)):
        return True
    if any(
        {"danger", "utility"} & lexicon().means((word,)).keys()
        for word in re.findall(r"[a-z]+", _OWN_CABLE.sub("", taken.lower()))
    ):
        return thing.word.word not in ("crossing", "utility", "cleaned")
    if thing.word.word in ("end", "stop") and re.search(r"\d *(?:%|pct|percent|in\b|\")", taken):
        return True
    return re.search(rf"\b(?:{'|'.join(FINDING_WORDS)})\b.*\d", taken) is not None


_CLOCK = re.compile(r"\bat \d{1,2}\b", re.IGNORECASE)


def _like_seen(taken: str) -> bool:
    """A soil is no `sene`, and stands at no clock.

    >>> _like_seen("sene at 5-7"), _like_seen("firm clay"), _like_seen("sand")
    (True, False, False)
    """
    return bool(_CLOCK.search(taken)) or bool(nearest(taken.partition(" ")[0].lower(), ("seen",)))
