"""Passes as written come in, each with a reel zero of its own; passes hung on one line, and how well they agree, go out."""

import re
from dataclasses import dataclass, field

from estimator.fieldnotes.limits import Limits
from estimator.fieldnotes.logbook import Entry, Log, LogPass, Same
from estimator.fieldnotes.spans import closed, furthest_ft
from estimator.fieldnotes.words import PLURALS
from estimator.model.frozen import Frozen
from estimator.model.problem import Problem, error

UNPLACED = error(
    "log/pass-unplaced",
    "nothing says where the pass “{text}” begins on the line.",
    "Write `zero at 46.9` (its access, as a reading of the first pass), `from end`, or tie two things it saw with =.",
    "A pass with no place on the line cannot be used.",
)
TIE_UNKNOWN = error(
    "log/tie-unknown",
    "no earlier pass saw “{text}”.",
    "After = write a word, a name or a flag of an earlier pass, or a reading of the first pass.",
)
TIE_AMBIGUOUS = error(
    "log/tie-ambiguous",
    "earlier passes saw more than one {text}, and this pass has no other place yet.",
    "After = write its reading on the first pass, such as `= 19.8`, or its name.",
)
DISAGREE = error(
    "log/passes-disagree",
    "this pass puts {text} {far} ft away from where an earlier pass saw it.",
    "Check the riser and the zero of both passes; locate it once more.",
    "More than the limit apart, one of the two would send the crew to the wrong place.",
)
ZERO_SLIPPED = error(
    "log/zero-slipped",
    "the reel of this pass reads {far} ft off all it has in common with earlier passes.",
    "Check its riser and zero: so much is no slip.",
)
PROBLEMS = (UNPLACED, TIE_UNKNOWN, TIE_AMBIGUOUS, DISAGREE, ZERO_SLIPPED)

SAME_READING_FT = 1e-6  # the same number written twice, floats apart


class Sight(Frozen):
    """Something a placed pass saw, ft along the way of the first pass from its access."""

    word: str
    names: tuple[str, ...]
    from_ft: float
    to_ft: float
    pass_number: int

    @property
    def middle_ft(self) -> float:
        return (self.from_ft + self.to_ft) / 2


@dataclass(slots=True)
class Hung:
    """A pass on the line. All ft are along the way of the first pass, from its access ("way"), but for readings."""

    number: int
    log_pass: LogPass
    entries: list[Entry]
    sign: int
    start_ft: float = 0.0
    shift_ft: float = 0.0
    placed_by: str = ""
    ties: list[tuple[str, float, tuple[float, float | None]]] = field(
        default_factory=list
    )  # what, difference, readings
    tied_at: dict[float, Sight] = field(default_factory=dict)  # by reading

    @property
    def riser_ft(self) -> float:
        return self.log_pass.heading.riser_ft or 0.0

    def way_ft(self, reading_ft: float) -> float:
        beyond_riser = reading_ft - self.riser_ft
        if beyond_riser <= 0:
            return self.start_ft  # still in the riser
        return self.start_ft + self.sign * (beyond_riser + self.shift_ft)

    def ends_ft(self, from_ft: float, to_ft: float | None) -> tuple[float, float]:
        """Both ends of an entry, lower first. What is written beside a = lies where the tied thing lies."""
        if from_ft in self.tied_at:
            sight = self.tied_at[from_ft]
            return (sight.from_ft, sight.to_ft) if to_ft is not None else (sight.middle_ft, sight.middle_ft)
        a = self.way_ft(from_ft)
        b = a if to_ft is None else self.way_ft(to_ft)
        return min(a, b), max(a, b)

    @property
    def seen_ft(self) -> tuple[float, float] | None:
        end = furthest_ft(self.log_pass)
        if end is None:
            return None
        a, b = self.start_ft, self.way_ft(end)
        return min(a, b), max(a, b)


def hang(log: Log, limits: Limits) -> tuple[list[Hung], list[Problem]]:
    """Every pass placed in turn; one that cannot be placed is a problem and left out."""
    problems: list[Problem] = []
    hung: list[Hung] = []
    for number, log_pass in enumerate(log.passes, start=1):
        entries, found = closed(log_pass)
        problems += found
        first = hung[0].log_pass.heading if hung else log_pass.heading
        same_way = (log_pass.heading.flow or first.flow) == first.flow
        this = Hung(number, log_pass, entries, 1 if same_way else -1)
        sights = [sight for earlier in hung for sight in _sights(earlier)]
        if _place(this, hung, sights, problems):
            _tie(this, hung, sights, limits, problems)
            hung.append(this)
    return hung, problems


def _sights(hung: Hung) -> list[Sight]:
    out = []
    for entry in hung.entries:
        values = entry.thing.values
        names = [str(values[slot]).lower() for slot in ("name", "choice") if values.get(slot)]
        names += [f"flag {values['flag'].lower()}"] if values.get("flag") else []
        out.append(Sight(entry.thing.word.word, tuple(names), *hung.ends_ft(entry.from_ft, entry.to_ft), hung.number))
    return out


def _plain(access: str) -> str:
    return re.sub(r"\b(?:the|pulled|two-way|2-?way)\b|\s+", " ", access.lower()).strip().replace("  ", " ")


