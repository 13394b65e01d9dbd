"""A log so far and a line as typed in, the log with it out, and what to say: read, kept as it is, or one thing asked."""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from difflib import get_close_matches
from functools import lru_cache

from estimator.cli.interview.sheet import NOT_READ, About, Sheet, read
from estimator.fieldnotes.answers import LONGEST, nearest
from estimator.fieldnotes.tidy import tidied, trade_shortenings
from estimator.fieldnotes.where import Where, read_where
from estimator.fieldnotes.words import ALL_SIGNS, BY_NAME, MATERIALS, PLURALS, SURFACES
from estimator.model.lengths import plain_marks
from estimator.model.problem import Level, Problem

UNKNOWN_WORD, NO_PASS, NO_READING = "log/word", "log/no-pass", "log/no-reading"
BARE_NUMBER, ORDER = "log/bare-number", "log/order"
ALIKE = 0.75  # of 1: `brnch` is like branch, `looks` is not like loc
KNOWN_WORDS = (*BY_NAME, *PLURALS, *MATERIALS, *SURFACES, *ALL_SIGNS)
_HEADING = re.compile(r"\s*pass\b(?!\s*=)", re.IGNORECASE)
_HEADING_PART = re.compile(
    r"\s*(?:(?:riser|drop|zero at|before|after)\s|surface\b|no riser\b|with (?:the )?flow\b|against (?:the )?flow\b|"
    r"from end\b|to (?:the )?(?:house|street|main|city|tank)\b)", re.IGNORECASE
)  # fmt: skip
_LAST_WORD = re.compile(r"\s*(?:no|not that|make it|make that|call it|call)[ ,:]+(?=\S)", re.IGNORECASE)
_AMOUNT_ONLY = re.compile(
    r"\s*~?\d[\d./ -]*\s*(?:%|percent|in|inch|inches|\"|'')\??\s*(?:wide|deep|up|down|left|right|at\s+\d[\d -]*)?",
    re.IGNORECASE,
)
_ENDS = ("", "y", "yes", "ok")
_AS_NOTE = ("-", "no", "n", "note", "remark", ";", "skip")


@dataclass(frozen=True, slots=True)
class Asked:
    """A word nobody knows, in which row; `offer` is a known word, or "" for a remark."""

    row: int
    word: str
    offer: str
    column: int = 1


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


def typed(log: Typed, text: str) -> Typed:
    """The log after one more line. Whatever was typed is in it, read or kept behind `#?`."""
    clean = "".join(c if c.isprintable() else " " for c in text).strip()
    log = replace(log, row=None, problems=(), learned=None, refused="")
    if log.asked:
        return _told(log, log.asked, clean)
    if not clean:
        return log
    if len(clean) > LONGEST:
        return replace(log, refused=f"that is {len(clean)} letters, more than a line of a log; type it in pieces")
    return _corrected(log, clean) or _completed(log, clean) or _heading_first(log, clean) or _new(log, clean)


def without_last(log: Typed) -> Typed:
    """The log without its last row."""
    return replace(log, rows=log.rows[:-1], row=None, problems=(), asked=None, learned=None, unread=None, refused="")


# ── a line of its own ─────────────────────────────────────────────────────────────────────────


def _new(log: Typed, clean: str) -> Typed:
    again = log.unread
    if again is not None and _same_reading(log.rows[again].removeprefix(NOT_READ), clean):
        return _set(log, again, clean)  # the whole line once more, put right
    return _set(replace(log, rows=(*log.rows, clean)), len(log.rows), clean)


def _set(log: Typed, row: int, clean: str) -> Typed:
    """The row with this text, read; what cannot be read is kept as it was typed, and asked for."""
    plain = plainer(clean)
    tried = (clean, plain, *_remarked(log, row, plain))
    for text in dict.fromkeys(tried):
        rows = (*log.rows[:row], text, *log.rows[row + 1 :])
        sheet = _read(rows, log.about, log.words)
        if not _errors(sheet, row, text):
            return _opened(_kept(log, row, rows, sheet), sheet)
    kept = (*log.rows[:row], NOT_READ + clean, *log.rows[row + 1 :])
    errors = _errors_of(log, row, plain)
    log = replace(log, rows=kept, row=None, problems=errors, unread=row, asked=None)
    unknown = next((p for p in errors if p.code == UNKNOWN_WORD), None)
    if unknown is None:
        return log
    return replace(log, asked=Asked(row, _word(unknown), _like(_word(unknown)), unknown.place.column or 1))


