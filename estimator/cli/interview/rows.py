"""A log so far and a line as typed in, the log with it out, and what to say: read, kept as a remark, or asked back with choices.

Every row stands in the log as it was typed; the same reader reads it here and in a file. Only the answer to a question puts a
row in standard words, with what was typed behind its semicolon.
"""

import re
from collections.abc import Mapping
from dataclasses import replace
from functools import lru_cache

from msgspec import field

from estimator.cli.interview.sheet import About, Sheet, read
from estimator.fieldnotes.answers import LONGEST
from estimator.fieldnotes.log import TYPED
from estimator.fieldnotes.logbook import Asked
from estimator.model.frozen import Frozen
from estimator.model.problem import Level, Problem
from estimator.model.say import Say

HEADING = re.compile(r"\s*pass\b(?!\s*=)", re.IGNORECASE)
_AS_NOTE = ("-", "note", "remark", ";", "skip")
ASKED_CODES = ("log/asked", "log/asked-utility")
REMARK = "note"  # the choice that keeps a line as a remark


def too_long(letters: int) -> Say:
    """What a line of more letters than a log's line is answered."""
    return Say.of("that is {letters} letters, more than a line of a log; type it in pieces", letters=letters)


class Typed(Frozen):
    """A log being typed. Each line gives a new one; `row` is the row just read, `problems` what to say of it.

    `asked` is the question that waits, of row `asking`.
    """

    about: About
    words: Mapping[str, str] = field(default_factory=dict)
    rows: tuple[str, ...] = ()
    row: int | None = None
    problems: tuple[Problem, ...] = ()
    asked: Asked | None = None
    taken_back: str = ""  # the row that a correction took out
    refused: Say | None = None

    @property
    def sheet(self) -> Sheet:
        return _read_once(self.rows, self.about, tuple(sorted(self.words.items())))

    @property
    def asking(self) -> int:
        """The row that is asked about, from 0."""
        return (self.asked.place.line or 1) - 1 if self.asked else -1


@lru_cache(maxsize=8)
def _read_once(rows: tuple[str, ...], about: About, words: tuple[tuple[str, str], ...]) -> Sheet:
    return read(rows, about, dict(words))


def taken_up(about: About, words: Mapping[str, str], rows: tuple[str, ...]) -> Typed:
    """A log that is there already; what was asked of its last row is asked again."""
    log = Typed(about, words, rows)
    return replace(log, asked=next((a for a in log.sheet.log.asked if a.place.line == len(rows) and not a.later), None))


def typed(log: Typed, text: str) -> Typed:
    """The log after one more line. Whatever was typed is in it."""
    clean = "".join(c if c.isprintable() else " " for c in text).strip()
    asked = log.asked
    log = replace(log, row=None, problems=(), asked=None, taken_back="", refused=None)
    if asked is not None and (told := answered(log, asked, clean)) is not None:
        return told
    if not clean:
        return log
    if len(clean) > LONGEST:
        return replace(log, refused=too_long(len(clean)))
    at = _above(log, clean)
    return _put(log, (*log.rows[:at], clean, *log.rows[at:]), at)


def without_last(log: Typed) -> Typed:
    """The log without its last row."""
    return replace(log, rows=log.rows[:-1], row=None, problems=(), asked=None, taken_back="", refused=None)


def _above(log: Typed, clean: str) -> int:
    """Where the row goes: a heading typed after readings that had none belongs above them."""
    read = log.sheet.log
    if HEADING.match(clean) and not log.about.given and all(run.heading.access == "?" for run in read.passes):
        places = [entry.place for run in read.passes for entry in run.entries]
        places += [same.place for run in read.passes for same in run.sames] + [asked.place for asked in read.asked]
        return min((place.line - 1 for place in places if place.line), default=len(log.rows))
    return len(log.rows)


def put(log: Typed, row: int, text: str) -> Typed:
    """The log with this text in place of one of its rows."""
    return _put(log, (*log.rows[:row], text, *log.rows[row + 1 :]), row)


