"""A reading in; what a careful person would ask about it, with answers to choose from, out."""

from collections.abc import Iterable
from dataclasses import replace

from estimator.fieldnotes.assign import STANDS_FULL, Assign
from estimator.fieldnotes.bare_figures import MOST_READING_FT, SIZES_IN
from estimator.fieldnotes.deep import most_bare_depth
from estimator.fieldnotes.drafts import DEEP, Draft, row, shown
from estimator.fieldnotes.head_words import either
from estimator.fieldnotes.limits import DEEP_FT, FARTHEST_LEAP_FT, MAIN_DEPTH_FT
from estimator.fieldnotes.logproblems import how_much, more_than_whole
from estimator.fieldnotes.numbers_of_a_line import Way
from estimator.model.lengths import IN_PER_FT
from estimator.model.say import Say

NO_FOOTAGE_OF_UTILITY = Say.of(
    "a line that may be gas: at which footage? Stop work in the drain until its owner says what it is."
)
LEAST_DEPTH_FT = 0.3
"""A pipe less deep than this lies in the slab itself: the inches are rather those of a dropped joint."""
AT_ONE_PLACE = frozenset(("branch", "bend", "cleanout", "tree", "stop", "end"))
BRANCH_SIZES_IN = (2.0, 3.0, 4.0)
UNFILLED = ("hole", "gap", "crack", "collapse")
"""What is no share of the pipe."""
LIKELY_AMOUNT_IN = 8.0
"""A bare number up to this may be inches as well as percent."""
Doubt = tuple[Say, tuple[str, ...]]
"""What is asked, and the rows to choose from."""


