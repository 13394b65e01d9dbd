"""One thing of a line as it is put together from words and numbers; the standard words it is written in, out."""

from dataclasses import dataclass, field

from estimator.fieldnotes.tidy import tape_to
from estimator.fieldnotes.words import ALL_SIGNS, BY_NAME
from estimator.model.lengths import show

CLOCKS = {"top": "12", "bottom": "6", "left": "9", "right": "3"}
NEEDS_AMOUNT = ("roots", "offset", "sag", "oval", "grease")
TAKES_PERCENT = (*NEEDS_AMOUNT, "scale", "mud", "blocked", "intruding", "reverse fall", "channel")
TAKES_INCHES = (*TAKES_PERCENT, "gap", "crack", "hole", "blister", "leak", "fitting")
DEEP = ("loc", "depth", "pothole", "invert")
"""What says how deep the pipe lies."""
FILLS = ("roots", "grease", "scale", "mud")
"""What fills a pipe little by little."""
SAYS_HOW_MUCH = frozenset(("cannot pass", "hair", "lens under", "full", "no flow", "still flows", "flat", "broken"))
"""Signs that say how much; `drags` and `several` do not."""
SIZED = frozenset(("hole", "gap", "crack", "offset", "intruding", "sag", "mud", "grease", "roots", "scale", "branch"))
"""What may be told in inches."""


@dataclass(slots=True)
class Draft:
    """A thing of the standard words. `at` is the atom it stands at, `clause` the part of the line."""

    word: str
    at: int
    clause: int
    signs: list[str] = field(default_factory=list)
    grade: str = ""
    percent: tuple[float, float] | None = None
    inch: float | None = None
    clock: tuple[int, int] | str | None = None
    direction: str = ""
    name: str = ""
    live: str = ""
    proven: str = ""
    degrees: float | None = None
    choice: str = ""
    depth_ft: float | None = None
    surface: str = ""
    tapes: list[tuple[float, str]] = field(default_factory=list)
    flag: str = ""
    lengths: list[tuple[str, float]] = field(default_factory=list)
    every_ft: float | None = None
    count: int | None = None
    leg: str = ""
    doubt: bool = False
    after_cleaning: bool = False
    photo: str = ""
    video: str = ""

    @property
    def finding(self) -> bool:
        return self.word in BY_NAME and BY_NAME[self.word].kind == "finding"

    @property
    def short_of_amount(self) -> bool:
        return self.word in NEEDS_AMOUNT and not (
            self.percent or self.inch is not None or self.grade or SAYS_HOW_MUCH & set(self.signs) or self.leg
        )

    def words(self) -> str:
        """The thing in standard words.

        >>> Draft("hole", 0, 0, signs=["soil seen"], inch=2, clock="bottom").words()
        'hole 2in soil seen at 6'
        """
        out = [self.word]
        first = self.choice
        if first:
            out.append(first)
        if self.percent:
            low, high = self.percent
            out.append(f"{shown(low)}%" if low == high else f"{shown(low)}..{shown(high)}%")
        if self.inch is not None:
            out.append(f"{shown(self.inch)}in")
        if self.degrees is not None:
            out.append(shown(self.degrees))
        if self.depth_ft is not None:
            out.append(_length(self.depth_ft) + (f" from {self.surface}" if self.surface else ""))
        if self.every_ft is not None:
            out.append(f"every {show(self.every_ft)}")
        out += [f"{_length(ft)} {label}".strip() for label, ft in self.lengths]
        if self.grade:
            out.append(self.grade)
        if self.count:
            out.append(f"{self.count} places")
        out += self.signs
        if self.clock is not None:
            hours = CLOCKS[self.clock] if isinstance(self.clock, str) else f"{self.clock[0]}-{self.clock[1]}"
            out.append(f"at {hours}")
        out += [w for w in (self.direction, self.live, self.proven) if w]
        if self.after_cleaning:
            out.append("after cleaning")
        if self.leg:
            out.append(self.leg)
        if self.doubt:
            out.append("suspected")
        text = " ".join(out)
        for ft, to in self.tapes:
            text += f", {_length(ft)} {tape_to(to)}"
        if self.flag:
            text += f", flag {self.flag}"
        if self.photo:
            text += f" photo {self.photo}"
        if self.video:
            text += f" video {self.video}"
        if self.name and self.word == "room":
            text = f"room {self.name}"
        elif self.name:
            text += f" called {self.name}"
        return text


def shown(value: float) -> str:
    """A number without a tail of zeros.

    >>> shown(30.5), shown(2.0), shown(10.333333)
    ('30.5', '2', '10.3333')
    """
    return f"{value:.4f}".rstrip("0").rstrip(".")


def _length(ft: float) -> str:
    """Feet as a person writes them: whole quarters of an inch stay so, where division left a tail.

    >>> _length(26 / 12), _length(round(26 / 12, 6)), _length(3.4)
    ('2 ft 2 in', '2 ft 2 in', '3.4 ft')
    """
    quarters = round(ft * 48)
    return show(quarters / 48 if abs(ft * 48 - quarters) < 0.001 else round(ft, 6))


def where(at: float, to: float | None, to_end: bool = False, about: bool = False) -> str:
    text = f"{'~' if about else ''}{shown(at)}"
    return f"{text}-end" if to_end else text if to is None else f"{text}-{shown(to)}"


def row(at: float, to: float | None, drafts: list[Draft], to_end: bool = False, about: bool = False) -> str:
    """A line in standard words."""
    first = sorted(drafts, key=lambda d: d.word not in ALL_SIGNS)  # `mud` after a finding would be a sign of it
    return f"{where(at, to, to_end, about)} {', '.join(d.words() for d in first)}"


def too_much(d: Draft) -> bool:
    """Inches of what has none, or beside another word for how much."""
    twice = bool(d.grade) or bool((SAYS_HOW_MUCH | {"hairline"}) & set(d.signs))
    return d.inch is not None and ((d.finding and twice) or d.word not in SIZED)


def bare(d: Draft) -> bool:
    """It says no more than that it is there, and its signs."""
    return not (d.percent or d.inch is not None or d.clock is not None or d.grade or d.direction or d.choice)