def _put(log: Typed, rows: tuple[str, ...], row: int) -> Typed:
    """The log with these rows; `row` is the new one, or the one that it completes."""
    open_before = {a.place.line: a.text for a in log.sheet.log.asked}
    things_before = _things(log.sheet)
    new = replace(log, rows=rows)
    sheet = new.sheet
    asked = next((a for a in sheet.log.asked if a.place.line == row + 1 and not a.later), None)
    still = {a.place.line for a in sheet.log.asked}
    mine = any(e.place.line == row + 1 for p in sheet.log.passes for e in p.entries)
    completed = [line for line in open_before if line not in still and line is not None]
    now = _things(sheet)
    taken = [text for text in things_before if text not in now and not any(text in more for more in now)]
    gone = taken[0] if taken and not mine and not asked and not HEADING.match(rows[row]) else ""
    shown = completed[-1] - 1 if completed and not mine and asked is None else row
    headings = [p.heading for p in sheet.log.passes]
    if (
        shown == row
        and not mine
        and len(headings) == len(log.sheet.log.passes)
        and headings != [p.heading for p in log.sheet.log.passes]
    ):
        shown = (headings[-1].place.line or 1) - 1  # `riser 28in`: what the heading says now
    problems = tuple(p for p in sheet.at(shown) if p.code not in ASKED_CODES)
    return replace(new, row=None if asked else shown, problems=problems, asked=asked, taken_back=gone)


def _things(sheet: Sheet) -> list[str]:
    return [e.text for p in sheet.log.passes for e in p.entries]


# ── the answer to a question ──────────────────────────────────────────────────────────────────


def answered(log: Typed, asked: Asked, answer: str) -> Typed | None:
    """Enter leaves it open, a number takes a choice, a dash makes a remark; None: it is the next line."""
    row = (asked.place.line or 1) - 1
    raw = log.rows[row]
    low = answer.lower().strip()
    if not low:
        return replace(log, refused=Say.of("left open: list names it, and it is asked again"))
    if low in _AS_NOTE:
        return _put(log, (*log.rows[:row], f"# {raw}", *log.rows[row + 1 :]), row)
    named = re.fullmatch(r"\s*([A-Za-z][\w']*)\s*=\s*([A-Za-z][A-Za-z ]*)", answer)
    if named and re.search(rf"(?<!\w){re.escape(named[1])}(?!\w)", raw, re.IGNORECASE):  # a short name of this log
        return _put(log, (*log.rows[:row], answer.strip(), *log.rows[row:]), row + 1)
    if re.fullmatch(r"[0-9]{1,2}", low) and 1 <= int(low) <= len(asked.choices):
        return _put(log, (*log.rows[:row], chosen(raw, asked.choices[int(low) - 1]), *log.rows[row + 1 :]), row)
    if not asked.danger and set(asked.choices) <= {REMARK} and _footage(raw) and _footage(raw) == _footage(answer):
        return _put(log, (*log.rows[:row], chosen(raw, answer.strip()), *log.rows[row + 1 :]), row)
    return None


def _footage(row: str) -> str:
    """The footage that a row begins with, as it was typed."""
    return m[0] if (m := re.match(r"\d+(?:\.\d+)?(?:\s*-\s*\d+(?:\.\d+)?)?", row.strip())) else ""


def chosen(raw: str, choice: str) -> str:
    """The row with what it means in front, and what was typed behind.

    >>> chosen("30 roots 50", "30 roots 50%"), chosen("27 shadow", "note")
    ('30 roots 50% ; typed: 30 roots 50', '# 27 shadow')
    """
    return f"# {raw}" if choice == REMARK else f"{choice} ; {TYPED} {raw.replace(';', ',').strip()}"


def wrong(sheet: Sheet) -> tuple[Problem, ...]:
    """What is still to mend, warnings left out."""
    return tuple(p for p in (*sheet.problems, *sheet.hanging) if p.level is not Level.WARNING)
