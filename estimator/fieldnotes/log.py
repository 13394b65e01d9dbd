"""A log as typed comes in; runs with their entries, in the order written, and every line that is asked back, go out.

A line in standard words is read as it stands. Any other is understood (`understand`): its standard words are read, it is asked
back, or it is kept as a remark. Nothing typed is refused for its form, and nothing is lost."""

import re
from dataclasses import replace

from estimator.fieldnotes.heading import HEADING_TWICE, SAW_NOTHING, heading_problems, read_heading, said_again
from estimator.fieldnotes.log_taking import LogTaking, _safe
from estimator.fieldnotes.logbook import Log, _Last
from estimator.fieldnotes.logproblems import NOTHING_READ, WHAT
from estimator.fieldnotes.meaning import Context, Meaning
from estimator.fieldnotes.standard import Said, suspicious, tied
from estimator.fieldnotes.tidy import Tidied, standard_words, tidied, whole_words
from estimator.fieldnotes.understand import LONGEST_LINE, understand
from estimator.model.problem import Place, Problem
from estimator.model.say import Say

NOT_READ = "#?"
"""Began a line that an earlier version could not read; it is read again."""
TYPED = "typed:"
"""Begins a remark that keeps what was typed before a question was answered."""
_NAME = re.compile(r"^\s*([A-Za-z][\w/' ]{0,20}?)\s*=\s*([A-Za-z][\w' .-]*?)\s*$")
_UNCLEAR = re.compile(r"^\s*(?:~?(\d+(?:\.\d+)?)(?:-(\d+(?:\.\d+)?))?\s+)?unclear( utility)?:\s*(.*)$")
_HEADING_PART = re.compile(
    r"\s*(?:(?:riser|drop|zero at|before|after)\s|surface\b|no riser\b|with (?:the )?flow\b|against (?:the )?flow\b|"
    r"from end\b|to (?:the )?(?:house|street|main|city|tank)\b)", re.IGNORECASE
)  # fmt: skip
_AMOUNT_ONLY = re.compile(
    r"\s*~?(?:\d[ -]\d/\d+|\d+(?:\.\d+)?|\d/\d+|\.\d+)\s*(?:%|pct|percent|in|inch|inches|\"|'')\s*(?:wide|deep)?\s*",
    re.IGNORECASE,
)


