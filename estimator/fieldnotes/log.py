"""A log as typed comes in; runs with their entries, in the order written, and every line that is asked back, go out.

A line in standard words is read as it stands. Any other is understood (`understand`): its standard words are read, it is asked
back, or it is kept as a remark. Nothing typed is refused for its form, and nothing is lost.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from estimator.fieldnotes.heading import Heading, heading_problems, read_heading
from estimator.fieldnotes.lexicon import lexicon
from estimator.fieldnotes.logproblems import ASKED, GAS_ASKED, NO_PASS, NOTHING_READ
from estimator.fieldnotes.standard import AT_ONE_PLACE, Said, suspicious, tied
from estimator.fieldnotes.things import Thing
from estimator.fieldnotes.tidy import Tidied, digits_for_words, tidied, trade_shortenings, whole_words
from estimator.fieldnotes.understand import LONGEST_LINE, Context, Meaning, understand
from estimator.fieldnotes.where import Where
from estimator.model.problem import Place, Problem

NOT_READ = "#?"
"""Began a line that an earlier version could not read; it is read again."""
_NAME = re.compile(r"^\s*([A-Za-z][\w/' ]{0,20}?)\s*=\s*([A-Za-z][\w' .-]*?)\s*$")
_UNCLEAR = re.compile(r"^\s*(?:~?(\d+(?:\.\d+)?)(?:-(\d+(?:\.\d+)?))?\s+)?unclear( utility)?:\s*(.*)$")
_HEADING_PART = re.compile(
    r"\s*(?:(?:riser|drop|zero at|before|after)\s|surface\b|no riser\b|with (?:the )?flow\b|against (?:the )?flow\b|"
    r"from end\b|to (?:the )?(?:house|street|main|city|tank)\b)", re.IGNORECASE
)  # fmt: skip
_DANGERS = re.compile(
    r"\b(?:gas|cross ?bore|electric|power|tracer|yellow|wire|utility|crossing|tendon)\b", re.IGNORECASE
)
_AMOUNT_ONLY = re.compile(
    r"\s*~?\d[\d./ -]*\s*(?:%|pct|percent|in|inch|inches|\"|'')\s*(?:wide|deep)?\s*", re.IGNORECASE
)
MOST_ASKED_SHOWN = 60  # letters of a line in its question


@dataclass(frozen=True, slots=True)
class Entry:
    """One thing at one place of a run, in footage. `leg`: starts, still, ends, to end or ""."""

    from_ft: float
    to_ft: float | None
    leg: str
    about: bool
    thing: Thing
    place: Place
    text: str
    back: bool
    note: str


@dataclass(frozen=True, slots=True)
class Same:
    """`12.1 = branch`: at this reading lies something an earlier run saw."""

    from_ft: float
    to_ft: float | None
    what: str
    place: Place


@dataclass(frozen=True, slots=True)
class Asked:
    """A line that is asked back: where it may lie (footage; None where it names none), what is asked, what may be meant."""

    from_ft: float | None
    to_ft: float | None
    text: str
    question: str
    choices: tuple[str, ...]
    place: Place
    back: bool = False
    later: bool = False  # of a stretch that began: its amount may still come
    utility: bool = False  # known to be one that may be gas

    @property
    def danger(self) -> bool:
        """It may be gas or another utility."""
        return self.utility or bool(_DANGERS.search(self.text) or any(_DANGERS.search(c) for c in self.choices))


@dataclass(slots=True)
class LogPass:
    heading: Heading
    entries: list[Entry] = field(default_factory=list)
    sames: list[Same] = field(default_factory=list)
    asked: list[Asked] = field(default_factory=list)


@dataclass(slots=True)
class Log:
    """What one or more texts of a line hold. `names` are the short names given on top; `left` what a line said besides."""

    passes: list[LogPass] = field(default_factory=list)
    names: dict[str, str] = field(default_factory=dict)
    notes: list[str] = field(default_factory=list)
    found: list[Problem] = field(default_factory=list)
    rows: int = 0  # lines that are neither empty nor remarks
    understood: dict[tuple[str, int], tuple[str, ...]] = field(default_factory=dict)  # file, line: standard words

    @property
    def asked(self) -> list[Asked]:
        return [asked for p in self.passes for asked in p.asked]

    @property
    def problems(self) -> list[Problem]:
        """What is wrong with the words, and each line that is asked back."""
        asked = [_question(a) for a in self.asked]
        headings = [problem for p in self.passes for problem in heading_problems(p.heading)]
        return [*self.found, *headings, *asked]


def _question(asked: Asked) -> Problem:
    shown = asked.text if len(asked.text) <= MOST_ASKED_SHOWN else asked.text[:MOST_ASKED_SHOWN] + "…"
    rows = [c for c in asked.choices if c != "note"]
    write = f"Write one of: {' | '.join(rows)}." if rows else "Write it in other words, with its footage."
    kind = GAS_ASKED if asked.danger else ASKED
    return kind(asked.place, text=shown, question=asked.question.rstrip("?."), write=write)


@dataclass(slots=True)
class _Last:
    """The line before: what it said, and where its entries begin, so that a correction can take it back."""

    rows: tuple[str, ...] = ()
    run: LogPass | None = None
    entries: int = 0
    sames: int = 0
    asked: Asked | None = None
    raw: str = ""


class LogReader:
    """Reads line by line; `first_row` and `first_column` say where the text stands in its file."""

    def __init__(
        self, log: Log, file: str, words: Mapping[str, str], given: Heading | None, bore_in: float = 4.0
    ) -> None:
        self.log, self.file, self.given, self.bore_in = log, file, given, bore_in
        self.words = _safe(words)
        self.here: LogPass | None = None
        self.back = False
        self.last: Where | None = None
        self.before = _Last()
        self.told_no_pass = False

    def read(self, text: str, first_row: int = 1, indent: int = 0) -> None:
        lines = text.split("\n")
        if self.given is not None and not any(_is_heading(line) for line in lines[: _first_reading(lines)]):
            self._begin(self.given)
        for number, line in enumerate(lines):
            self._line(line.rstrip("\r"), Place(self.file, first_row + number, 1 + (indent if number == 0 else 0)))

    def _begin(self, heading: Heading) -> None:
        self.here = LogPass(heading)
        self.log.passes.append(self.here)
        self.back, self.last, self.before = False, None, _Last()

    # ── one line ──────────────────────────────────────────────────────────────────────────────

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
        if len(body) > LONGEST_LINE and not _is_heading(body):
            self._understand(body, raw, note.strip(), place)
            return
        own = tidied(body)
        for words in (self.log.names, self.words):  # the nearest meaning first
            own = whole_words(own, words)
        line = whole_words(digits_for_words(own), trade_shortenings())
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

    def _heading(self, line: Tidied, note: str, place: Place) -> None:
        begins = re.match(r"\s*pass\b", line.text, re.IGNORECASE)
        assert begins is not None
        heading, problems = read_heading(line.cut(begins.end(), len(line.text)), place, note)
        self.log.found += problems
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

    def _filled(self, heading: Heading) -> Heading:
        """What the heading leaves out comes from the keys of the line, for its first run only."""
        if self.given is None or (self.log.passes and self.here is not self.log.passes[0]):
            return heading
        return replace(
            heading,
            flow=heading.flow or self.given.flow,
            riser_ft=heading.riser_ft if heading.riser_ft is not None else self.given.riser_ft,
        )

    def _names(self, raw: str) -> bool:
        parts = [part for part in re.split(r"[;,]", raw) if part.strip()]
        found = [_NAME.match(part) for part in parts]
        if not all(found):
            return False
        self.log.names |= _safe({m[1].strip().lower(): m[2].strip() for m in found if m})
        return True

    def _place(self, place: Place, line: Tidied, at: int) -> Place:
        return Place(place.file, place.line, (place.column or 1) - 1 + line.column(at))

    def _standard(self, line: Tidied) -> Said | None:
        """The line in standard words, or None where it is not, or where what it says cannot be."""
        said = tied(line, self.last, frozenset(self.log.names.values()))
        if said is None or suspicious(said, line.text, self._context()):
            return None
        return said

    def _take(
        self,
        saids: list[Said],
        line: Tidied,
        raw: str,
        note: str,
        place: Place,
        rows: tuple[str, ...],
        column: bool = True,
    ) -> None:
        run = self._run(place)
        self._answered(saids)
        self.before = _Last(rows, run, len(run.entries), len(run.sames), None, raw)
        for said in saids:
            where = said.where
            if where.from_ft >= 0:
                self.last = where
            if said.same:
                run.sames.append(Same(where.from_ft, where.to_ft, said.same, place))
            for thing in said.things:
                at = (
                    self._place(place, line, thing.at)
                    if column
                    else Place(place.file, place.line, (place.column or 1) + thing.at)
                )
                leg = thing.values.pop("leg", "") or (
                    "to end"
                    if said.to_end
                    else "starts"
                    if where.open_end and thing.word.word not in AT_ONE_PLACE
                    else ""
                )
                run.entries.append(
                    Entry(where.from_ft, where.to_ft, leg, where.about, thing, at, raw.rstrip(), self.back, note)
                )
        self.log.understood[place.file, place.line or 0] = rows

    def _run(self, place: Place) -> LogPass:
        if self.here is None:
            if not self.told_no_pass:
                self.log.found.append(NO_PASS(place))
            self.told_no_pass = True
            self._begin(Heading(access="?", flow="with flow", surface=True, place=place))
        assert self.here is not None
        return self.here

    # ── a line in other words ─────────────────────────────────────────────────────────────────

    def _context(self) -> Context:
        runs = self.log.passes
        entries = self.here.entries if self.here else []
        opened: set[str] = set()
        for e in entries:
            if e.leg == "starts":
                opened.add(e.thing.word.word)
            elif e.leg == "ends":
                opened.discard(e.thing.word.word)
        zones = [e.thing.word.word for e in entries if e.thing.word.kind == "zone"]
        far = [r for p in runs for e in p.entries for r in (e.from_ft, e.to_ft) if r is not None]
        before = self.before.rows
        if not before and self.before.asked is not None:
            before = tuple(c for c in self.before.asked.choices if c != "note")[:1]
        return Context(
            bore_in=self.bore_in,
            last_ft=self.last.from_ft if self.last else None,
            furthest_ft=max(far, default=0.0),
            zone=zones[-1] if zones else "",
            before=before,
            started=frozenset(opened),
            runs=len(runs),
            seen=frozenset(e.thing.word.word for p in runs[:-1] for e in p.entries),
            names=tuple(self.log.names.values()),
        )

    def _understand(self, text: str, raw: str, note: str, place: Place) -> None:
        context = self._context()
        meaning = understand(text, context)
        if self.before.asked is not None and self._completes(meaning, text, raw, note, place, context):
            return
        if meaning.asked and self.before.rows and self.before.run is not None and _AMOUNT_ONLY.fullmatch(text):
            meaning = understand(f"make that {text}", context)
        if meaning.instead and not meaning.asked:
            self._take_back()
            if not meaning.rows:
                self.before = _Last()
                return
        if meaning.asked:
            self._ask(meaning, raw, place, context)
        elif meaning.rows:
            self._rows(meaning, raw, note, place)
        else:
            self.log.notes.append(raw.strip())

    def _rows(self, meaning: Meaning, raw: str, note: str, place: Place) -> None:
        first = meaning.rows[0]
        if first.startswith("pass "):
            self._heading(tidied(first), note, place)
            return
        if first == "back":
            self.back = True
            return
        left = "; ".join(part for part in (note, meaning.left) if part)
        saids = []
        for row in meaning.rows:
            line = tidied(row)
            said = tied(line, self.last, frozenset(self.log.names.values()))
            if said is None:
                self._ask(replace(meaning, asked="what is there?", choices=()), raw, place, self._context())
                return
            saids.append(said)
        self._opened(saids)
        self._take(saids, tidied(raw), raw, left, place, meaning.rows, column=False)

    def _ask(self, meaning: Meaning, raw: str, place: Place, context: Context) -> None:
        run = self._run(place)
        where = next((w for c in meaning.choices if c != "note" and (w := _where_of(c)) is not None), None)
        from_ft, to_ft = where if where else (meaning.at, meaning.to)
        asked = Asked(from_ft, to_ft, raw.strip(), meaning.asked, meaning.choices, place, self.back)
        run.asked.append(asked)
        self.before = _Last((), run, len(run.entries), len(run.sames), asked, raw)
        if from_ft is not None:
            self.last = Where(from_ft, to_ft, False, False, 0)

    def _unclear(self, match: re.Match[str], place: Place) -> None:
        run = self._run(place)
        low = float(match[1]) if match[1] else None
        high = float(match[2]) if match[2] else None
        meaning = understand(match[4].partition(";")[0], self._context())
        choices = meaning.choices or meaning.rows
        run.asked.append(
            Asked(
                low,
                high,
                match[4].strip(),
                meaning.asked or "what is there?",
                choices,
                place,
                self.back,
                utility=bool(match[3]),
            )
        )

    # ── lines that belong together ────────────────────────────────────────────────────────────

    def _take_back(self) -> None:
        """The line before no longer counts."""
        last = self.before
        if last.run is not None:
            del last.run.entries[last.entries :]
            del last.run.sames[last.sames :]
            if last.asked is not None and last.asked in last.run.asked:
                last.run.asked.remove(last.asked)

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

    def _answered(self, saids: list[Said]) -> None:
        """A line typed again, whole, stands for the one before it that was asked back."""
        asked = self.before.asked
        if asked is None or self.before.run is None or asked.from_ft is None:
            return
        kinds = {word for c in asked.choices for word in c.replace(",", " ").split()[1:3]}
        for said in saids:
            again = abs(said.where.from_ft - asked.from_ft) < 0.01 and any(t.word.word in kinds for t in said.things)
            if again and asked in self.before.run.asked:
                self.before.run.asked.remove(asked)

    def _opened(self, saids: list[Said]) -> None:
        """`22 sag` waited for how much; now that it goes on or ends, it was where it starts."""
        run = self.here
        if run is None:
            return
        going = {t.word.word for s in saids for t in s.things if t.values.get("leg") in ("ends", "still")}
        for asked in reversed(list(run.asked)):
            kind = next((w for w in going if any(f" {w} " in f"{c} " for c in asked.choices)), None)
            if kind and asked.to_ft is None and asked.from_ft is not None:
                line = tidied(f"{asked.from_ft:g} {kind} starts")
                said = tied(line, None, frozenset())
                if said is not None:
                    run.asked.remove(asked)
                    thing = said.things[0]
                    thing.values.pop("leg", None)
                    run.entries.append(
                        Entry(asked.from_ft, None, "starts", False, thing, asked.place, asked.text, self.back, "")
                    )
                return


def _safe(words: Mapping[str, str]) -> dict[str, str]:
    """A job's own words without those that would stand over a danger, or over any word the lexicon knows another meaning of."""
    lex = lexicon()
    return {
        short: meaning
        for short, meaning in words.items()
        if not _DANGERS.search(short) and not lex.guarded(tuple(short.lower().replace("'", "").split()))
    }


def _where_of(row: str) -> tuple[float, float | None] | None:
    match = re.match(r"~?(\d+(?:\.\d+)?)(?:-(\d+(?:\.\d+)?))?\s", row)
    return (float(match[1]), float(match[2]) if match[2] else None) if match else None


def _is_heading(line: str) -> bool:
    return bool(re.match(r"\s*pass\b(?!\s*=)", line, re.IGNORECASE))


def _first_reading(lines: list[str]) -> int:
    """How many lines stand before the first that begins with a digit."""
    return next((n for n, line in enumerate(lines) if line.lstrip()[:1].isdigit()), len(lines))


def nothing_read(log: Log, place: Place) -> list[Problem]:
    """A log without footage says nothing of the drain."""
    return [] if any(p.entries or p.sames for p in log.passes) else [NOTHING_READ(place)]
