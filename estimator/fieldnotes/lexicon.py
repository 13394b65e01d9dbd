"""The words of a log as people type them, from lexicon.toml: a phrase in, what it may mean out."""

import itertools
import re
import tomllib
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from functools import cache
from importlib.resources import files
from typing import Any

from estimator.disk.cache import cached
from estimator.fieldnotes.words import MATERIALS
from estimator.model.frozen import Frozen
from estimator.model.say import Say

Meanings = Mapping[str, str]  # class -> meaning
Key = tuple[str, ...]  # the words of a phrase
Folded = tuple[tuple[Key, ...], ...]  # what may stand in each of its places

GUARDED = ("danger", "utility", "live")
"""Classes no misspelling is ever put right to: gas, cross bore, tendon, live or dead. So is `cannot pass`."""
SHORTEST_SLIP = 4  # letters: `hle` may be anything


class Ask(Frozen):
    question: Say
    choices: tuple[str, ...]


class Lexicon:
    """What each phrase means. A phrase is looked up by its first word, and written out once somebody asks for that word: one
    line of the file may stand for thousands. `asks` are the questions of words that leave open what is there; `standard` are pure
    shortenings, which stand for standard words wherever they are."""

    def __init__(self, data: Mapping[str, Any]) -> None:
        self.asks = {name: Ask(Say(a["question"]), tuple(a["choices"])) for name, a in data["ask"].items()}
        self.standard = {short: meaning for meaning, shorts in data["standard"].items() for short in shorts}
        self.fillers = frozenset(data["filler"]["filler"]["say"])
        self.language = frozenset(data["language"]["word"].split())
        self.alone: dict[tuple[str, str], str] = {}
        well_spelt: set[Key] = set()
        self.listed: list[tuple[Folded, str, str]] = []
        self.english = set(self.fillers | self.language)  # words as they are spelt
        self.spanish: set[str] = set()
        for cls, words in data.items():
            if cls in ("ask", "standard", "filler", "language"):
                continue
            for meaning, entry in words.items():
                name = meaning if cls == "verb" else cls  # a verb may be several: `to` reaches, and changes
                if "alone" in entry:
                    self.alone[cls, meaning] = entry["alone"]
                for said in ("say", "short", "slip", "es"):
                    these = [folded(phrase) for phrase in entry.get(said, ())]
                    self.listed += [(phrase, name, meaning) for phrase in these]
                    spelt = {"say": self.english, "es": self.spanish}.get(said, set())
                    spelt |= {w for phrase in these for place in phrase for words in place for w in words}
                    well_spelt |= (
                        set() if said == "slip" else set(itertools.chain.from_iterable(map(single_words, these)))
                    )
        self._beginning: dict[str, list[tuple[Folded, str, str]]] = defaultdict(list)
        self._words: dict[Key, dict[str, str]] = defaultdict(dict)
        for phrase, name, meaning in self.listed:
            for first in first_words(phrase):
                self._beginning[first].append((phrase, name, meaning))
            for key in single_words(phrase):
                self._words[key].setdefault(name, meaning)
        self._written: dict[str, dict[Key, dict[str, str]]] = {}
        self.spelt: dict[str, str] = {}
        for cls, words in data.items():
            for entry in words.values() if cls not in ("ask", "standard", "filler", "language") else ():
                whole = next((p for p in entry.get("say", ()) if p.isalpha()), "")
                for typed in (*entry.get("slip", ()), *entry.get("short", ())) if whole else ():
                    if typed.isalpha() and len(self._words[typed,]) == 1:
                        self.spelt.setdefault(typed, whole)
        self.longest = max(sum(max(map(len, place)) for place in phrase) for phrase, _, _ in self.listed)
        self.single = sorted(  # a slip never makes a remark, and is not slipped again
            key[0] for key in well_spelt if len(key[0]) >= SHORTEST_SLIP and "remark" not in self._words[key]
        )
        self.whole = self.english | self.spanish
        self.parts = frozenset(w for phrase, _, _ in self.listed for place in phrase for words in place for w in words)
        self.part_list = sorted(w for w in self.parts if len(w) >= SHORTEST_SLIP)
        self.single_guarded = sorted(
            key[0] for key, means in self._words.items() if "danger" in means or "utility" in means
        )

    def means(self, key: Key) -> Meanings:
        """Return what a phrase means; nothing for one that is not listed."""
        return (self._words if len(key) == 1 else self.beginning(key[0]) if key else {}).get(key, {})

    def beginning(self, word: str) -> Mapping[Key, Meanings]:
        """Return the phrases of several words that begin with this one."""
        if word not in self._beginning:
            return {}
        if word not in self._written:
            found: dict[Key, dict[str, str]] = {}
            self._written[word] = found
            for phrase, name, meaning in self._beginning[word]:
                for key in beginning(phrase, word):
                    if len(key) > 1:
                        found.setdefault(key, {}).setdefault(name, meaning)
        return self._written[word]

    def known(self, word: str) -> bool:
        """Return whether it is a word of the trade or of the language, in any of its forms: `sprayed`, `hidin`."""
        stem = re.sub(r"(?<=..)(?:ing?|e[drs]|s|d|y|ly|est)$", "", word)
        forms = (word, stem, f"{stem}e", stem[:-1] if stem[-2:-1] == stem[-1:] else stem, f"{word}g")
        return len(word) == 1 or any(form in self.parts or form in self.language for form in forms)

    def guarded(self, key: Key) -> bool:
        means = self.means(key)
        return any(c in means for c in GUARDED) or means.get("sign") == "cannot pass" or means.get("no") is not None


