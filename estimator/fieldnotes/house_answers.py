"""Answers about the house come in (floor, soil, place, lifting); values for the job file go out."""

import re
from collections.abc import Mapping
from difflib import SequenceMatcher

from estimator.fieldnotes.answers import NO, YES, Got, Known, Unread, chosen, one_of, text, words_for, yes_no
from estimator.fieldnotes.day_answers import read_day
from estimator.model.gas import GAS_FIRST, fuel_gas
from estimator.model.job import Sign
from estimator.model.say import Say

FLOORS = ("slab", "post-tensioned slab", "slab, tendons unknown", "crawl space", "basement")
_OTHER_FLOORS = {
    "pt": "post-tensioned slab", "pt slab": "post-tensioned slab", "post tension": "post-tensioned slab",
    "post tensioned": "post-tensioned slab", "cables": "post-tensioned slab", "tendons": "post-tensioned slab",
    "tendons unknown": "slab, tendons unknown", "slab with tendons unknown": "slab, tendons unknown",
    "slab tendons unknown": "slab, tendons unknown", "slab (proven to have no tendons)": "slab",
    "slab proven to have no tendons": "slab", "slab?": "slab, tendons unknown", "unknown": "slab, tendons unknown",
    "not sure": "slab, tendons unknown", "slab not sure": "slab, tendons unknown", "crawl": "crawl space",
    "pier and beam": "crawl space", "concrete": "slab, tendons unknown",
}  # fmt: skip
_floor = one_of(
    FLOORS,
    _OTHER_FLOORS,
    {"slab": Say.of("slab without steel tendons, which must be proven; if nobody knows, write `tendons unknown`")},
)
MISSPELT, MAY_BE = 0.7, 0.6  # of 1: `frim` is like firm; `sift` may be soft or stiff, `fat` is like neither
LANGUAGES: Mapping[str, list[str]] = {
    "English": ["en_US"], "Spanish": ["es_US"], "both": ["en_US", "es_US"],
}  # fmt: skip


def floor(answer: str, key: str, known: Known) -> Got | Unread:
    """A floor. After a slip of the finger a slab without tendons is never offered: Enter would say what nobody proved."""
    got = _floor(answer, key, known)
    return Unread(got.wrong) if isinstance(got, Unread) and got.offer == "slab" else got


def insurer(answer: str, key: str, known: Known) -> Got | Unread:
    """A name or a number; a no is no insurer of that name, and a yes does not name one."""
    low = answer.lower().strip(" .!")
    if low in YES:
        return Unread.of("what is it called? Write its name, or Enter for none")
    gone = {key: None, "policy": None, "claim": None, "adjuster": None} if key == "insurer" else {key: None}
    return Got(gone) if low in NO else text(answer, key, known)


_DOLLARS = re.compile(
    r"\$?\s*(\d{1,4}(?:\.\d{1,2})?)\s*(?:\$|dollars?)?\s*(?:/|a|per|each)?\s*(?:sq\.?\s*ft\.?|sf|foot|square foot)?",
    re.I | re.A,
)


def floor_price(answer: str, key: str, known: Known) -> Got | Unread:
    """`14`, `$14.50`, `14 a sq ft`: dollars a square foot."""
    found = _DOLLARS.fullmatch(answer.strip())
    if not found:
        return Unread.of("“{answer}” is no price of a square foot: write it like 14 or 14.50", answer=answer)
    return Got({key: float(found[1])}, Say.typed("${found} a square foot", found=f"{float(found[1]):.2f}"))


def trial(answer: str, key: str, known: Known) -> Got | Unread:
    """Whether this is a trial; a no at an invented place is told what it leads to."""
    got = yes_no(answer, key, known)
    if isinstance(got, Unread) or got.values.get(key):
        return got
    return Got(
        got.values, Say.of("then no quote is made here: that place is invented; go jurisdiction and name the real one")
    )


def language(answer: str, key: str, known: Known) -> Got | Unread:
    others = {"en": "English", "eng": "English", "span": "Spanish", "en_us": "English", "es": "Spanish", "es_us": "Spanish", "español": "Spanish",
              "espanol": "Spanish", "english and spanish": "both", "2": "both"}  # fmt: skip
    word = chosen(answer, tuple(LANGUAGES), others)
    return word if isinstance(word, Unread) else Got({key: LANGUAGES[word]}, word)


