"""A log so far and a line as typed in, the log with it out, and what to say: read, kept as it is, or one thing asked."""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from estimator.cli.interview.sheet import NOT_READ, About, Sheet, read
from estimator.fieldnotes.answers import LONGEST, nearest
from estimator.fieldnotes.tidy import tidied, trade_shortenings
from estimator.fieldnotes.where import Where, read_where
from estimator.fieldnotes.words import ALL_SIGNS, BY_NAME, MATERIALS, PLURALS, SURFACES
from estimator.model.lengths import plain_marks
from estimator.model.problem import Level, Problem

UNKNOWN_WORD, NO_PASS, NOTHING, NO_READING = "log/word", "log/no-pass", "log/nothing", "log/no-reading"
KNOWN_WORDS = (*BY_NAME, *PLURALS, *MATERIALS, *SURFACES, *ALL_SIGNS)
_HEADING = re.compile(r"\s*pass\b(?!\s*=)", re.IGNORECASE)
_HEADING_PART = re.compile(
    r"\s*(?:(?:riser|drop|zero at|before|after)\s|surface\b|no riser\b|with (?:the )?flow\b|against (?:the )?flow\b|"
    r"from end\b|to (?:the )?(?:house|street|main|city|tank)\b)", re.IGNORECASE
)  # fmt: skip
_LAST_WORD = re.compile(r"\s*(?:no|not that|make it|make that|call it|call)[ ,:]+(?=\S)", re.IGNORECASE)
_AMOUNT_ONLY = re.compile(r"\s*[~\d./ -]+\s*(?:%|percent\b|in\b|inch|\"|'')", re.IGNORECASE)
_ENDS = ("", "y", "yes", "ok")
_AS_NOTE = ("-", "no", "n", "note", "remark", ";", "skip")


@dataclass(frozen=True, slots=True)
class Asked:
    """A word nobody knows, in which row; `offer` is a known word, or "" for a remark."""

    row: int
    word: str
    offer: str


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
        return read(self.rows, self.about, self.words)


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
    """The row with this text, read; what cannot be read is kept and asked for."""
    rows = (*log.rows[:row], clean, *log.rows[row + 1 :])
    sheet = read(rows, log.about, log.words)
    problems = sheet.at(row)
    errors = [p for p in problems if p.level is Level.ERROR and p.code != NO_PASS and not _HEADING.match(clean)]
    if not errors:
        waits = row if any(p.code == NO_READING for p in problems) else None
        return replace(log, rows=rows, row=row, problems=problems, unread=waits, asked=None)
    kept = (*log.rows[:row], NOT_READ + clean, *log.rows[row + 1 :])
    log = replace(log, rows=kept, row=None, problems=tuple(errors), unread=row, asked=None)
    unknown = next((p for p in errors if p.code == UNKNOWN_WORD), None)
    return replace(log, asked=_question(row, unknown)) if unknown else log


def _question(row: int, problem: Problem) -> Asked:
    found = re.search(r"“(.*?)”", problem.wrong)
    word = found[1] if found else ""
    near = nearest(word, (*KNOWN_WORDS, *trade_shortenings())) if len(word) > 1 and " " not in word else ""
    return Asked(row, word, trade_shortenings().get(near, near))


# ── the answer to what a word means ───────────────────────────────────────────────────────────


def _told(log: Typed, asked: Asked, answer: str) -> Typed:
    """Enter takes what was offered, a known word is remembered, a dash makes a remark; anything else is the next line."""
    log = replace(log, asked=None)
    raw = log.rows[asked.row].removeprefix(NOT_READ)
    low = answer.lower().strip()
    if low in _AS_NOTE or (low in _ENDS and not asked.offer):
        return _set(log, asked.row, _as_remark(raw, asked.word))
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


def _as_remark(raw: str, word: str) -> str:
    """The words taken out of the line and put after its ;."""
    body, mark, note = raw.partition(";")
    loose = r"[\s,]+".join(map(re.escape, word.split()))
    body = re.sub(rf"(?<![\w]){loose}(?![\w])", " ", body, count=1, flags=re.IGNORECASE) if loose else body
    if body == raw.partition(";")[0]:  # it was typed otherwise than it is read: all of the rest is a remark
        where = read_where(tidied(body))
        end = where.end if isinstance(where, Where) else 0
        return f"# {raw}" if not end else f"{body[:end]} stop ; {body[end:].strip()}"
    body = re.sub(r"\s+,", ",", re.sub(r"\s{2,}", " ", body)).strip().rstrip(",")
    remark = f"{body} ; {word}{', ' + note.strip() if mark and note.strip() else ''}"
    return f"# {raw}" if re.fullmatch(r"[~\d.' -]*", body) else remark


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
    if log.unread is None or log.unread != len(log.rows) - 1:
        return None
    old = log.rows[log.unread].removeprefix(NOT_READ)
    where = read_where(tidied(clean))
    if isinstance(where, Where) and not clean[where.end :].strip() and read_where(tidied(old)) is None:
        both = f"{clean} {old}"
    elif _AMOUNT_ONLY.match(clean) or plain_marks(clean)[:1].isalpha():
        both = f"{old} {clean}"
    else:
        return None
    tried = _set(log, log.unread, both)
    return tried if tried.row is not None and tried.unread is None else None


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
