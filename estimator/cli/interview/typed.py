"""A log so far and a line as typed in, the log with it out, and what to say: read, kept as it is, or one thing asked."""

import re
from dataclasses import replace

from estimator.cli.interview.loose import as_remark, knows_a_word, names_apart
from estimator.cli.interview.rows import HEADING, KNOWN_WORDS, Asked, Typed, put
from estimator.cli.interview.sheet import NOT_READ
from estimator.fieldnotes.answers import LONGEST, nearest
from estimator.fieldnotes.tidy import tidied, trade_shortenings
from estimator.fieldnotes.where import Where, read_where
from estimator.model.lengths import plain_marks
from estimator.model.line import FINDING_WORDS

_HEADING_PART = re.compile(
    r"\s*(?:(?:riser|drop|zero at|before|after)\s|surface\b|no riser\b|with (?:the )?flow\b|against (?:the )?flow\b|"
    r"from end\b|to (?:the )?(?:house|street|main|city|tank)\b)", re.IGNORECASE
)  # fmt: skip
_LAST_WORD = re.compile(r"\s*(?:no|not that|make it|make that|call it|call)[ ,:]+(?=\S)", re.IGNORECASE)
_AMOUNT_ONLY = re.compile(
    r"\s*~?\d[\d./ -]*\s*(?:%|percent|in|inch|inches|\"|'')\??\s*(?:wide|deep|up|down|left|right|at\s+\d[\d -]*)?",
    re.IGNORECASE,
)
_READING_LAST = re.compile(
    r"((?!pass\b)[A-Za-z][^;]*?[A-Za-z%\"])[\s,]+(?:at\s+|@\s*)?(\d{1,4}\.\d+(?:\s*(?:-|to)\s*\d{1,4}(?:\.\d+)?)?)",
    re.IGNORECASE | re.ASCII,
)
_FINDING = re.compile(
    rf"(?<![\w'])(?:{'|'.join(FINDING_WORDS)}|rts|root|scl|grv|ofs|crk|belly|dip)s?(?![\w'])", re.IGNORECASE
)
_LOCATED = re.compile(r"\s*(?:loc|locate|located|loc'd|same)\b", re.IGNORECASE)
_ENDS = ("", "y", "yes", "ok")
_AS_NOTE = ("-", "no", "n", "note", "remark", ";", "skip")


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
    clean = _reading_first(clean)
    return _corrected(log, clean) or _completed(log, clean) or _heading_first(log, clean) or _new(log, clean)


def without_last(log: Typed) -> Typed:
    """The log without its last row."""
    return replace(log, rows=log.rows[:-1], row=None, problems=(), asked=None, learned=None, unread=None, refused="")


# ── a line of its own ─────────────────────────────────────────────────────────────────────────


def _new(log: Typed, clean: str) -> Typed:
    rooted, again = _rooted(log, clean), log.unread
    if rooted != clean:
        return put(replace(log, rows=(*log.rows, rooted)), len(log.rows), rooted)
    if again is not None and _same_reading(log.rows[again].removeprefix(NOT_READ), clean):
        return put(log, again, clean)  # the whole line once more, put right
    note, names = names_apart(clean)
    if note and names and not any(HEADING.match(row) for row in log.rows):
        log = replace(log, rows=(*log.rows, f"# {note}"))
        clean = names
    return put(replace(log, rows=(*log.rows, clean)), len(log.rows), clean)


def _rooted(log: Typed, clean: str) -> str:
    """`loc …` and `same …` belong to the reading just typed, also where its line could not be read."""
    same = re.match(r"\s*same\b", clean, re.IGNORECASE)
    if not _LOCATED.match(clean):
        return clean
    for row in reversed(log.rows):
        where = read_where(tidied(row.removeprefix(NOT_READ)))
        if isinstance(where, Where) and not _AMOUNT_ONLY.fullmatch(row.removeprefix(NOT_READ)):
            reading = row.removeprefix(NOT_READ)[: where.end].strip()
            return f"{reading} {clean[same.end() :] if same else clean}" if row.startswith(NOT_READ) else clean
    return clean


# ── the answer to what a word means ───────────────────────────────────────────────────────────


def _told(log: Typed, asked: Asked, answer: str) -> Typed:
    """Enter takes what was offered, a known word is remembered, a dash makes a remark; else it is the next line."""
    log = replace(log, asked=None)
    named = re.fullmatch(rf"\s*{re.escape(asked.word)}\s*=\s*([A-Za-z][A-Za-z ]*)", answer, re.IGNORECASE)
    if named:  # a short name of this job
        rows = (*log.rows[: asked.row], answer.strip(), *log.rows[asked.row :])
        return put(replace(log, rows=rows), asked.row + 1, log.rows[asked.row].removeprefix(NOT_READ))
    raw = log.rows[asked.row].removeprefix(NOT_READ)
    low = answer.lower().strip()
    if low in _ENDS and not asked.offer and asked.alone:
        return replace(log, refused="left as it is, to be mended: list names it")
    if low in _AS_NOTE or (low in _ENDS and not asked.offer):
        return put(log, asked.row, as_remark(raw, asked.word, asked.column))
    meaning = asked.offer if low in _ENDS else _meant(low)
    if not meaning:
        return typed(log, answer)
    words = {**log.words, asked.word.lower(): meaning}
    return replace(put(replace(log, words=words), asked.row, raw), learned=(asked.word.lower(), meaning))