def soil(answer: str, key: str, known: Known) -> Got | Unread:
    """A soil of the tables. `clay` alone is asked again: firm and soft clay stand differently."""
    if not known.soils:
        return text(answer, key, known)  # no tables to look it up in
    alike = [s for s in known.soils if s.endswith(" " + answer.lower().strip(" ."))]
    if len(alike) > 1 and answer.lower().strip(" .") not in known.soils:
        return Unread.of("which one: {alike}", alike=", ".join(alike))
    others = {
        k: v
        for k, v in {"dirt": "earth", "stiff clay": "firm clay"}.items()
        if v in known.soils and k not in known.soils
    }
    got = one_of(known.soils, others)(answer, key, known)
    if isinstance(got, Got):
        return got
    kind = answer.lower().strip(" .").rpartition(" ")[2]
    alike = [s for s in known.soils if s.split()[-1] == kind] or list(known.soils)
    return Unread.of(
        "“{answer}” is not known here. Which one: {alike}",
        offer=_slip_of(answer, {s: s for s in known.soils} | others),
        answer=answer,
        alike=", ".join(alike),
    )


def _slip_of(answer: str, soils: Mapping[str, str]) -> str:
    """The one soil this misspells, word by word; never a guess: `fat clay` may be soft or firm, and stands differently.

    >>> soils = {"soft clay": "soft clay", "firm clay": "firm clay"}
    >>> _slip_of("frim clay", soils), _slip_of("fat clay", soils)
    ('firm clay', '')
    """
    words = answer.lower().strip(" .").split()

    def alike(name: str) -> float:
        known = name.lower().split()
        pairs = zip(words, known, strict=False)
        return min(SequenceMatcher(None, *pair).ratio() for pair in pairs) if len(words) == len(known) else 0.0

    may_be = {soil: alike(name) for name, soil in soils.items() if words and alike(name) >= MAY_BE}
    return next((soil for soil, ratio in may_be.items() if ratio >= MISSPELT), "") if len(may_be) == 1 else ""


def own_facts(answer: str, key: str, known: Known) -> Got | Unread:
    """The firm's own facts that hold; of those not named is said that they do not. With one fact a yes or a no is enough.

    >>> from datetime import date
    >>> own_facts("steep yard", "own_facts", Known(today=date(2026, 11, 18), own_facts=("steep yard", "dogs"))).values
    {'own_facts': ['steep yard', 'not dogs']}
    """
    if not known.own_facts:
        return Unread.of("your tables have none; the setting own_facts names them")
    low = answer.lower().strip(" .!")
    if low in YES and len(known.own_facts) == 1:
        low = known.own_facts[0]
    holding = []
    for part in (part.strip() for part in low.split(",") if part.strip() and low not in NO):
        word = chosen(part, known.own_facts, {})
        if isinstance(word, Unread):
            return Unread.of(
                "“{part}” is none of your own facts: {own_facts}",
                offer=word.offer,
                part=part,
                own_facts=", ".join(known.own_facts),
            )
        holding.append(word)
    told = [fact if fact in holding else f"not {fact}" for fact in known.own_facts]
    return Got({key: told}, ", ".join(told))


def place(answer: str, key: str, known: Known) -> Got | Unread:
    """A row of the places table, by its id or by what it is called there."""
    if not known.places:
        return text(answer, key, known)
    word = chosen(answer, tuple(known.places), {called: name for name, called in known.places.items()})
    return word if isinstance(word, Unread) else Got({key: word}, known.places[word])


def foundation(answer: str, key: str, known: Known) -> Got | Unread:
    """`none`, `planned jan 2027`, `done 2024-05`: the work and the day of the lift."""
    first, _, rest = answer.strip().partition(" ")
    others = {"no": "none", "n": "none", "nothing": "none", "yes": "planned", "y": "planned", "plan": "planned",
              "coming": "planned", "lifted": "done"}  # fmt: skip
    work = chosen(first, ("none", "planned", "done"), others)
    if isinstance(work, Unread):
        return Unread.of(
            "write none, planned 2027-01 or done 2024-05",
            offer=" ".join(filter(None, (work.offer, rest))) if work.offer else "",
        )
    when = read_day(re.sub(r"^(?:for|in|on)\s+", "", rest.strip()), known.today) if rest.strip() else None
    if rest.strip() and when is None:
        return Unread.of("“{rest}” is no day: write it like {work} 2027-01", rest=rest.strip(), work=work)
    return Got({key: work, "lift_date": when}, f"{work} {when}" if when else work)


_GAS = re.compile(r"\b(?:gas|rotten eggs?|propane|mercaptan)\b", re.IGNORECASE)
GAS = (
    "if it may be fuel gas: everybody out now, no switch, no flame; from outside call 911 and the gas company. "
    "Sewer gas burns too: open windows"
)

_sign = words_for(Say.of("what was seen or smelled"))


def sign(answer: str, key: str, known: Known) -> Got | Unread:
    """What was seen, smelled or reported, in words of one's own; a smell of gas is told at once what to do."""
    got = _sign(answer, key, known)
    if isinstance(got, Unread) or not _GAS.search(answer):
        return got
    return Got(got.values, GAS_FIRST if fuel_gas(Sign(what=answer)) else GAS)