class LogReader(LogTaking):
    """Reads line by line; `first_row` and `first_column` say where the text stands in its file."""

    def read(self, text: str, first_row: int = 1, indent: int = 0) -> None:
        lines = text.split("\n")
        if self.given is not None and not any(_is_heading(line) for line in lines[: _first_reading(lines)]):
            self._begin(self.given)
        for number, line in enumerate(lines):
            self._line(line.rstrip("\r"), Place(self.file, first_row + number, 1 + (indent if number == 0 else 0)))

    def _line(self, raw: str, place: Place) -> None:
        raw = raw.removeprefix(NOT_READ)
        if not raw.strip() or raw.lstrip().startswith("#"):
            if raw.strip():
                self.log.notes.append(raw.strip().lstrip("# "))
            return
        self.log.rows += 1
        if self._names(raw):
            return
        if unclear := _UNCLEAR.match(raw):
            self._unclear(unclear, place)
            return
        body, _, note = raw.partition(";")
        if note and not note.lstrip().startswith(TYPED) and self._second(note):
            self._line(body, place)
            first = self.log.understood.get((place.file, place.line or 0), ())
            self._line(note, place)
            self.log.understood[place.file, place.line or 0] = (*first, *self.before.rows)
            return
        if len(body) > LONGEST_LINE and not _is_heading(body):
            self._understand(body, raw, note.strip(), place)
            return
        own = tidied(body.rstrip(" .,"))
        for words in (self.log.names, self.words):  # the nearest meaning first
            own = whole_words(own, words)
        line = standard_words(own)
        if _is_heading(line.text):
            self._heading(line, note.strip(), place)
        elif re.fullmatch(r"\s*back\.?\s*", line.text, re.IGNORECASE):
            self.back = True
        elif self._heading_part(line.text):
            return
        elif (said := self._standard(line)) is not None:
            self._opened([said])
            self._take([said], line, raw, note.strip(), place, (line.text.strip(),))
        else:
            self._understand(own.text, raw, note.strip(), place)

    def _second(self, note: str) -> bool:
        """Whether what stands behind a `;` has a reading and a thing of its own: `lav 2in rt @ 22; shwr 2in rt @ 26`."""
        found = understand(note, replace(self._context(), last_ft=None, before=()))
        said = found.choices if found.asked else found.rows
        written = not found.asked or any(c.isdigit() for c in note)  # `locator, three tries alike`
        reads = written and any(row[:1].isdigit() and not row.endswith(" loc") for row in said)
        return reads and not found.instead

    def _heading(self, line: Tidied, note: str, place: Place) -> None:
        begins = re.match(r"\s*pass\b", line.text, re.IGNORECASE)
        assert begins is not None
        heading, problems = read_heading(line.cut(begins.end(), len(line.text)), place, note)
        self.log.found += problems
        run = self.here if self.here and not self.here.said and self.here.heading.text else None
        if run is not None and (once := said_again(run.heading, heading)) is not None:
            run.heading = once
            self.log.found.append(HEADING_TWICE(place, text=heading.text))
            return
        self._begin(self._filled(heading))

    def _heading_part(self, text: str) -> bool:
        """`riser 28in` or `with flow` on a line of its own, right after the heading that lacked it."""
        if self.here is None or not _HEADING_PART.match(text):
            return False
        if (self.here.entries or self.here.asked) and not heading_problems(self.here.heading):
            return False
        old = self.here.heading
        more, problems = read_heading(tidied(f"{old.text}, {text.strip()}"), old.place, old.note)
        if problems:
            return False
        self.here.heading = self._filled(more) if len(self.log.passes) == 1 else more
        return True

    def _names(self, raw: str) -> bool:
        parts = [part for part in re.split(r"[;,]", raw) if part.strip()]
        found = [_NAME.match(part) for part in parts]
        if not all(found):
            return False
        self.log.names |= _safe({m[1].strip().lower(): m[2].strip() for m in found if m})
        return True

    def _standard(self, line: Tidied) -> Said | None:
        """The line in standard words, or None where it is not, or where what it says cannot be."""
        said = tied(line, self.last, frozenset(self.log.names.values()))
        if said is None or suspicious(said, line.text, self._context()):
            return None
        return said

    def _understand(self, text: str, raw: str, note: str, place: Place) -> None:
        context = self._context()
        meaning = understand(text, context)
        if self.before.asked is not None and self._completes(meaning, text, raw, note, place, context):
            return
        if meaning.asked and self.before.rows and self.before.run is not None and _AMOUNT_ONLY.fullmatch(text):
            meaning = understand(f"make that {text}", context)
        if meaning.instead and not meaning.asked:
            note = "; ".join(dict.fromkeys(part for part in (*self._take_back(), note) if part))
            if not meaning.rows:
                self.before = _Last()
                return
        if meaning.gone is not None and not self._struck(*meaning.gone):
            meaning = replace(meaning, asked=Say.of("which line is to be taken back?"), gone=None)
        if meaning.asked:
            self._ask(meaning, raw, place, context)
        elif meaning.gone is not None:
            self.log.notes.append(raw.strip())
        elif meaning.rows:
            self._rows(meaning, raw, note, place)
        else:
            self.log.notes.append(raw.strip())

    def _rows(self, meaning: Meaning, raw: str, note: str, place: Place) -> None:
        first = meaning.rows[0]
        if first == "back" or first.startswith("pass "):
            if first == "back":
                self.back = True
            else:
                self._heading(tidied(first), note, place)
            if meaning.rows[1:]:
                self._rows(replace(meaning, rows=meaning.rows[1:]), raw, note, place)
            return
        left = "; ".join(part for part in (note, meaning.left) if part)
        saids = []
        for row in meaning.rows:
            line = tidied(row)
            said = tied(line, self.last, frozenset(self.log.names.values()))
            if said is None or (meaning.instead and suspicious(said, row, self._context())):
                self._ask(replace(meaning, asked=WHAT, choices=()), raw, place, self._context())
                return
            saids.append(said)
        if left and not any(said.things for said in saids):
            self.log.notes.append(raw.strip())
        self._opened(saids)
        self._take(saids, tidied(raw), raw, left, place, meaning.rows, column=False)

    def _completes(self, meaning: Meaning, text: str, raw: str, note: str, place: Place, context: Context) -> bool:
        """What the line before lacked: an amount, a footage, a size. Both are read as one."""
        asked = self.before.asked
        assert asked is not None
        if (meaning.rows and not meaning.asked) or meaning.instead:
            return False
        if len(text) > 80 or len(asked.text) > 200:
            return False
        old = asked.text.partition(";")[0]
        bare = re.match(r"\s*~?(\d+(?:\.\d+)?)", text)
        within = re.compile(rf"(?<![\w.'/-]){re.escape(bare[1])}(?![\w.%'\"/-])") if bare else None
        swapped = [within.sub(text.strip(), old, count=1)] if within and within.search(old) else []
        for both in (*swapped, f"{old}, {text}", f"{old} {text}", f"{text} {old}"):
            found = understand(both, context)
            if found.rows and not found.asked and not found.instead:
                self._take_back()
                self._rows(found, f"{asked.text} / {raw.strip()}", note, asked.place)
                return True
        return False


def _is_heading(line: str) -> bool:
    return bool(re.match(r"\s*pass\b(?!\s*=)", line, re.IGNORECASE))


def _first_reading(lines: list[str]) -> int:
    """How many lines stand before the first that begins with a digit."""
    return next((n for n, line in enumerate(lines) if line.lstrip()[:1].isdigit()), len(lines))


def nothing_read(log: Log, place: Place) -> list[Problem]:
    """A log without footage says nothing of the drain, nor a pass without one; of a file that could not be read its own problem tells."""
    if log.unread:
        return []
    if not any(p.entries or p.sames for p in log.passes):
        return [NOTHING_READ(place)]
    return [SAW_NOTHING(p.heading.place, text=p.heading.text) for p in log.passes if not p.said]
