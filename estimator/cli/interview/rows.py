"""A log and one row's new text in, the log with that row read out; or kept as it was typed, with what is wrong."""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from difflib import get_close_matches
from functools import lru_cache

from estimator.cli.interview.loose import as_remark, may_deny, plainer, says_something
from estimator.cli.interview.sheet import NOT_READ, About, Sheet, read
from estimator.fieldnotes.tidy import tidied, trade_shortenings
from estimator.fieldnotes.where import Where, read_where
from estimator.fieldnotes.words import ALL_SIGNS, BY_NAME, MATERIALS, PLURALS, SURFACES
from estimator.model.problem import Level, Problem

UNKNOWN_WORD, NO_PASS, NO_READING = "log/word", "log/no-pass", "log/no-reading"
AMOUNT = "log/amount"
ALIKE = 0.75  # of 1: `brnch` is like branch, `looks` is not like loc
KNOWN_WORDS = (*BY_NAME, *PLURALS, *MATERIALS, *SURFACES, *ALL_SIGNS)
HEADING = re.compile(r"\s*pass\b(?!\s*=)", re.IGNORECASE)
MOST_REMARKS = 8
SHORTEST = 3  # letters of a word that may be a misspelt one
NEVER_ASKED = frozenset((
    "a", "again", "all", "also", "and", "as", "bad", "but", "can", "fine", "from", "good", "here", "in",
    "is", "it", "just", "looks", "maybe", "more", "not", "now", "of", "off", "ok", "okay", "on", "only",
    "or", "out", "please", "reads", "see", "seen", "so", "some", "than", "that", "the", "then", "there", "this",
    "too", "very", "was", "with",
    "bath", "bathroom", "dishwasher", "disposal", "hall", "kitchen", "laundry", "lav", "sink", "shower", "toilet", "tub", "washer",
))  # fmt: skip
"""Plain English, and what stands in a house: a remark, never a shortening."""
ALL_WELL = frozenset(("ok", "okay", "fine", "good"))
BESIDE_ALL_WELL = frozenset(
    ("again", "all", "and", "here", "is", "it", "just", "looks", "now", "so", "still", "then", "very")
)


@dataclass(frozen=True, slots=True)
class Asked:
    """A word nobody knows, in which row; `offer` is a known word, or "" for a remark.

    `alone`: without it nothing is said at its reading, so that only a dash makes a remark of it.
    """

    row: int
    word: str
    offer: str
    column: int = 1
    alone: bool = False


@dataclass(frozen=True, slots=True)
class Typed:
    """A log being typed. Each line gives a new one; `row` is the row just read, `problems` what to say of it."""

    about: About
    words: Mapping[str, str] = field(default_factory=dict)
    rows: tuple[str, ...] = ()
    row: int | None = None
    problems: tuple[Problem, ...] = ()
    asked: Asked | None = None
    learned: tuple[str, str] | None = None
    unread: int | None = None  # the row that waits for its missing part
    refused: str = ""

    @property
    def sheet(self) -> Sheet:
        return _read(self.rows, self.about, self.words)


def _read(rows: tuple[str, ...], about: About, words: Mapping[str, str]) -> Sheet:
    return _read_once(rows, about, tuple(sorted(words.items())))


@lru_cache(maxsize=8)
def _read_once(rows: tuple[str, ...], about: About, words: tuple[tuple[str, str], ...]) -> Sheet:
    return read(rows, about, dict(words))


def taken_up(about: About, words: Mapping[str, str], rows: tuple[str, ...]) -> Typed:
    """A log that is there already; what was asked of its last row is asked again."""
    log = Typed(about, words, rows)
    if not rows or not rows[-1].startswith(NOT_READ):
        return log
    return replace(put(log, len(rows) - 1, rows[-1].removeprefix(NOT_READ)), row=None)


def put(log: Typed, row: int, clean: str) -> Typed:
    """The row with this text, read; what cannot be read is kept as it was typed, and asked for."""
    plain = plainer(clean, log.words)
    tried = (clean, plain, *_remarked(log, row, plain))
    unknown = _strange(log, row, plain)
    for text in dict.fromkeys(tried):
        if text.startswith("#") and not clean.startswith("#") and (unknown or not _may_be_a_note(clean)):
            continue  # it may be the one word that says what is there
        rows = (*log.rows[:row], text, *log.rows[row + 1 :])
        sheet = _read(rows, log.about, log.words)
        if not _errors(sheet, row, text):
            return _opened(_kept(log, row, rows, sheet))
    kept = (*log.rows[:row], NOT_READ + clean, *log.rows[row + 1 :])
    errors = unknown or _errors_of(log, row, tried[2] if len(tried) > 2 else plain) or _errors_of(log, row, plain)
    log = replace(log, rows=kept, row=None, problems=errors, unread=row, asked=None)
    if not unknown:
        return log
    word = _one_word(unknown[0], plain)
    column = unknown[0].place.column or 1
    alone = as_remark(plain, word, column).startswith("#")
    return replace(log, asked=Asked(row, word, _like(word), column, alone))


def _may_be_a_note(text: str) -> bool:
    """It gives no reading, or says no more of one than that all is well there.

    >>> _may_be_a_note("so it goes"), _may_be_a_note("29 looks fine here"), _may_be_a_note("7 wadget here")
    (True, True, False)
    """
    where = read_where(tidied(text))
    if not isinstance(where, Where):
        return True
    words = set(re.findall(r"[^\s,.;]+", text[where.end :].lower()))
    return bool(words & ALL_WELL) and words <= ALL_WELL | BESIDE_ALL_WELL


