"""What a log holds once it is read: entries, camera runs, ties, and lines that are asked back."""

import re
from dataclasses import dataclass, field

from estimator.fieldnotes.heading import Heading, heading_problems
from estimator.fieldnotes.logproblems import ASKED, GAS_ASKED
from estimator.fieldnotes.things import Thing
from estimator.model.frozen import Frozen
from estimator.model.problem import Place, Problem
from estimator.model.say import Say

DANGERS = re.compile(
    r"\b(?:gas|cross ?bore|electric|power|tracer|yellow|wire|utility|crossing|tendon)\b", re.IGNORECASE
)
MOST_ASKED_SHOWN = 60  # letters of a line in its question


class Entry(Frozen):
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


class Same(Frozen):
    """`12.1 = branch`: at this reading lies something an earlier run saw."""

    from_ft: float
    to_ft: float | None
    what: str
    place: Place


class Asked(Frozen):
    """A line that is asked back: where it may lie (footage; None where it names none), what is asked, what may be meant."""

    from_ft: float | None
    to_ft: float | None
    text: str
    question: Say
    choices: tuple[str, ...]
    place: Place
    back: bool = False
    later: bool = False  # of a stretch that began: its amount may still come
    utility: bool = False  # known to be one that may be gas

    @property
    def danger(self) -> bool:
        """It may be gas or another utility."""
        return self.utility or bool(DANGERS.search(self.text) or any(DANGERS.search(c) for c in self.choices))


@dataclass(slots=True)
class LogPass:
    heading: Heading
    entries: list[Entry] = field(default_factory=list)
    sames: list[Same] = field(default_factory=list)
    asked: list[Asked] = field(default_factory=list)

    @property
    def said(self) -> bool:
        """Whether any line stands under the heading."""
        return bool(self.entries or self.sames or self.asked)


@dataclass(slots=True)
class Log:
    """What one or more texts of a line hold. `names` are the short names given on top; `left` what a line said besides."""

    passes: list[LogPass] = field(default_factory=list)
    names: dict[str, str] = field(default_factory=dict)
    notes: list[str] = field(default_factory=list)
    found: list[Problem] = field(default_factory=list)
    unread: bool = False  # a file of it could not be read
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
    write = (
        Say.of("Write one of: {known}.", known=" | ".join(rows))
        if rows
        else Say.of("Write it in other words, with its footage.")
    )
    kind = GAS_ASKED if asked.danger else ASKED
    return kind(asked.place, text=shown, question=asked.question, write=write)


@dataclass(slots=True)
class _Last:
    """The line before: what it said, and where its entries begin, so that a correction can take it back."""

    rows: tuple[str, ...] = ()
    run: LogPass | None = None
    entries: int = 0
    sames: int = 0
    asked: Asked | None = None
    raw: str = ""
