"""An answer as people type it comes in; values for the job file, or what to write instead, go out. The plain kinds."""

import re
from collections.abc import Callable, Mapping, Sequence
from datetime import date
from difflib import get_close_matches
from typing import Any

from msgspec import field

from estimator.model.frozen import Frozen
from estimator.model.lengths import Unit, parse_length, plain_marks, show, unit_written
from estimator.model.say import Say, Typed


class Known(Frozen, kw_only=True):
    """What an answer may lean on: the day, the tables' words, the last job beside this one, this job as far as it is."""

    today: date
    soils: tuple[str, ...] = ()
    places: Mapping[str, str] = field(default_factory=dict)  # id and what it is
    own_facts: tuple[str, ...] = ()  # of the firm, which a factor or another row reads
    last: Mapping[str, Any] = field(default_factory=dict)
    number: str = ""
    data: Mapping[str, Any] = field(default_factory=dict)
    branches: tuple[str, ...] = ()  # named in this job's logs
    item: Mapping[str, Any] = field(default_factory=dict)  # what the table asked about holds so far
    insists: bool = False  # this very answer was just asked back, and is given again

    @property
    def lines(self) -> tuple[str, ...]:
        """Names of the lines given so far."""
        found = self.data.get("line", ())
        return tuple(str(line["name"]) for line in found if isinstance(line, Mapping) and line.get("name"))


class Got(Frozen):
    """Values by key (None takes the key out). `said` is what was understood, where that is not plain from the answer."""

    values: Mapping[str, Any]
    said: Say | str = ""


class Unread(Frozen):
    """What to write instead, in one line; `offer` is the nearest known answer, taken by an empty line."""

    wrong: Say
    offer: str = ""

    @classmethod
    def of(cls, text: str, offer: str = "", **words: object) -> "Unread":
        """What is wrong, with the typed words in its gaps."""
        return cls(Say.typed(text, **words), offer)


Reader = Callable[[str, str, Known], Got | Unread]
"""Takes the answer, the key it is for, and what is known."""

LONGEST = 500
YES = ("yes", "y", "yep", "yeah", "ja", "si", "sí", "true", "ok", "sure", "1")
NO = ("no", "n", "nope", "not yet", "none", "false", "never", "0", "ninguno", "ninguna", "todavía no")


def cleaned(answer: str) -> str:
    """The answer on one line without marks that cannot be printed.

    >>> cleaned("  12\\t Elm\\x00 St ")
    '12 Elm St'
    """
    return " ".join("".join(c if c.isprintable() else " " for c in answer).split())


def nearest(word: str, known: Sequence[str]) -> str:
    """The known word most like this one, or nothing.

    >>> nearest("fim clay", ("firm clay", "rock"))
    'firm clay'
    """
    lower = {k.lower(): k for k in known}
    close = get_close_matches(word.lower(), lower, n=1, cutoff=0.6)
    return lower[close[0]] if close else ""


def text(answer: str, key: str, known: Known) -> Got | Unread:
    """Words as they are; double quotes around them are taken off, so that `"list"` can be an answer too."""
    words = answer[1:-1].strip() if len(answer) > 1 and answer[0] == answer[-1] == '"' else answer
    return Got({key: words}) if words else Unread.of("that says nothing: write a few words, or press Enter to leave it")


OTHER_ANSWERS = frozenset((
    *YES, *NO, "both", "english", "spanish", "today", "yesterday", "unknown", "main", "slab", "crawl space", "basement",
    "city", "septic", "whole", "routine", "passed", "failed", "nothing", "all", "done",
))  # fmt: skip
"""What answers another question: no name of a person, and no place."""


def words_for(what: Say, none: bool = True) -> Reader:
    """Words of one's own for `what`; a no is none (or asked back), and what answers another question is asked back once.

    >>> from datetime import date
    >>> str(words_for(Say.of("an address"), none=False)("no", "site", Known(today=date(2026, 11, 18))).wrong)
    'is “no” an address? Write it; the same again keeps it'
    """

    def read(answer: str, key: str, known: Known) -> Got | Unread:
        low = answer.lower().strip(' ."!')
        if none and low in NO:
            return Got({key: None})
        if (low in OTHER_ANSWERS or not re.search(r"\w", low)) and not known.insists:
            return Unread(
                Say.of("is “{answer}” {what}? Write it; the same again keeps it", answer=Typed(answer), what=what)
            )
        return text(answer, key, known)

    return read


def yes_no(answer: str, key: str, known: Known) -> Got | Unread:
    low = answer.lower().strip(" .!")
    if low in YES or low in NO:
        return Got({key: low in YES})
    said = re.match(r"(yes|y|yeah|yep)[\s,;]|(no|nope|n)\s*[,;]", low)
    if said and not known.insists:
        return Unread(Say.of("is that {said}? One word is enough", said=Say.of("yes") if said[1] else Say.of("no")))
    near = nearest(low, ("yes", "no"))
    return Unread.of("“{answer}” is neither yes nor no", offer=near, answer=answer)


LONGEST_NUMBER = 12


