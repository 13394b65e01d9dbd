"""A reading in; what a careful person would ask about it, with answers to choose from, out."""

import copy

from estimator.fieldnotes.assign import STANDS_FULL, Assign
from estimator.fieldnotes.bare_figures import FARTHEST_LEAP_FT, SIZES_IN, Way
from estimator.fieldnotes.drafts import Draft, row, shown
from estimator.fieldnotes.figure_words import MOST_BARE_DEPTH
from estimator.fieldnotes.limits import DEEP_FT, MAIN_DEPTH_FT
from estimator.fieldnotes.logproblems import how_much, more_than_whole
from estimator.fieldnotes.understand import POINT_LIKE
from estimator.model.say import Say

NO_FOOTAGE_OF_UTILITY = Say.of(
    "a line that may be gas: at which footage? Stop work in the drain until its owner says what it is."
)
LEAST_DEPTH_FT = 0.3
"""A pipe less deep than this lies in the slab itself: the inches are rather those of a dropped joint."""


class Doubts(Assign):
    """What is asked back of a reading."""

    def _doubts(
        self, way: Way, second: Way | None, to_end: bool, rows: list[str]
    ) -> "tuple[Say | None, tuple[str, ...]]":
        r, context = self.r, self.r.context
        findings = [d for d in self.drafts if d.finding]
        best = tuple(rows)
        if not rows:
            if self.drafts and way.at is None:
                last = context.last_ft
                here = (
                    (row(last, None, self.drafts),) if last is not None and not any(d.leg for d in self.drafts) else ()
                )
                if any(d.word == "utility" for d in self.drafts):
                    return NO_FOOTAGE_OF_UTILITY, (*here, "note")
                return Say.of("no footage: where is it?"), (*here, "note")
            return None, ()
        at = way.at if way.at is not None else context.last_ft or 0.0
        unknown = [n for n, role in way.roles if role == "unknown"]
        if way.at is not None and self._leap(at):
            tenth = [row(round(at / 10, 4), None, self.drafts)] if way.to is None and at >= 100 else []
            return Say.of("{at} ft is far beyond everything before; is a point missing?", at=shown(at)), (*tenth, *best)
        if self.counted is not None:
            return Say.of("{count} in, {count} of them, or the name of one?", count=shown(self.counted)), best
        if unknown:
            return self._unknown(unknown[0], way, best)
        if self._mixed_and_fraction():
            return Say.of("is the first fraction part of the footage, or is it an amount from one to the other?"), best
        if self.half is not None:
            return self._half(way)
        if r.has("doubt", "cannot tell") and any(d.word == "blocked" and not d.choice for d in findings):
            return STANDS_FULL, ("sag full starts", "blocked")
        if r.has("cannot tell") and "sign" not in r.atoms[r.where("cannot tell")[0]].means:
            sure = [copy.copy(d) for d in self.drafts]
            for d in sure:
                d.doubt = True
            return Say.of("what was seen for sure?"), (row(at, way.to, sure), "note")
        if (len({d.word for d in findings}) > 1 and r.has("or")) or (r.has("or") and findings and r.has("unclear")):
            return Say.of("which of them is it?"), (*(row(at, way.to, [d]) for d in findings), "note")
        if self.stray_inches or len(self.numbers.inches) > len(
            [
                d
                for d in self.drafts
                if d.inch is not None or d.depth_ft is not None or d.word in ("beam", "cleaned", "branch")
            ]
        ) + len(self.numbers.lengths):
            extra = [v for _, v in self.numbers.inches]
            if not any(d.word in ("loc", "pothole", "depth", "crossing") for d in self.drafts):
                return Say.of("what do the {inches} in belong to?", inches=shown(extra[-1])), best
        for d in self.drafts:
            if (found := self._impossible(d, way, best)) is not None:
                return found
        if r.has("reading in inches"):
            return Say.of("is that inches or feet?"), best
        for d in self.drafts:
            if d.short_of_amount and not (to_end and d.leg) and not self._again():
                if d.word == "sag" and self.numbers.bare_fractions:
                    continue
                offered = self._offers(d, way)
                return how_much(d.word), offered
            if d.word == "branch" and d.inch is None:
                sizes = []
                for size in (2.0, 3.0, 4.0):
                    other = copy.copy(d)
                    other.inch = size
                    sizes.append(row(at, None, [other]))
                return Say.of("what size is the branch?"), (*sizes, *best)
            if d.word in ("depth", "invert", "pothole") and d.depth_ft is None:
                return Say.of(
                    "{word}: how deep, and from which surface? such as {word} 3.4ft from lawn?", word=d.word
                ), ()
            if d.word == "beam" and not d.lengths:
                return Say.of("how deep and wide is the beam? such as beam 24in deep 12in wide?"), ()
            if (
                d.word == "joint"
                and d.every_ft is None
                and not d.signs
                and len(self.drafts) == 1
                and not r.has("part", "coupling")
            ):
                continue
        if any(d.leg == "ends" and d.word not in context.started for d in findings):
            d = next(d for d in findings if d.leg == "ends")
            return Say.of("{word} ends there, but where does it start?", word=d.word), (
                f"{shown(context.last_ft or 0.0)}-{shown(at)} {d.words().replace(' ends', '')}",
            )
        if second is not None and way.at is not None:
            return Say.of("which is meant?"), (*best, *self._as(second))
        if (
            any(d.word in POINT_LIKE for d in self.drafts)
            and way.to is not None
            and not findings
            and not any(d.word in ("pipe", "size") for d in self.drafts)
            and any(d.word in ("branch", "bend", "cleanout", "tree", "stop", "end") for d in self.drafts)
        ):
            if way.to < 12:
                return Say.of("feet and inches, or from one to the other?"), (
                    row(round(at + way.to / 12, 4), None, self.drafts),
                    row(at, None, self.drafts),
                )
            return Say.of("at which of the two?"), (row(at, None, self.drafts), row(way.to, None, self.drafts))
        if self._feet_and_inches(at):
            return Say.of("feet and inches, or from one to the other?"), (
                *best,
                *(row(low, high, self.drafts) for low, high in self._feet_and_inches(at)),
            )
        return None, ()

    def _feet_and_inches(self, at: float) -> list[tuple[float, float]]:
        """Ranges such as 9-11 that were read as 9 ft 11 in and may be a stretch."""
        found = [t for n in self.numbers.free if (t := self.r.number(n)) is not None and t.kind == "range" and t.to]
        return [
            (t.value, t.to or 0.0)
            for t in found
            if t.tight and t.value < (t.to or 0.0) < 12 and abs(at - (t.value + (t.to or 0.0) / 12)) < 0.01
        ]

    def _as(self, way: Way) -> tuple[str, ...]:
        if way.at is None:
            return ()
        return (row(way.at, way.to, self.drafts, False, way.about),)

    def _again(self) -> bool:
        """`same hole 20.4` in a later run: it was seen before."""
        r = self.r
        findings = [d for d in self.drafts if d.finding]
        if len(findings) != 1 or not r.has("again") or r.context.runs < 2:
            return False
        r.used |= set(r.where("again"))
        only = findings[0]
        return only.word in r.context.seen and not (only.percent or only.inch or only.grade)

    def _mixed_and_fraction(self) -> bool:
        """`33 1/4 to 1/2`: 33 1/4 ft, or 33 ft and from a quarter to a half."""
        every = self.r.atoms
        return any(
            a.token is not None
            and a.token.kind == "num"
            and "/" in a.token.text
            and "till" in b.means
            and c.token is not None
            and c.token.kind == "frac"
            for a, b, c in zip(every, every[1:], every[2:], strict=False)
        )

    def _leap(self, at: float) -> bool:
        far = self.r.context.furthest_ft
        point = any(
            (t := self.r.number(n)) is not None and t.point and abs(t.value - at) < 0.001 for n in self.numbers.free
        )
        ended = any(d.word in ("stop", "end") for d in self.drafts)
        return at > 400 or (not point and not ended and at > far + FARTHEST_LEAP_FT and at >= 200)

    def _unknown(self, n: int, way: Way, best: tuple[str, ...]) -> "tuple[Say | None, tuple[str, ...]]":
        t = self.r.number(n)
        assert t is not None
        at = way.at if way.at is not None else 0.0
        finding = next((d for d in self.drafts if d.finding), None)
        offers: list[str] = []
        if finding is not None and t.kind == "num":
            for percent in (True, False):
                other = copy.copy(finding)
                if percent and t.value > 8:
                    other.percent = (t.value, t.value)
                    offers.append(row(at, way.to, [other]))
                elif not percent and t.value <= 8:
                    other.inch = t.value
                    offers.insert(0, row(at, way.to, [other]))
                    again = copy.copy(finding)
                    again.percent = (t.value, t.value)
                    offers.append(row(at, way.to, [again]))
            if t.value > at and way.to is None:
                offers.append(row(at, t.value, [finding]))
        else:
            offers = list(best)
        return Say.of("{value} of what?", value=shown(t.value)), tuple(offers)

    def _half(self, way: Way) -> "tuple[Say | None, tuple[str, ...]]":
        assert self.half is not None
        d, value = self.half
        at = way.at if way.at is not None else self.r.context.last_ft or 0.0
        inch, share = copy.copy(d), copy.copy(d)
        if d.word == "joint":
            inch, share = Draft("offset", d.at, d.clause), Draft("offset", d.at, d.clause)
        inch.inch = value
        share.percent = (round(value * 100), round(value * 100))
        order = (share, inch) if d.word == "sag" else (inch, share)
        return Say.of(
            "{inches} in, or {percent} percent of the pipe?", inches=shown(value), percent=shown(value * 100)
        ), tuple(row(at, way.to, [x]) for x in order)

    def _impossible(self, d: Draft, way: Way, best: tuple[str, ...]) -> "tuple[Say | None, tuple[str, ...]] | None":
        bore = self._bore(d)
        at = way.at if way.at is not None else self.r.context.last_ft or 0.0

        def corrected(inch: float | None = None, depth: float | None = None) -> tuple[str, ...]:
            other = copy.copy(d)
            if inch is not None:
                other.inch = inch
            if depth is not None:
                other.depth_ft = depth
            return (row(at, way.to, [other]),)

        if d.finding and d.word not in ("hole", "gap", "crack", "collapse") and d.inch is not None and d.inch >= bore:
            if d.word == "offset" and d.inch >= bore:
                share = copy.copy(d)
                share.inch, share.percent = None, (d.inch, d.inch)
                return Say.of(
                    "an offset of {inches} in, in a pipe of {bore} in?", inches=shown(d.inch), bore=shown(bore)
                ), (
                    *(corrected(d.inch / 10) if 10 <= d.inch < 10 * bore else ()),
                    *((row(at, way.to, [share]),) if d.inch >= 10 and d.inch <= 100 else ()),
                    row(at, way.to, [Draft("collapse", d.at, d.clause)]),
                )
            return Say.of(
                "{word} of {inches} in, in a pipe of {bore} in?", word=d.word, inches=shown(d.inch), bore=shown(bore)
            ), ()
        if d.word in ("hole", "gap") and d.inch is not None and d.inch > 2 * bore:
            return Say.of(
                "a {word} of {inches} in, in a pipe of {bore} in?", word=d.word, inches=shown(d.inch), bore=shown(bore)
            ), (
                *corrected(d.inch / 10),
                row(at, way.to, [Draft("collapse", d.at, d.clause)]),
            )
        if d.percent and d.percent[1] > 100:
            return more_than_whole(d.percent[1]), ()
        if d.word == "branch" and d.inch is not None and (d.inch not in SIZES_IN or d.inch > max(bore, 4) + 2):
            return Say.of("a branch of {inches} in?", inches=shown(d.inch)), best
        if d.word == "size" and d.inch is not None and d.inch not in SIZES_IN:
            return Say.of("a pipe of {inches} in?", inches=shown(d.inch)), best
        if d.word in ("loc", "depth", "pothole") and d.depth_ft is not None and d.depth_ft < LEAST_DEPTH_FT:
            offset = Draft("offset", d.at, d.clause, inch=d.depth_ft * 12, direction="down")
            return Say.of("a depth of {inches} in?", inches=shown(d.depth_ft * 12)), (
                row(at, way.to, [offset]),
                row(at, way.to, [d]),
            )
        if d.depth_ft is not None and d.word in ("loc", "depth", "pothole", "invert"):
            if self.bare_depth and d.depth_ft > MOST_BARE_DEPTH:
                feet = () if d.depth_ft > DEEP_FT else (row(at, way.to, [d]),)
                return Say.of("{value} inches or feet deep?", value=shown(d.depth_ft)), (
                    *corrected(depth=d.depth_ft / 12),
                    *feet,
                )
            if d.depth_ft > DEEP_FT:
                inches = corrected(depth=d.depth_ft / 12) if d.depth_ft / 12 <= DEEP_FT else ()
                feet = (row(at, way.to, [d]),) if d.depth_ft <= MAIN_DEPTH_FT else ()
                return Say.of("{value} ft is deeper than house drains lie; feet or inches?", value=shown(d.depth_ft)), (
                    *inches,
                    *feet,
                )
        return None

    def _bore(self, d: Draft) -> float:
        return self.r.context.bore_in

    def _offers(self, d: Draft, way: Way) -> tuple[str, ...]:
        at = way.at if way.at is not None else self.r.context.last_ft or 0.0
        to = way.to
        out = []
        for grade in ("light", "moderate", "severe"):
            other = copy.copy(d)
            other.grade = grade
            out.append(row(at, to, [*(x for x in self.drafts if x is not d), other]))
        return tuple(out)
