"""A job and the firm's tables in; what it says of add-ons that cannot be sold as it is said, out."""

import re
from collections.abc import Iterator

from estimator.model.job import Job
from estimator.model.money import cents
from estimator.model.problem import Kind, Place, Problem, error, warning
from estimator.model.say import Say
from estimator.model.wanted import WantedAddOn
from estimator.tables.cell_problems import near_or_all
from estimator.tables.tables import Tables

JOB_FILE = "the job file"
UNKNOWN_ADD_ON = error(
    "job/add-on",
    "nobody knows the add-on “{code}” that {asked}.",
    "{near} Or give it words and a price in an [[add_on]] of its own.",
    "What a homeowner chose must be what she is charged for.",
)
ADD_ON_WORDS = error(
    "job/add-on-words",
    "[[add_on]] {code} stands in no table, and has {lacks}.",
    'Give it text = "…" and price = …, or write a code of the table add_ons: {codes}.',
    "An add-on of the estimator's own is sold in his words and at his price.",
)
ADD_ON_CODE = error(
    "job/add-on-code",
    "an [[add_on]] cannot be called “{code}”.",
    "Give it a short name of letters, digits, spaces and hyphens, such as bath-line; not none.",
    "By this name the homeowner's choice is typed: --with bath-line.",
)
ADD_ON_TWICE = error(
    "job/add-on-twice",
    "[[add_on]] {code} stands twice for the same option.",
    "Keep one, or give each its options = [...].",
    "Of two prices for one thing the second would be lost in silence.",
)
ADD_ON_SPANISH = warning(
    "job/add-on-spanish",
    "[[add_on]] {code} has no text_es, and the quote goes out in Spanish too.",
    'Give it text_es = "…"; until then the Spanish quote shows the English words.',
    "What somebody pays for must be in a language she reads.",
)
PROBLEMS: tuple[Kind, ...] = (UNKNOWN_ADD_ON, ADD_ON_WORDS, ADD_ON_CODE, ADD_ON_TWICE, ADD_ON_SPANISH)
SHORT_NAME = re.compile(r"(?!none$)\w[\w -]*", re.IGNORECASE)


LACKS = {
    (False, False): Say.of("no text and no price"),
    (False, True): Say.of("no text"),
    (True, False): Say.of("no price"),
}
"""By whether there is a text and a price."""


def against_add_ons(job: Job, tables: Tables) -> Iterator[Problem]:
    """Names nobody knows, add-ons of the estimator's own without words or a price, two for one option."""
    listed = [row.code for row in tables.add_ons]
    for number, word in enumerate(job.add_ons):
        yield from _word(word, job, listed)
        if any(_for_one_option(word, before) for before in job.add_ons[:number]):
            yield ADD_ON_TWICE(_place(word), code=word.code)
    known = list(dict.fromkeys((*listed, *(word.code for word in job.add_ons))))
    for code in job.chosen_add_ons:
        bare = code.rpartition(":")[2].strip()
        if bare.lower() not in {name.lower() for name in known}:
            place = Place("--with, or [wishes] add_ons in the job file")
            yield UNKNOWN_ADD_ON(place, code=code, asked=Say.of("was chosen"), near=near_or_all(bare, known))


def _word(word: WantedAddOn, job: Job, listed: list[str]) -> Iterator[Problem]:
    own = word.code not in listed
    lacks = LACKS.get((bool(word.text), bool(cents(word.price or 0))))
    if not SHORT_NAME.fullmatch(word.code):
        yield ADD_ON_CODE(_place(word), code=word.code)
    elif own and word.quantity == 0:
        yield UNKNOWN_ADD_ON(
            _place(word), code=word.code, asked=Say.of("is left out"), near=near_or_all(word.code, listed)
        )
    elif own and lacks:
        yield ADD_ON_WORDS(_place(word), code=word.code, lacks=lacks, codes=", ".join(listed))
    elif word.text and not word.text_es and any(language.startswith("es") for language in job.languages):
        yield ADD_ON_SPANISH(_place(word), code=word.code)


def _for_one_option(word: WantedAddOn, other: WantedAddOn) -> bool:
    """Both speak of one add-on, and of some option both."""
    mine, theirs = ({option.lower() for option in w.options} for w in (word, other))
    return word.code == other.code and (not mine or not theirs or bool(mine & theirs))


def _place(word: WantedAddOn) -> Place:
    return Place(JOB_FILE, table="add_on", cell=word.code)