def _kept(log: Typed, row: int, rows: tuple[str, ...], sheet: Sheet) -> Typed:
    problems = sheet.at(row)
    waits = row if any(p.code == NO_READING for p in problems) else None
    return replace(log, rows=rows, row=row, problems=problems, unread=waits, asked=None)


def _errors(sheet: Sheet, row: int, text: str) -> tuple[Problem, ...]:
    """What stops this row from being read; a heading is kept whatever it lacks, and readings without one too."""
    if _HEADING.match(text):
        return ()
    return tuple(p for p in sheet.at(row, Level.ERROR) if p.code != NO_PASS)


def _errors_of(log: Typed, row: int, text: str) -> tuple[Problem, ...]:
    return _errors(_read((*log.rows[:row], text, *log.rows[row + 1 :]), log.about, log.words), row, text)


def _word(problem: Problem) -> str:
    found = re.search(r"“(.*?)”", problem.wrong)
    return found[1] if found else ""


def _like(word: str) -> str:
    """The known word that a single word is very like, or nothing."""
    if len(word) < 2 or not word.isalpha():
        return ""
    words = {known.lower(): known for known in (*KNOWN_WORDS, *trade_shortenings())}
    close = get_close_matches(word.lower(), words, n=1, cutoff=ALIKE)
    return trade_shortenings().get(words[close[0]], words[close[0]]) if close else ""


def plainer(text: str) -> str:
    """The line without what people write and the log does not: `20,4`, a full stop between things, `28-1 from the wall`.

    >>> plainer("20,4 hole 2in. dirt seen"), plainer("loc 2'3 under tile, 28-1 from frt wall")
    ('20.4 hole 2in, dirt seen', 'loc 2\'3 under tile, 28\'1" frt wall')
    """
    body, mark, note = plain_marks(text).partition(";")
    body = re.sub(r"^(\s*~?\d+),(\d+)(?=\s)", r"\1.\2", body, flags=re.ASCII)
    body = re.sub(
        r"\b(\d{1,3})-(\d{1,2})\s+(?:from|off)\s+(?:the\s+)?(?=[A-Za-z])", r"""\1'\2" """, body, flags=re.ASCII
    )
    body = re.sub(r"(?<=[A-Za-z%\"'])\.(?=\s+\S)", ",", body)
    return re.sub(r"(?<=[A-Za-z%\"'])[.!]\s*$", "", body).rstrip() + (f" ;{note}" if mark else "")


def _remarked(log: Typed, row: int, text: str) -> list[str]:
    """The line with the words nobody knows behind its ;, or with all that follows the first of them there.

    A word that is very like a known one stays, to be asked for; so does a single strange word, with what follows it.
    """
    first = next((p for p in _errors_of(log, row, text) if p.code == UNKNOWN_WORD), None)
    if first is None:
        return []
    start = (first.place.column or 1) - 1
    rest = [] if _word(first).isalpha() else [as_remark(text, text[start:].partition(";")[0].strip(" ,"), start + 1)]
    for _ in range(8):
        unknown = next((p for p in _errors_of(log, row, text) if p.code == UNKNOWN_WORD and not _like(_word(p))), None)
        if unknown is None:
            break
        text = as_remark(text, _word(unknown), unknown.place.column or 1)
    return [text, *rest]


def _opened(log: Typed, sheet: Sheet) -> Typed:
    """`22 sag` waited for how much; now that it goes on or ends, it was where it starts."""
    row = log.row or 0
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


# ── the answer to what a word means ───────────────────────────────────────────────────────────


def _told(log: Typed, asked: Asked, answer: str) -> Typed:
    """Enter takes what was offered, a known word is remembered, a dash makes a remark; anything else is the next line."""
    log = replace(log, asked=None)
    raw = log.rows[asked.row].removeprefix(NOT_READ)
    low = answer.lower().strip()
    if low in _AS_NOTE or (low in _ENDS and not asked.offer):
        return _set(log, asked.row, as_remark(raw, asked.word, asked.column))
    meaning = asked.offer if low in _ENDS else _meant(low)
    if not meaning:
        return typed(log, answer)
    words = {**log.words, asked.word.lower(): meaning}
    return replace(_set(replace(log, words=words), asked.row, raw), learned=(asked.word.lower(), meaning))


def _meant(low: str) -> str:
    """A known word, one of its shortenings, or one nearly so; nothing for anything else."""
    if low in map(str.lower, KNOWN_WORDS):
        return low
    if low in trade_shortenings():
        return trade_shortenings()[low]
    return nearest(low, KNOWN_WORDS) if re.fullmatch(r"[a-z][a-z ]{2,20}", low) else ""


