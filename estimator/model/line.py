"""A line of pipe as the camera saw it: passes, marks (what is there) and findings (what is wrong)."""

from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import Literal

from estimator.model.frozen import Frozen
from estimator.model.stretch import Stretch

Grade = Literal["seen", "inferred", "suspected", "not inspected"]

ZONES: tuple[str, ...] = ("slab", "yard", "drive", "walk", "street", "crawl", "basement")
FINDING_WORDS: tuple[str, ...] = (
    "roots", "offset", "gap", "crack", "hole", "collapse", "channel", "scale", "grease", "sag", "reverse fall",
    "backfall", "oval", "blister", "blocked", "intruding", "utility", "fitting", "leak", "mud", "insects",
)  # fmt: skip
"""`channel` is the groove along the bottom of iron pipe; `backfall` is pipe that slopes the wrong way."""
SIGNS: tuple[str, ...] = (
    "soil seen", "void", "washing", "sharp", "smooth", "lens under", "never ends", "only in use", "no flow",
    "still flows", "drags", "cannot pass", "hairline", "hair", "several", "open", "loose", "broken", "running in",
    "running out", "stain", "drip", "cut yearly", "soft", "hard", "gone", "long", "catches paper", "flat", "full",
)  # fmt: skip


class Origin(Frozen):
    """Where in the notes a mark or finding was written: file, line from 1, the text, the pass (from 1), the reading.

    It takes no part in whether two marks or findings are equal: the same thing may be written in two places.
    """

    file: str = ""
    row: int = 0
    text: str = ""
    pass_number: int = 1
    reading_ft: float | None = None  # on the reel; for a stretch, its lower end as written
    reading_to_ft: float | None = None  # its upper end as written; None for a point
    back: bool = False  # seen while the camera was pulled back
    about: bool = False  # the reading was written with ~
    column: int = 1


def plain_wall(name: str) -> str:
    """Return what a wall is taped as, however it was written.

    >>> plain_wall("the Front Wall")
    'front wall'
    """
    return " ".join(name.lower().split()).removeprefix("the ")


class Tie(Frozen):
    """A tape distance from something fixed, such as 14.17 ft from the front wall."""

    length_ft: float
    to: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """A place word at a stretch of a line, with all its slots; an empty slot is None or ().

    `choice` is the material, surface, tree or utility word, or what an end reached; `lengths` are (label, ft) with
    labels wide, deep, thick, away, above, below, every or "" for the bare one. Depth words carry `surface` (lawn, tile,
    slab, drive ...) and `depth_ft`; `to` says what the depth goes to. `holds` is set for words that hold until the next.
    """

    word: str
    stretch: Stretch
    choice: str | None = None
    size_in: float | None = None
    degrees: float | None = None
    count: int | None = None
    lengths: tuple[tuple[str, float], ...] = ()
    depth_ft: float | None = None
    to: Literal["centre", "invert", ""] = ""
    surface: str | None = None
    ties: tuple[Tie, ...] = ()
    flag: str | None = None
    side: Literal["left", "right", "up", "down"] | None = None  # as the camera looked; see Profile for the house side
    live: Literal["live", "dead"] | None = None
    proven: bool | None = None  # live flow was proven by running water
    out_of_reach: bool = False
    through: bool = False  # a beam the pipe passes through, not under
    name: str | None = None  # `called hall bath`, the room of `room hall bath`
    signs: tuple[str, ...] = ()
    grade: Grade = "seen"
    assumed: bool = False  # made by the program, such as regular joints
    photo: int | None = None
    photo_file: str | None = None
    video: str | None = None
    note: str = ""
    holds: bool = False
    origin: Origin = field(default=Origin(), compare=False)

    def length(self, label: str = "") -> float | None:
        """The length written with this label, ft, or None."""
        return next((ft for name, ft in self.lengths if name == label), None)