@cache
def lexicon_data() -> Mapping[str, Any]:
    """The program's own lexicon.toml as it is written."""
    return tomllib.loads((files("estimator.fieldnotes") / "lexicon.toml").read_text("utf-8"))


@cache
def lexicon() -> Lexicon:
    """The words of the program's own lexicon.toml, kept in the user's cache from one time to the next."""
    return cached("lexicon", (), lambda: Lexicon(lexicon_data()))


def phrase_key(phrase: str) -> Key:
    """Return the words of a phrase as they are compared: in small letters, without apostrophes, `a.b.s.` without its last dot."""
    words = phrase.lower().split()
    return tuple(map(bare, words) if "'" in phrase or "." in phrase else words)


def bare(word: str) -> str:
    """Return a word without apostrophes and without the dot of a shortening."""
    word = word.replace("'", "")
    return word.rstrip(".") if len(word) > 2 else word


def folded(phrase: str) -> Folded:
    """Return what may stand in each place of a phrase written with choices, such as `{cant,wont} pass`; an empty choice leaves
    the word out.

    >>> folded("{cant,wont} {get ,}thru")
    ((('cant',), ('wont',)), (('get', 'thru'), ('thru',)))
    """
    if "{" not in phrase:
        return ((phrase_key(phrase),),)
    places = re.findall(r"(?:\{[^}]*\}|[^ {])+", phrase)
    return tuple(tuple(dict.fromkeys(map(phrase_key, _each(place)))) for place in places)


def _each(place: str) -> Iterator[str]:
    parts = re.split(r"\{([^}]*)\}", place)
    for chosen in itertools.product(*(part.split(",") if n % 2 else [part] for n, part in enumerate(parts))):
        yield "".join(chosen)


def unfolded(folded: Folded) -> Iterator[Key]:
    """Every phrase it stands for, in the order in which its choices are written."""
    return (tuple(itertools.chain.from_iterable(chosen)) for chosen in itertools.product(*folded))


def beginning(folded: Folded, first: str) -> Iterator[Key]:
    """Those of them that begin with this word."""
    if () not in folded[0]:
        folded = (tuple(words for words in folded[0] if words[0] == first), *folded[1:])
    return (key for key in unfolded(folded) if key[:1] == (first,))


def first_words(folded: Folded) -> Iterable[str]:
    """Each word that one of them begins with."""
    if len(folded[0]) == 1 and folded[0][0]:  # most are written without a choice
        return folded[0][0][:1]
    found: dict[str, None] = {}
    for place in folded:
        found |= dict.fromkeys(words[0] for words in place if words)
        if () not in place:
            break
    return found


def single_words(folded: Folded) -> list[Key]:
    """The phrases of one word among those it stands for: all places but one are left out."""
    needed = [place for place in folded if () not in place]
    places = folded if not needed else needed if len(needed) == 1 else ()
    return [words for place in places for words in place if len(words) == 1]


def material_of(text: str) -> str | None:
    """The program's word for a pipe material however it is written.

    >>> material_of("Orangeburg"), material_of("vcp"), material_of("PVC SDR 35"), material_of("cheese")
    ('fiber', 'clay', 'PVC SDR 35', None)
    """
    known = next((m for m in MATERIALS if m.lower() == text.lower().strip()), None)
    return known or lexicon().means(phrase_key(text)).get("material")