def as_remark(raw: str, word: str, column: int = 0) -> str:
    """The words taken out of the line and put after its ;. Where they are typed otherwise, all from `column` to the comma.

    >>> as_remark("8 groove looks bad, photo 3", "looks bad")
    '8 groove, photo 3 ; looks bad'
    """
    body, mark, note = raw.partition(";")
    loose = r"[\s,]+".join(map(re.escape, word.split()))
    match = re.search(rf"(?<!\w){loose}(?!\w)", body, re.IGNORECASE) if loose else None
    start, end = (match.start(), match.end()) if match else (max(0, column - 1), len(body))
    if not match and "," in body[start:]:
        end = start + max(body[start:].index(","), 1)
    moved = body[start:end].strip(" ,")
    body = re.sub(r"\s+,", ",", re.sub(r"\s{2,}", " ", f"{body[:start]} {body[end:]}")).strip().rstrip(",")
    notes = ", ".join(part for part in ((note.strip() if mark else ""), moved) if part)
    return f"# {body} {notes}" if re.fullmatch(r"[~\d.' -]*", body) else f"{body} ; {notes}"


# ── putting right and filling in ──────────────────────────────────────────────────────────────


def _corrected(log: Typed, clean: str) -> Typed | None:
    """`no 16.6` puts the last reading right, `no 16.6 hole 2in` the whole last line."""
    match = _LAST_WORD.match(clean)
    if not match or not log.rows:
        return None
    last, new = len(log.rows) - 1, clean[match.end() :].strip()
    old = log.rows[last].removeprefix(NOT_READ)
    where, was = read_where(tidied(new)), read_where(tidied(old))
    if not isinstance(where, Where):
        return None
    if new[where.end :].strip() or not isinstance(was, Where):
        return _set(log, last, new)
    return _set(log, last, f"{old[: was.end]} no {new}{old[was.end :]}")


def _completed(log: Typed, clean: str) -> Typed | None:
    """The missing part of the row before: an amount, a reading, or what a pass heading left out."""
    if _HEADING_PART.match(clean):
        heading = next((n for n in reversed(range(len(log.rows))) if _HEADING.match(log.rows[n])), None)
        if heading is not None:
            body, mark, note = log.rows[heading].partition(";")
            return _set(log, heading, f"{body.rstrip()}, {clean}{' ;' + note if mark else ''}")
    if not log.rows or _HEADING.match(log.rows[-1]):
        return None
    waits = log.unread == len(log.rows) - 1
    if not waits and not _ever_read(log, len(log.rows) - 1):
        return None
    old = log.rows[-1].removeprefix(NOT_READ)
    amount = bool(_AMOUNT_ONLY.fullmatch(clean)) or (waits and bool(re.match(r"at\s+\d", clean, re.IGNORECASE)))
    tried = (_set(log, len(log.rows) - 1, both) for both in _both(log, old, clean, waits, amount))
    return next((t for t in tried if t.row is not None and t.unread is None), None)


def _ever_read(log: Typed, row: int) -> bool:
    """The row is a reading with something at it."""
    return any(e.place.line == row + 1 for p in log.sheet.log.passes for e in p.entries)


def _both(log: Typed, old: str, clean: str, waits: bool, amount: bool) -> list[str]:
    """The row before and what was typed, put together in each way that may make sense."""
    where = read_where(tidied(clean))
    if waits and isinstance(where, Where) and not clean[where.end :].strip() and read_where(tidied(old)) is None:
        return [f"{clean} {old}"]  # words first, then the reading
    if amount:
        bare = next((_word(p) for p in log.problems if p.code in (BARE_NUMBER, ORDER)), "") if waits else ""
        start = old.find(bare, 1) if bare else -1
        end = old.find(",", start) if start >= 0 else -1
        swapped = [f"{old[:start]}{clean}{old[end:] if end >= 0 else ''}"] if start >= 0 else []
        return [*swapped, f"{old} {clean}"]
    return [f"{old} {clean}"] if waits and plain_marks(clean)[:1].isalpha() else []


def _heading_first(log: Typed, clean: str) -> Typed | None:
    """A heading typed after readings that had none belongs above them."""
    if not _HEADING.match(clean) or log.about.given or any(_HEADING.match(row) for row in log.rows):
        return None
    first = next((n for n, row in enumerate(log.rows) if row.removeprefix(NOT_READ)[:1].isdigit()), None)
    if first is None:
        return None
    return _set(replace(log, rows=(*log.rows[:first], clean, *log.rows[first:])), first, clean)


def _same_reading(old: str, new: str) -> bool:
    a, b = read_where(tidied(old)), read_where(tidied(new))
    return isinstance(a, Where) and isinstance(b, Where) and (a.from_ft, a.to_ft) == (b.from_ft, b.to_ft)