def _place(this: Hung, hung: list[Hung], sights: list[Sight], problems: list[Problem]) -> bool:
    heading = this.log_pass.heading
    if not hung:
        this.placed_by = "first"
        return True
    same = next((h for h in hung if _plain(h.log_pass.heading.access) == _plain(heading.access)), None)
    if heading.zero_at_ft is not None:
        this.start_ft, this.placed_by = hung[0].way_ft(heading.zero_at_ft), "zero_at"
    elif same is not None and heading.access:
        this.start_ft, this.placed_by = same.start_ft, "same access"
    elif heading.from_end or _plain(heading.access) in ("end", "other end", "far end"):
        this.start_ft = _far_end(hung, this.sign)
        this.placed_by = "end"
    elif (named := _named(heading.access, sights)) is not None:
        this.start_ft, this.placed_by = named.middle_ft, "name"
    else:
        return _by_ties(this, hung[0], sights, problems)
    return True


def _far_end(hung: list[Hung], sign: int) -> float:
    ends = [end for h in hung if h.seen_ft for end in h.seen_ft]
    return max(ends, default=0.0) if sign == -1 else min(ends, default=0.0)


def _named(access: str, sights: list[Sight]) -> Sight | None:
    """An end, access, cleanout or branch of an earlier pass whose name stands in the access."""
    places = [s for s in sights if s.word in ("end", "access", "cleanout", "branch", "stop")]
    low = access.lower()
    found = [s for s in places if any(name and name in low for name in s.names)]
    return min(found, key=lambda s: ("end", "access", "cleanout", "branch", "stop").index(s.word), default=None)


def _matches(what: str, sights: list[Sight]) -> list[Sight]:
    low = re.sub(r"\s+", " ", what.lower()).strip()
    by_name = [s for s in sights if low in s.names or any(n and (n in low or low in n) for n in s.names)]
    words = low.split()
    word = PLURALS.get(low, low)
    by_word = [s for s in sights if s.word == word or (s.word in words and len(words) > 1)]
    both = [s for s in by_name if s in by_word]
    return both or [s for s in by_word if s.word == word] or by_name or by_word


def _same_list(this: Hung) -> list[Same]:
    """The ties as written, and a flag that an earlier pass set too."""
    flags = [
        Same(e.from_ft, e.to_ft, f"flag {e.thing.values['flag'].lower()}", e.place)
        for e in this.entries
        if e.thing.values.get("flag")
    ]
    said = {(same.from_ft, same.what.lower()) for same in this.log_pass.sames}
    return [*this.log_pass.sames, *(flag for flag in flags if (flag.from_ft, flag.what) not in said)]


def _by_ties(this: Hung, first: Hung, sights: list[Sight], problems: list[Problem]) -> bool:
    heading = this.log_pass.heading
    starts: list[float] = []
    for same in this.log_pass.sames:
        found = _candidates(same, sights, first)
        if len(found) == 1:
            middle = (same.from_ft + (same.from_ft if same.to_ft is None else same.to_ft)) / 2
            starts.append(found[0].middle_ft - this.sign * (middle - this.riser_ft))
        elif len(found) > 1:
            problems.append(TIE_AMBIGUOUS(same.place, text=same.what))
    if not starts:
        problems.append(UNPLACED(heading.place, text=heading.text))
        return False
    this.start_ft, this.placed_by = sum(starts) / len(starts), "ties"
    return True


def _candidates(same: Same, sights: list[Sight], first: Hung | None) -> list[Sight]:
    if first is not None and re.fullmatch(r"\d+(?:\.\d+)?", same.what):
        at = first.way_ft(float(same.what))
        there = [s for s in sights if s.pass_number == first.number and abs(s.from_ft - at) < SAME_READING_FT]
        return there[:1] or [Sight("", (), at, at, first.number)]
    return _matches(same.what, sights)


def _tie(this: Hung, hung: list[Hung], sights: list[Sight], limits: Limits, problems: list[Problem]) -> None:
    """Resolve each = ; from the same access their mean is a slipped zero, else they are checks."""
    found: list[tuple[Same, Sight, float]] = []
    for same in _same_list(this):
        candidates = _candidates(same, sights, hung[0] if hung else None)
        middle = (same.from_ft + (same.from_ft if same.to_ft is None else same.to_ft)) / 2
        if not candidates:
            if not same.what.startswith("flag ") or same in this.log_pass.sames:
                problems.append(TIE_UNKNOWN(same.place, text=same.what))
            continue
        here = this.way_ft(middle)
        sight = min(candidates, key=lambda s: abs(s.middle_ft - here))
        found.append((same, sight, this.sign * (here - sight.middle_ft)))
    if found and this.placed_by == "same access":
        this.shift_ft = -sum(difference for *_, difference in found) / len(found)
        if abs(this.shift_ft) > limits.zero_slip_ft:
            problems.append(ZERO_SLIPPED(this.log_pass.heading.place, far=f"{abs(this.shift_ft):.1f}"))
    for same, sight, difference in found:
        this.ties.append((same.what, round(difference, 4), (same.from_ft, same.to_ft)))
        this.tied_at[same.from_ft] = sight
        left = abs(difference + this.shift_ft)
        if left > limits.passes_disagree_ft:
            problems.append(DISAGREE(same.place, text=same.what, far=f"{left:.1f}"))