CLEANABLE = frozenset({"roots", "scale", "grease", "mud", "insects", "blocked"})
"""Kinds of finding that a jet or a cutter takes out; the opening roots came in by stays."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """What was seen or measured at a stretch: kind, how much, signs, clock, how sure, where it was written.

    `percent` is (low, high) of the bore, alike when one number was given; rules take the high one. `size_in` is the
    opening or the lip in inches. `clock` is (from, to) hours as the camera looked, 12 at the top. `history` holds
    earlier sights of the same thing (before cleaning), which this one supersedes.
    """

    id: str
    kind: str
    stretch: Stretch
    percent: tuple[float, float] | None = None
    size_in: float | None = None
    grade_word: Literal["light", "moderate", "severe"] | None = None
    count: int | None = None  # `6 joints`
    clock: tuple[int, int] | None = None
    direction: Literal["up", "down", "left", "right"] | None = None
    signs: tuple[str, ...] = ()
    grade: Grade = "seen"
    after_cleaning: bool = False
    photo: int | None = None
    photo_file: str | None = None
    video: str | None = None
    note: str = ""
    history: tuple["Finding", ...] = ()
    origin: Origin = field(default=Origin(), compare=False)

    @property
    def worst_percent(self) -> float | None:
        return self.percent[1] if self.percent else None

    def share_percent(self, bore_in: float) -> float | None:
        """Share of the bore, percent: as written (the high end), else its inches over the bore; None where neither is known.

        The inches of a hole, gap or crack are the size of the opening and are no share of the bore.
        """
        if self.percent is not None:
            return self.percent[1]
        if self.size_in is None or bore_in <= 0 or self.kind in ("hole", "gap", "crack"):
            return None
        return 100.0 * self.size_in / bore_in


@dataclass(frozen=True, slots=True)
class Unclear:
    """A line of the log that may mean more than one thing and was asked back; until it is answered nothing there is certain.

    `stretch` is None where it names no place: then it may lie anywhere on the line. `danger`: it may be gas or another utility.
    """

    text: str
    stretch: Stretch | None
    danger: bool = False
    question: str = field(default="", compare=False)
    origin: Origin = field(default=Origin(), compare=False)


class Pass(Frozen, kw_only=True):
    """One camera run: reading r on the reel lies at station  start + sign·(r − riser + shift).

    `ties` are (what, how much more the reel shows than the other pass makes it, ft) for each thing seen twice, and
    `tie_readings_ft` where on the reel (from, to); `shift_ft` is what the ties made of a slipped zero. `zero_at_ft` is where the
    notes say the pass begins, as a reading of the first pass. `seen` is what it filmed, as stations; None when it filmed nothing.
    """

    number: int
    access: str
    heading_to: str = ""
    flow: Literal["with flow", "against flow"]
    riser_ft: float = 0.0
    when: str = ""  # "before cleaning", "after cleaning", "" when not said
    after_cleaning: bool = False
    start_ft: float
    sign: Literal[1, -1]
    shift_ft: float = 0.0
    ties: tuple[tuple[str, float], ...] = ()
    tie_readings_ft: tuple[tuple[float, float | None], ...] = ()
    zero_at_ft: float | None = None
    from_end: bool = False  # it began where an earlier pass ended
    placed_by: str = ""  # "first", "same access", "zero_at", "end", "name", "ties"
    seen: Stretch | None = None
    stopped_because: str = ""  # "reached main", "blocked", "water", "end" ...
    note: str = ""

    def station(self, reading_ft: float) -> float:
        return self.start_ft + self.sign * (reading_ft - self.riser_ft + self.shift_ft)

    def reading(self, station_ft: float) -> float:
        """Back from a station to the reel."""
        return self.sign * (station_ft - self.start_ft) + self.riser_ft - self.shift_ft


class Join(Frozen):
    """A line that branches off: the line it runs into, and the station there."""

    line: str
    station_ft: float


class Line(Frozen, kw_only=True):
    """One run of drain pipe. Stations are plan feet from `zero`, a place a tape can reach.

    From an access they grow the way pass 1 went; from the slab edge they grow into the house, whichever way it went.

    `downstream` is +1 when stations grow with the flow, −1 when they grow against it. `length_ft` is what the owner
    wrote, if he did; `stretch` in Profile is the known extent.
    """

    name: str
    size_in: float
    pipe: str
    marks: tuple[Mark, ...] = ()
    findings: tuple[Finding, ...] = ()
    superseded: tuple[Finding, ...] = ()  # gone in a later pass after cleaning; kept for the record
    unclear: tuple[Unclear, ...] = ()  # asked back and not answered
    passes: tuple[Pass, ...] = ()
    remarks: tuple[str, ...] = ()  # lines of the log kept as typed: `31 no wires`
    zero: str = "access"  # or "slab edge"
    downstream: Literal[1, -1] = 1
    joins: Join | None = None
    length_ft: float | None = None
    depth_found: bool = False  # its depths are those of the uncovered pipe: no locator's error is left in them
    at_join_ft: float | None = None  # how deep the line it joins was read to lie there: a guess for one never located
    ends: str = ""  # "city main", "septic tank", "main line" ...
    filmed: bool = True
    note: str = ""


MAIN_LINE = "main line"
"""The end of a line that runs into another one of the house."""


def runs_into_another(line: Line, lines: Iterable[Line]) -> bool:
    """Whether it ends in another line of the house: where, if anybody noted it, `joins` says.

    In a log "main line" is also a word for the city's main, so it counts only where another line is known to leave the house.
    """
    if line.joins is not None:
        return True
    said = (line.ends,) if line.ends else tuple(m.choice for m in line.marks if m.word == "end")
    return MAIN_LINE in said and any(
        other.ends != MAIN_LINE and (line.ends or other.ends) for other in lines if other is not line
    )