class Doubts(Assign):
    """What is asked back of a reading."""

    way: Way
    at = 0.0
    best: tuple[str, ...] = ()

    def _doubts(self, way: Way, second: Way | None, to_end: bool, rows: list[str]) -> Doubt | None:
        """The first thing to ask of these rows; None where nothing is in doubt."""
        self.way, self.best = way, tuple(rows)
        self.at = way.at if way.at is not None else self.r.context.last_ft or 0.0
        if not rows:
            return self._no_footage() if self.drafts and way.at is None else None
        asked = (
            self._too_far, self._what_number, self._two_turns, self._halves, self._or_another, self._impossible_any,
            lambda: self._lacks(to_end), self._never_began,
        )  # fmt: skip
        found = next((doubt for ask in asked if (doubt := ask()) is not None), None)
        if found is None and second is not None and way.at is not None:
            other = () if second.at is None else (row(second.at, second.to, self.drafts, False, second.about),)
            return Say.of("which is meant?"), (*self.best, *other)
        return found or self._two_places()

    def _rows_of(self, drafts: Iterable[Draft]) -> tuple[str, ...]:
        """A row for each of these drafts, at the place of the line."""
        return tuple(row(self.at, self.way.to, [d]) for d in drafts)

    @property
    def _findings(self) -> list[Draft]:
        return [d for d in self.drafts if d.finding]

    def _no_footage(self) -> Doubt:
        last = self.r.context.last_ft
        here = (row(last, None, self.drafts),) if last is not None and not any(d.leg for d in self.drafts) else ()
        utility = any(d.word == "utility" for d in self.drafts)
        return NO_FOOTAGE_OF_UTILITY if utility else Say.of("no footage: where is it?"), (*here, "note")

    def _too_far(self) -> Doubt | None:
        at, context = self.at, self.r.context
        free = (t for n in self.numbers.free if (t := self.r.number(n)) is not None)
        point = any(t.point and abs(t.value - at) < 0.001 for t in free)
        ended = any(d.word in ("stop", "end") for d in self.drafts)
        leap = not point and not ended and at > context.furthest_ft + FARTHEST_LEAP_FT and at >= 200
        if self.way.at is None or not (at > MOST_READING_FT or leap):
            return None
        tenth = [row(round(at / 10, 4), None, self.drafts)] if self.way.to is None and at >= 100 else []
        return Say.of("{at} ft is far beyond everything before; is a point missing?", at=shown(at)), (
            *tenth,
            *self.best,
        )

    def _what_number(self) -> Doubt | None:
        """A number that may count, or that nothing takes."""
        if self.counted is not None:
            return Say.of("{count} in, {count} of them, or the name of one?", count=shown(self.counted)), self.best
        unknown = next((t for n, role in self.way.roles if role == "unknown" and (t := self.r.number(n))), None)
        if unknown is None:
            return None
        d, value, offers = next(iter(self._findings), None), unknown.value, list(self.best)
        if d is not None and unknown.kind == "num":
            inches = [replace(d, inch=value)] if value <= LIKELY_AMOUNT_IN else []
            offers = list(self._rows_of([*inches, replace(d, percent=(value, value))]))
            offers += [row(self.at, value, [d])] if value > self.at and self.way.to is None else []
        return Say.of("{value} of what?", value=shown(value)), tuple(offers)

    def _two_turns(self) -> Doubt | None:
        """`turn 38 45`: 45 degrees, or a second turn at 45 ft."""
        numbers = [(n, t) for n, t in self.r.numbers()]
        if [d.word for d in self.drafts] != ["bend"] or len(numbers) != 2 or self.r.has("side"):
            return None
        (first, at), (_, then) = numbers
        bare = at.kind == then.kind == "num" and not then.point
        if not bare or self.drafts[0].at > first or then.value <= at.value or self.r.turned:
            return None
        return Say.of("{value} degrees, or another one at {value} ft?", value=shown(then.value)), self.best

    def _halves(self) -> Doubt | None:
        """`33 1/4 to 1/2`: 33 1/4 ft, or 33 ft and from a quarter to a half; `offset 1/2`: of an inch, or of the pipe."""
        every = [(a, a.token) for a in self.r.atoms]
        for (_, t), (b, _), (_, u) in zip(every, every[1:], every[2:], strict=False):
            if t and t.kind == "num" and "/" in t.text and "till" in b.means and u and u.kind == "frac":
                return Say.of(
                    "is the first fraction part of the footage, or is it an amount from one to the other?"
                ), self.best
        if self.half is None:
            return None
        d, value = self.half
        d = Draft("offset", d.at, d.clause) if d.word == "joint" else d
        share = round(value * 100)
        either = [replace(d, inch=value), replace(d, percent=(share, share))]
        return Say.of(
            "{inches} in, or {percent} percent of the pipe?", inches=shown(value), percent=shown(value * 100)
        ), self._rows_of(reversed(either) if d.word == "sag" else either)

    def _or_another(self) -> Doubt | None:
        r, findings = self.r, self._findings
        if r.has("doubt", "cannot tell") and any(d.word == "blocked" and not d.choice for d in findings):
            return STANDS_FULL, ("sag full starts", "blocked")
        if (twice := either(r)) is not None:
            return Say.of("{one} or {other}: which of them is it?", one=twice[0], other=twice[1]), (*self.best, "note")
        if r.has("or") and (len({d.word for d in findings}) > 1 or (findings and r.has("unclear"))):
            return Say.of("which of them is it?"), (*self._rows_of(findings), "note")
        return None

    def _impossible_any(self) -> Doubt | None:
        return next((doubt for d in self.drafts if (doubt := self._impossible(d)) is not None), None)

    def _lacks(self, to_end: bool) -> Doubt | None:
        """An amount, a size or a depth that nobody said."""
        for d in self.drafts:
            waits = d.short_of_amount and not (to_end and d.leg) and not self._again()
            if waits and not (d.word == "sag" and self.numbers.bare_fractions):
                others = [x for x in self.drafts if x is not d]
                grades = ("light", "moderate", "severe")
                return how_much(d.word), tuple(
                    row(self.at, self.way.to, [*others, replace(d, grade=grade)]) for grade in grades
                )
            if d.word == "branch" and d.inch is None:
                sizes = (row(self.at, None, [replace(d, inch=size)]) for size in BRANCH_SIZES_IN)
                return Say.of("what size is the branch?"), (*sizes, *self.best)
            if d.word in ("depth", "invert", "pothole") and d.depth_ft is None:
                return Say.of(
                    "{word}: how deep, and from which surface? such as {word} 3.4ft from lawn?", word=d.word
                ), ()
            if d.word == "beam" and not d.lengths:
                return Say.of("how deep and wide is the beam? such as beam 24in deep 12in wide?"), ()
        return None

    def _never_began(self) -> Doubt | None:
        d = next((d for d in self._findings if d.leg == "ends" and d.word not in self.r.context.started), None)
        if d is None:
            return None
        start = shown(self.r.context.last_ft or 0.0)
        whole = f"{start}-{shown(self.at)} {d.words().replace(' ends', '')}"
        return Say.of("{word} ends there, but where does it start?", word=d.word), (whole,)

    def _two_places(self) -> Doubt | None:
        """`9-11 branch`: 9 ft 11 in, or anywhere from 9 to 11 ft."""
        at, to, words = self.at, self.way.to, {d.word for d in self.drafts}
        if to is not None and not self._findings and words & AT_ONE_PLACE and not words & {"pipe", "size"}:
            inches = to < IN_PER_FT
            other = at + to / IN_PER_FT if inches else to
            both = (row(round(other, 4), None, self.drafts), row(at, None, self.drafts))
            question = (
                Say.of("feet and inches, or from one to the other?") if inches else Say.of("at which of the two?")
            )
            return question, both if inches else both[::-1]
        free = [t for n in self.numbers.free if (t := self.r.number(n)) is not None and t.kind == "range" and t.tight]
        spans = [
            (t.value, t.to)
            for t in free
            if t.to and t.value < t.to < IN_PER_FT and abs(at - (t.value + t.to / IN_PER_FT)) < 0.01
        ]
        stretches = tuple(row(low, high, self.drafts) for low, high in spans)
        return (Say.of("feet and inches, or from one to the other?"), (*self.best, *stretches)) if spans else None

    def _again(self) -> bool:
        """`same hole 20.4` in a later run: it was seen before."""
        r, findings = self.r, self._findings
        if len(findings) != 1 or not r.has("again") or r.context.runs < 2:
            return False
        r.used |= set(r.where("again"))
        only = findings[0]
        return only.word in r.context.seen and not (only.percent or only.inch or only.grade)

    def _impossible(self, d: Draft) -> Doubt | None:
        return self._too_big(d) or self._no_size(d) or self._no_depth(d)

    def _too_big(self, d: Draft) -> Doubt | None:
        """More than the pipe is wide, or than the whole of it."""
        bore, inch = self.r.context.bore_in, d.inch or 0.0
        said = {"inches": shown(inch), "bore": shown(bore)}
        fallen = Draft("collapse", d.at, d.clause)
        tenth = replace(d, inch=inch / 10)
        if d.word == "offset" and inch >= bore:
            fits = [tenth] if 10 <= inch < 10 * bore else []
            share = [replace(d, inch=None, percent=(inch, inch))] if 10 <= inch <= 100 else []
            return Say.of("an offset of {inches} in, in a pipe of {bore} in?", **said), self._rows_of(
                [*fits, *share, fallen]
            )
        if d.finding and d.word not in ("hole", "gap", "crack", "collapse") and inch >= bore:
            return Say.of("{word} of {inches} in, in a pipe of {bore} in?", word=d.word, **said), ()
        if d.word in ("hole", "gap") and inch > 2 * bore:
            return Say.of("a {word} of {inches} in, in a pipe of {bore} in?", word=d.word, **said), self._rows_of(
                [tenth, fallen]
            )
        return (more_than_whole(d.percent[1]), ()) if d.percent and d.percent[1] > 100 else None

    def _no_size(self, d: Draft) -> Doubt | None:
        if d.percent and (d.word in UNFILLED or "gone" in d.signs):
            return Say.of("{value} of what?", value=f"{shown(d.percent[1])}%"), self.best
        if d.inch is None:
            return None
        if d.word == "branch" and (d.inch not in SIZES_IN or d.inch > max(self.r.context.bore_in, 4) + 2):
            return Say.of("a branch of {inches} in?", inches=shown(d.inch)), self.best
        odd = d.word == "size" and d.inch not in SIZES_IN
        return (Say.of("a pipe of {inches} in?", inches=shown(d.inch)), self.best) if odd else None

    def _no_depth(self, d: Draft) -> Doubt | None:
        """Less deep than a slab is thick, deeper than house drains lie, or of an unknown unit."""
        depth = d.depth_ft
        if depth is None or d.word not in DEEP:
            return None
        inches = replace(d, depth_ft=depth / IN_PER_FT)
        if depth < LEAST_DEPTH_FT and d.word != "invert":
            offset = Draft("offset", d.at, d.clause, inch=depth * IN_PER_FT, direction="down")
            return Say.of("a depth of {inches} in?", inches=shown(depth * IN_PER_FT)), self._rows_of([offset, d])
        if self.bare_depth and depth > most_bare_depth(self.r.context.zone):
            likely = [inches] if depth > DEEP_FT else [inches, d]
            return Say.of("{value} inches or feet deep?", value=shown(depth)), self._rows_of(likely)
        if depth <= DEEP_FT:
            return None
        may_be = [x for x, most in ((inches, DEEP_FT), (d, MAIN_DEPTH_FT)) if (x.depth_ft or 0.0) <= most]
        question = Say.of("{value} ft is deeper than house drains lie; feet or inches?", value=shown(depth))
        return question, self._rows_of(may_be)
