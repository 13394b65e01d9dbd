"""A log as typed comes in; passes with their entries, in the order written, and every problem go out."""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from estimator.fieldnotes.heading import Heading, heading_problems, read_heading
from estimator.fieldnotes.logproblems import (
    AMOUNT,
    BARE_NUMBER,
    EXAMPLES,
    NEEDS,
    NO_PASS,
    NO_READING,
    NOTHING_SAID,
    SAME_AS_NOTHING,
    STRAY,
    UNKNOWN_WORD,
    near_word,
    swallowed,
    together,
)
from estimator.fieldnotes.things import Thing, read_thing_word, read_things
from estimator.fieldnotes.tidy import Tidied, digits_for_words, tidied, trade_shortenings, whole_words
from estimator.fieldnotes.where import Bad, Where, read_where
from estimator.model.problem import Place, Problem

_NAME = re.compile(r"^\s*([A-Za-z][\w/' ]{0,20}?)\s*=\s*([A-Za-z][\w' .-]*?)\s*$")
_TIE = re.compile(r"\s*=\s*(flag\s+\w+|[\d.]+|[A-Za-z][\w' ]*?)(?=\s*(?:,|:|$|\s{2,}|\d|\?))", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Entry:
    """One thing at one place of a pass, in reel readings. `leg`: starts, still, ends or ""."""

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
    """`12.1 = branch`: at this reading lies something an earlier pass saw."""

    from_ft: float
    to_ft: float | None
    what: str
    place: Place


@dataclass(slots=True)
class LogPass:
    heading: Heading
    entries: list[Entry] = field(default_factory=list)
    sames: list[Same] = field(default_factory=list)


@dataclass(slots=True)
class Log:
    """What one or more texts of a line hold. `names` are the short names given on top."""

    passes: list[LogPass] = field(default_factory=list)
    names: dict[str, str] = field(default_factory=dict)
    notes: list[str] = field(default_factory=list)
    problems: list[Problem] = field(default_factory=list)


class LogReader:
    """Reads line by line; `first_row` and `first_column` say where the text stands in its file."""

    def __init__(self, log: Log, file: str, words: Mapping[str, str], given: Heading | None) -> None:
        self.log, self.file, self.words, self.given = log, file, words, given
        self.here: LogPass | None = None
        self.back = False
        self.last: Where | None = None
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
        self.log.problems += heading_problems(heading)
        self.back, self.last = False, None

    def _line(self, raw: str, place: Place) -> None:
        body, _, note = raw.partition(";")
        if not raw.strip() or raw.lstrip().startswith("#"):
            if raw.strip():
                self.log.notes.append(raw.strip().lstrip("# "))
            return
        if self._names(raw):
            return
        line = digits_for_words(tidied(body))
        for words in (self.log.names, self.words, trade_shortenings()):  # the nearest meaning first
            line = whole_words(line, words)
        if _is_heading(line.text):
            begins = re.match(r"\s*pass\b", line.text, re.IGNORECASE)
            assert begins is not None
            heading, problems = read_heading(line.cut(begins.end(), len(line.text)), place, note.strip())
            self.log.problems += problems
            self._begin(self._filled(heading))
        elif re.fullmatch(r"\s*back\.?\s*", line.text, re.IGNORECASE):
            self.back = True
        else:
            self._reading(line, raw, note.strip(), place)

    def _filled(self, heading: Heading) -> Heading:
        """What the heading leaves out comes from the keys of the line, for its first pass only."""
        if self.given is None or self.log.passes:
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
        self.log.names |= {m[1].strip().lower(): m[2].strip() for m in found if m}
        return True

    def _place(self, place: Place, line: Tidied, at: int) -> Place:
        return Place(place.file, place.line, (place.column or 1) - 1 + line.column(at))

    def _reading(self, line: Tidied, raw: str, note: str, place: Place) -> None:
        where = read_where(line)
        if isinstance(where, Bad):
            self.log.problems.append(where.kind(self._place(place, line, where.at), **where.words))
            return
        at = where.end if isinstance(where, Where) else 0
        if where is None:
            word = read_thing_word(line.text, len(line.text) - len(line.text.lstrip()))
            if not (word and word[0].word == "loc" and self.last):
                self._note(line, raw, place, word[0].word if word else "")
                return
            where = "same"
        if where == "same":
            if self.last is None:
                self.log.problems.append(SAME_AS_NOTHING(place))
                return
            at = re.match(r"\s*(?:same\b)?", line.text, re.IGNORECASE).end()  # type: ignore[union-attr]
            where = self.last
        assert isinstance(where, Where)
        self.last = where
        if self.here is None:
            if not self.told_no_pass:
                self.log.problems.append(NO_PASS(place))
            self.told_no_pass = True
            self._begin(Heading(access="?", flow="with flow", surface=True, place=place))
        self._things(where, line, at, raw, note, place)

    def _note(self, line: Tidied, raw: str, place: Place, word: str) -> None:
        if word:
            self.log.problems.append(NO_READING(place, text=raw.strip()[:60], word=word))
        self.log.notes.append(raw.strip())

    def _things(self, where: Where, line: Tidied, at: int, raw: str, note: str, place: Place) -> None:
        assert self.here is not None
        here = self._place(place, line, at)
        tie = _TIE.match(line.text, at)
        extra: list[Thing] = []
        if tie:
            at = tie.end()
            what = tie[1].strip()
            self.here.sames.append(Same(where.from_ft, where.to_ft, what, here))
            word = read_thing_word(what, 0)
            says_more = bool(line.text[at:].strip()) and line.text[at:].lstrip()[0] not in ":,"
            if word and word[1] == len(what) and word[0].kind == "finding" and says_more:
                extra = [Thing(word[0], tie.start(1))]
        things, stray = read_things(line.text, at, frozenset(self.log.names.values()), extra)
        self._strays(stray, line, place)
        if not things and not stray and not tie:
            self.log.problems.append(NOTHING_SAID(place, text=line.text.strip()))
        for thing in things:
            self._entry(thing, where, line, raw, note, place)

    def _strays(self, stray: list[tuple[str, int]], line: Tidied, place: Place, word: str = "") -> None:
        if not stray:
            return
        text, at = stray[0]
        where = self._place(place, line, at)
        if text.lstrip("~")[:1].isdigit():
            kind = BARE_NUMBER if word and not text.rstrip("?").lstrip("~").strip("0123456789.") else STRAY
            self.log.problems.append(kind(where, text=text, word=word))
            return
        words = together(stray, line.text)
        whole = " ".join(words)
        near = near_word(whole.lower())
        self.log.problems.append(UNKNOWN_WORD(where, text=whole, nearest=near))

    def _entry(self, thing: Thing, where: Where, line: Tidied, raw: str, note: str, place: Place) -> None:
        assert self.here is not None
        at = self._place(place, line, thing.at)
        self._strays(thing.bad, line, place, thing.word.word)
        self.log.problems += swallowed(thing, at)
        leg = thing.values.pop("leg", "") or ("starts" if where.open_end else "")
        if (
            thing.word.needs
            and not (leg and thing.word.kind not in ("zone", "holds"))  # an open stretch is asked once it is closed
            and not thing.bad
            and not any(need in thing.values for need in thing.word.needs)
        ):
            text = line.text[thing.at :].split(",")[0].strip()
            kind = AMOUNT if thing.word.kind == "finding" else NEEDS
            self.log.problems.append(
                kind(at, text=text, word=thing.word.word, example=EXAMPLES.get(thing.word.word, thing.word.word))
            )
        assert self.here is not None
        self.here.entries.append(
            Entry(where.from_ft, where.to_ft, leg, where.about, thing, at, raw.rstrip(), self.back, note)
        )


def _is_heading(line: str) -> bool:
    return bool(re.match(r"\s*pass\b(?!\s*=)", line, re.IGNORECASE))


def _first_reading(lines: list[str]) -> int:
    """How many lines stand before the first that begins with a digit."""
    return next((n for n, line in enumerate(lines) if line.lstrip()[:1].isdigit()), len(lines))