def length_words(answer: str, feet: float, bare: Unit) -> str:
    """Feet and inches where they are exact to 1/16 in, else as it was written, with its unit.

    >>> length_words("6.6", 0.55, "in"), length_words("3.8 m", 12.467191601049869, "ft"), length_words("30", 2.5, "in")
    ('6.6 in', '3.8 m', '2 ft 6 in')
    """
    shown = show(feet)
    if shown.endswith("in") or (bare == "ft" and len(shown) <= LONGEST_NUMBER):
        return shown
    plain = plain_marks(answer).strip()
    return plain if unit_written(plain) else f"{plain} {bare or 'ft'}"


def length(bare: Unit) -> Reader:
    """A length; `bare` is what a number alone means."""

    def read(answer: str, key: str, known: Known) -> Got | Unread:
        plain = re.sub(r"^(?:about|abt|~)\s*", "", answer, flags=re.IGNORECASE)
        feet = parse_length(plain, bare)
        if isinstance(feet, Say):
            return Unread(Say.of("“{answer}”: {wrong}", answer=Typed(answer), wrong=feet))
        shown = length_words(plain, feet, bare)
        return Got({key: shown}, shown)

    return read


SPANISH: Mapping[str, str] = {
    "ciudad": "city", "fosa": "septic", "fosa séptica": "septic", "séptico": "septic", "losa": "slab", "sótano": "basement",
    "losa postensada": "post-tensioned slab", "losa, tendones no se sabe": "slab, tendons unknown",
    "no se sabe": "unknown", "desconocido": "unknown", "inglés": "English", "español": "Spanish", "los dos": "both",
    "ambos": "both", "entera": "whole", "completa": "whole", "aislada": "isolated", "tubo nuevo": "new pipe",
    "rutina": "routine", "antes de levantar": "before lift", "después de levantar": "after lift",
    "después de reparar": "after repair", "pasó": "passed", "paso": "passed", "no pasó": "failed", "falló": "failed", "fallida": "failed",
    "no se pudo sellar": "could not be sealed", "nada": "nothing", "ductos": "ducts", "conductos": "conduit",
    "ninguno": "none", "ninguna": "none", "planeado": "planned", "hecho": "done", "patio": "yard", "entrada": "drive",
    "banqueta": "walk", "calle": "street", "cobre debajo de la losa": "copper under slab", "por arriba": "overhead",
    "hierro": "cast iron", "hierro fundido": "cast iron", "barro": "clay", "fibra": "fiber", "plomo": "lead",
    "cobre": "copper", "acero": "steel", "galvanizado": "galvanized", "concreto": "concrete",
    "calle principal": "street main", "red de la ciudad": "city main", "roca": "rock", "arena": "sand",
    "arcilla firme": "firm clay", "arcilla blanda": "soft clay", "arcilla dura": "hard clay",
}  # fmt: skip
"""What a Spanish crew answers, for the word that stands in the file."""


def chosen(answer: str, words: Sequence[str], others: Mapping[str, str]) -> str | Unread:
    """One of the words: whole, by another name, by its beginning when only one begins so; else the nearest is offered."""
    low = answer.lower().strip(" .")
    exact = {w.lower(): w for w in words} | {o.lower(): w for o, w in others.items()}
    low = SPANISH[low] if SPANISH.get(low) in words and low not in exact else low
    if low in exact:
        return exact[low]
    begins = {w for key, w in exact.items() if key.startswith(low)} if low else set()
    if len(begins) == 1:
        return begins.pop()
    near = nearest(low, tuple(exact))
    named = {w: None for key, w in exact.items() if low and re.search(rf"\b{re.escape(low)}", key)}
    listed = "; ".join(named or words)
    return Unread.of(
        "“{answer}” is not known here. Known: {listed}", offer=exact[near] if near else "", answer=answer, listed=listed
    )


def one_of(
    words: Sequence[str], others: Mapping[str, str] | None = None, notes: Mapping[str, Say] | None = None
) -> Reader:
    """A choice; `others` are more names for the words, `notes` what is said when a word was taken."""

    def read(answer: str, key: str, known: Known) -> Got | Unread:
        word = chosen(answer, words, others or {})
        return word if isinstance(word, Unread) else Got({key: word}, (notes or {}).get(word, word))

    return read


def words_like(words: Sequence[str]) -> Reader:
    """One of the words, or words of one's own, which are asked back once."""

    def read(answer: str, key: str, known: Known) -> Got | Unread:
        word = chosen(answer, words, {})
        if isinstance(word, Unread) and not known.insists:
            return word
        return Got({key: answer if isinstance(word, Unread) else word}, "" if isinstance(word, Unread) else word)

    return read


def whole_number(least: int, most: int) -> Reader:
    def read(answer: str, key: str, known: Known) -> Got | Unread:
        match = re.fullmatch(r"(?:about|abt|~|c\.?)?\s*(\d{1,7})(?:s|ish)?", answer.strip(), re.ASCII | re.IGNORECASE)
        if not match or not least <= int(match[1]) <= most:
            return Unread.of(
                "“{answer}” is no number from {least} to {most}", answer=answer, least=str(least), most=str(most)
            )
        return Got({key: int(match[1])})

    return read