def _one_word(unknown: Problem, text: str) -> str:
    """The word to ask for: of several in a row the misspelt one they begin with (`kitchen brnch`), or any where nothing else is said."""
    phrase, column = word_of(unknown), unknown.place.column or 1
    words = [word for word in phrase.split() if word.isalpha() and word.lower() not in NEVER_ASKED]
    if " " not in phrase or not words:
        return phrase
    where = read_where(tidied(text))
    comes_first = isinstance(where, Where) and not text[where.end : column - 1].strip(" ,:")
    if comes_first and _like(words[0]):
        return words[0]
    if comes_first and as_remark(text, phrase, column).startswith("#"):
        return next(filter(_like, words), words[0])
    return phrase


def _strange(log: Typed, row: int, text: str) -> tuple[Problem, ...]:
    """The first single word nobody knows: it is asked for. Several in a row are a remark, as is one beside a known word.

    `murk 30%` says nothing without its word; `roots lots` only leaves out how much.
    """
    first = next((p for p in _errors_of(log, row, text) if p.code == UNKNOWN_WORD), None)
    word = _one_word(first, text) if first else ""
    if first is None or not word.isalpha() or word.lower() in NEVER_ASKED or may_deny(text, word):
        return ()
    without = as_remark(text, word, first.place.column or 1)
    if not _like(word) and any(p.code == AMOUNT for p in _errors_of(log, row, without)):
        return ()
    return (first,)


def _kept(log: Typed, row: int, rows: tuple[str, ...], sheet: Sheet) -> Typed:
    problems = sheet.at(row)
    waits = row if any(p.code == NO_READING for p in problems) else None
    return replace(log, rows=rows, row=row, problems=problems, unread=waits, asked=None)


def _errors(sheet: Sheet, row: int, text: str) -> tuple[Problem, ...]:
    """What stops this row from being read; a heading is kept whatever it lacks, and readings without one too."""
    if HEADING.match(text):
        return ()
    return tuple(p for p in sheet.at(row, Level.ERROR) if p.code != NO_PASS)


def _errors_of(log: Typed, row: int, text: str) -> tuple[Problem, ...]:
    return _errors(_read((*log.rows[:row], text, *log.rows[row + 1 :]), log.about, log.words), row, text)


def word_of(problem: Problem) -> str:
    found = re.search(r"“(.*?)”", problem.wrong)
    return found[1] if found else ""


def _like(word: str) -> str:
    """The known word that a single word is very like, or nothing."""
    if (
        len(word) < SHORTEST
        or not word.isalpha()
        or word.lower() in NEVER_ASKED
        or word.lower() in map(str.lower, KNOWN_WORDS)
    ):
        return ""  # a known word where it does not belong is no misspelling
    words = {known.lower(): known for known in (*KNOWN_WORDS, *trade_shortenings())}
    close = get_close_matches(word.lower(), words, n=1, cutoff=ALIKE)
    return trade_shortenings().get(words[close[0]], words[close[0]]) if close else ""


def _remarked(log: Typed, row: int, text: str) -> list[str]:
    """The line with the words nobody knows behind its ;, or with all that follows the first of them there.

    A word that is very like a known one stays, to be asked for; so does a single strange word, with what follows it.
    """
    first = next((p for p in _errors_of(log, row, text) if p.code == UNKNOWN_WORD), None)
    if first is None:
        return []
    start = (first.place.column or 1) - 1
    rest = text[start:].partition(";")[0].strip(" ,")
    kept = _strange(log, row, text) or says_something(rest, log.words) or may_deny(text, word_of(first))
    whole = [] if kept else [as_remark(text, rest, start + 1)]
    for _ in range(MOST_REMARKS):
        unknown = next(
            (p for p in _errors_of(log, row, text) if p.code == UNKNOWN_WORD and not _like(_one_word(p, text))), None
        )
        if unknown is None or says_something(word_of(unknown), log.words) or may_deny(text, word_of(unknown)):
            break
        moved = as_remark(text, word_of(unknown), unknown.place.column or 1)
        if says_something(moved.partition(";")[2] if ";" in moved else moved.lstrip("# "), log.words):
            break  # a finding would go with it
        text = moved
    return [text, *whole]


def _opened(log: Typed) -> Typed:
    """`22 sag` waited for how much; now that it goes on or ends, it was where it starts."""
    row, sheet = log.row or 0, log.sheet
    going = {
        e.thing.word.word
        for p in sheet.log.passes
        for e in p.entries
        if e.place.line == row + 1 and e.leg != "starts" and e.leg
    }
    for earlier in reversed(range(row)):
        if not going or not log.rows[earlier].startswith(NOT_READ):
            continue
        rows = (*log.rows[:earlier], f"{log.rows[earlier].removeprefix(NOT_READ)} starts", *log.rows[earlier + 1 :])
        again = _read(rows, log.about, log.words)
        began = {e.thing.word.word for p in again.log.passes for e in p.entries if e.place.line == earlier + 1}
        if not _errors(again, earlier, rows[earlier]) and began & going:
            return replace(log, rows=rows)
    return log