def _meant(low: str) -> str:
    """A known word, one of its shortenings, or one nearly so; nothing for anything else."""
    if low in map(str.lower, KNOWN_WORDS):
        return low
    if low in trade_shortenings():
        return trade_shortenings()[low]
    return nearest(low, KNOWN_WORDS) if re.fullmatch(r"[a-z][a-z ]{2,20}", low) else ""


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
        return put(log, last, new)
    return put(log, last, f"{old[: was.end]} no {new}{old[was.end :]}")


def _completed(log: Typed, clean: str) -> Typed | None:
    """The missing part of the row before: an amount, a reading, or what a pass heading left out."""
    if _HEADING_PART.match(clean):
        heading = next((n for n in reversed(range(len(log.rows))) if HEADING.match(log.rows[n])), None)
        if heading is not None:
            body, mark, note = log.rows[heading].partition(";")
            return put(log, heading, f"{body.rstrip()}, {clean}{' ;' + note if mark else ''}")
    if not log.rows or HEADING.match(log.rows[-1]) or _LOCATED.match(clean):
        return None
    waits = log.unread == len(log.rows) - 1
    if not waits and not _ever_read(log, len(log.rows) - 1):
        return None
    old = log.rows[-1].removeprefix(NOT_READ)
    amount = bool(_AMOUNT_ONLY.fullmatch(clean)) or (waits and bool(re.match(r"at\s+\d", clean, re.IGNORECASE)))
    tried = (put(log, len(log.rows) - 1, both) for both in _both(log, old, clean, waits, amount))
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
        within = [new for new in (_swapped(old, clean), _inserted(old, clean)) if new] if waits else []
        return [*within, f"{old} {clean}"]
    return [f"{old} {clean}"] if waits and plain_marks(clean)[:1].isalpha() else []


def _inserted(old: str, clean: str) -> str:
    """The amount right after the first finding of the row: `26 roots a few at joint` and `30%`; "" where there is none.

    >>> _inserted("26 roots a few at joint", "30%")
    '26 roots 30%, a few at joint'
    """
    found = _FINDING.search(old.partition(";")[0])
    if not found:
        return ""
    rest = old[found.end() :].strip(" ,")
    return f"{old[: found.end()]} {clean}" + (f", {rest}" if rest else "")


def _swapped(old: str, clean: str) -> str:
    """`scale 35, drags` and `35%` as `scale 35%, drags`; `5 to 7` and `at 5-7` likewise; "" when the number is not there."""
    clock = re.match(r"at\s+(\d{1,2})\s*(?:-|to)\s*(\d{1,2})", clean, re.IGNORECASE)
    number = re.match(r"~?(\d+(?:\.\d+)?)", clean)
    if clock:
        bare = rf"{clock[1]}\s*(?:-|to)\s*{clock[2]}"
    elif number:
        bare = re.escape(number[1])
    else:
        return ""
    begins = read_where(tidied(old))
    start = begins.end if isinstance(begins, Where) else 0
    found = re.compile(rf"(?<![\w.'/]){bare}(?![\w.%'\"/])").search(old, start)
    return f"{old[: found.start()]}{clean}{old[found.end() :]}" if found else ""


def _heading_first(log: Typed, clean: str) -> Typed | None:
    """A heading typed after readings that had none belongs above them."""
    if not HEADING.match(clean) or log.about.given or any(HEADING.match(row) for row in log.rows):
        return None
    first = next((n for n, row in enumerate(log.rows) if row.removeprefix(NOT_READ)[:1].isdigit()), None)
    if first is None:
        return None
    return put(replace(log, rows=(*log.rows[:first], clean, *log.rows[first:])), first, clean)


def _reading_first(clean: str) -> str:
    """`hole 2in at 18.6` with its reading in front. Only a number with a point is one for sure."""
    match = _READING_LAST.fullmatch(clean)
    return f"{match[2]} {match[1]}" if match and knows_a_word(match[1]) else clean


def _same_reading(old: str, new: str) -> bool:
    a, b = read_where(tidied(old)), read_where(tidied(new))
    return isinstance(a, Where) and isinstance(b, Where) and (a.from_ft, a.to_ft) == (b.from_ft, b.to_ft)
