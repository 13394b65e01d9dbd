"""Things and numbers of a line go together: amounts to their thing, one reading for all; standard words or a question come out."""

import copy
from typing import TYPE_CHECKING

from estimator.fieldnotes.drafts import NEEDS_AMOUNT, Draft, row, shown
from estimator.fieldnotes.figures import FARTHEST_LEAP_FT, MOST_BARE_DEPTH, SIZES_IN, Numbers, Way, ways

if TYPE_CHECKING:
    from estimator.fieldnotes.understand import Meaning, Reader

POINT_LIKE = (
    "branch",
    "cleanout",
    "bend",
    "access",
    "stop",
    "end",
    "tree",
    "crossing",
    "utility",
    "loc",
    "invert",
    "pothole",
)
TAKES_INCHES = (
    "roots",
    "offset",
    "gap",
    "crack",
    "hole",
    "sag",
    "scale",
    "grease",
    "oval",
    "intruding",
    "blocked",
    "mud",
    "channel",
    "blister",
    "reverse fall",
    "leak",
    "fitting",
)
DEEPEST_FT = 25.0
CLOSE_CALL = 1.0


class Finish:
    def __init__(self, r: "Reader", numbers: Numbers, found: list[Draft]) -> None:
        self.r, self.numbers, self.drafts = r, numbers, found

    # ── the parts ─────────────────────────────────────────────────────────────────────────────

    def meaning(self) -> "Meaning":
        from estimator.fieldnotes.understand import Meaning

        r = self.r
        self._legs()
        self._amounts()
        self._qualities()
        way, second = self._way()
        asks = list(r.ask)
        if not self.drafts and not asks:
            return self._nothing(way)
        to_end = way.to is None and self._to_end(way)
        rows = self._rows(way, to_end)
        question, choices = self._doubts(way, second, to_end, rows)
        if asks:
            question, more = asks[0]
            if "EDGE" in more:
                zone = "yard" if r.context.zone in ("slab", "basement", "crawl") else "slab"
                more = tuple(zone if c == "EDGE" else c for c in more)
            choices = self._filled(more, way)
        left = self._left()
        score = self._score(way)
        if not question and (strange := self._strange()):
            question, choices = strange, tuple(rows)
        if question:
            return Meaning(
                asked=question, choices=tuple(dict.fromkeys(choices)), left=left, score=score, at=way.at, to=way.to
            )
        return Meaning(rows=tuple(rows), left=left, score=score)

    def _legs(self) -> None:
        r = self.r
        findings = [d for d in self.drafts if d.finding]
        if r.has("rises"):
            n = r.where("rises")[0]
            r.used |= set(r.where("rises"))
            sag = next((d for d in findings if d.word == "sag"), None)
            if sag is None:
                sag = Draft("sag", n, r.clause[n])
                self.drafts.append(sag)
            if not self._has_range():
                sag.leg = "starts"
            if any(w in r.text(n).split() for w in ("under", "underwater")) and "lens under" not in sag.signs:
                sag.signs.append("lens under")
            r.ask = [a for a in r.ask if "water pipe" not in a[0]]
            return
        if r.has("out of water"):
            n = r.where("out of water")[0]
            r.used |= set(r.where("out of water"))
            sag = next((d for d in findings if d.word == "sag"), None)
            if sag is None:
                sag = Draft("sag", n, r.clause[n])
                self.drafts.append(sag)
            sag.leg = "ends"
            return
        if len({d.word for d in findings}) != 1 or self._has_range():
            return
        only = findings[0]
        n = only.at
        near = [k for k in (n - 2, n - 1, n + 1, n + 2) if 0 <= k < len(r.atoms)]
        starts = [k for k in near if "starts" in r.atoms[k].means and r.text(k) not in ("into", "goes in")]
        ends = [
            k
            for k in near
            if "ends" in r.atoms[k].means
            or ("end" in r.atoms[k].means and r.text(k) in ("end", "ends", "fin", "termina", "acaba"))
        ]
        to_end = any(r.text(k - 1) in ("to", "till", "til", "until", "hasta", "thru", "the") for k in ends if k)
        if starts and not to_end:
            only.leg = "starts"
            r.used |= set(starts)
        elif ends and not to_end:
            only.leg = "ends"
            r.used |= set(ends)
        elif r.has("still") and only.word in r.context.started:
            only.leg = "still"
            r.used |= set(r.where("still"))
        if only.leg:
            for d in [d for d in self.drafts if d.word in ("end", "stop")]:
                self.drafts.remove(d)

    def _has_range(self) -> bool:
        return any((t := self.r.number(n)) is not None and t.kind == "range" for n in self.numbers.free)

    def _amounts(self) -> None:
        """Inches, percents and fractions to the thing they stand with."""
        r = self.r
        for n, pair in self.numbers.percents:
            target = self._nearest(n, [d for d in self.drafts if d.finding and d.word not in ("utility",)])
            if target is not None:
                target.percent = pair if target.percent is None or pair[1] > target.percent[1] else target.percent
        for n in r.where("fraction"):
            if r.atoms[n].means["fraction"] == "full" and n not in r.used:
                target = self._nearest(
                    n,
                    [
                        d
                        for d in self.drafts
                        if d.word in ("sag", "roots", "grease", "scale", "mud", "blocked", "reverse fall")
                    ],
                )
                r.used.add(n)
                if target is not None:
                    if target.word == "sag":
                        if "full" not in target.signs:
                            target.signs.append("full")
                    else:
                        target.percent = target.percent or (100.0, 100.0)
                elif "sag" in r.context.started:
                    pass
                elif not self.drafts:
                    r.ask.append(
                        (
                            "full of water: a belly, a block farther on, or a full main?",
                            ("sag full starts", "sag, lens under starts", "blocked cannot pass"),
                        )
                    )
        for n, value in self.numbers.inches:
            takes = [d for d in self.drafts if d.word in TAKES_INCHES or d.word in ("branch", "tree", "size")]
            target = self._nearest(n, [d for d in takes if d.inch is None])
            if target is None:
                loc = next(
                    (d for d in self.drafts if d.word in ("loc", "depth", "pothole", "invert") and d.depth_ft is None),
                    None,
                )
                if loc is not None:
                    loc.depth_ft = value / 12
                elif any(d.word == "beam" for d in self.drafts) or any(d.word == "cleaned" for d in self.drafts):
                    pass
                else:
                    self.stray_inches = True
            else:
                target.inch = value
        for _, a, b in self.numbers.sizes:
            branch = next((d for d in self.drafts if d.word == "branch"), None)
            hole = next((d for d in self.drafts if d.word in ("hole", "gap")), None)
            if branch is not None:
                branch.inch = min(a, b)
            elif hole is not None:
                hole.inch = max(a, b)
        if len([d for d in self.drafts if d.word == "branch"]) == 2:  # left and right of one fitting
            sized = next((d.inch for d in self.drafts if d.word == "branch" and d.inch), None)
            for d in self.drafts:
                if d.word == "branch":
                    d.inch = d.inch or sized
        for n, value in self.numbers.bare_fractions:
            target = self._nearest(n, [d for d in self.drafts if d.finding or d.word == "joint"])
            if target is not None and target.word in ("roots", "scale", "grease", "mud", "blocked", "oval"):
                target.percent = target.percent or (round(value * 100), round(value * 100))
            elif target is not None:
                self.half = (target, value)
        for n, pair in self.numbers.clocks:
            target = self._nearest(n, [d for d in self.drafts if d.finding or d.word == "branch"])
            if target is not None:
                target.clock = pair
        for _, value in self.numbers.degrees:
            target = next((d for d in self.drafts if d.word == "bend"), None)
            if target is not None:
                target.degrees = value

    half: "tuple[Draft, float] | None" = None
    stray_inches = False

    def _nearest(self, n: int, among: list[Draft]) -> Draft | None:
        clause = self.r.clause[n]
        same = [d for d in among if d.clause == clause]
        if same:
            return min(same, key=lambda d: (abs(d.at - n), d.at > n))
        before = [d for d in among if d.at < n]
        return before[-1] if before else min(among, key=lambda d: abs(d.at - n), default=None)

    def _qualities(self) -> None:
        """Grades, sides, doubt, pictures."""
        r = self.r
        findings = [d for d in self.drafts if d.finding]
        for n in r.where("grade"):
            if "side" in r.atoms[n].means and not findings:
                continue
            if n in r.used and "finding" in r.atoms[n].means:
                continue
            takes = [d for d in findings if d.word not in ("utility", "insects", "fitting")]
            target = self._nearest(n, takes)
            if (
                target is not None
                and not target.grade
                and not (r.text(n) in ("some", "a little", "little", "bit", "few", "a few", "small") and target.percent)
            ):
                if r.text(n) in ("big", "large", "small", "huge", "little") and target.word in ("hole", "crack", "gap"):
                    r.used.add(n)
                    continue
                target.grade = r.atoms[n].means["grade"]
                r.used.add(n)
            elif target is not None:
                r.used.add(n)
        for d in findings:
            if d.grade and d.percent:
                d.grade = ""
            if "hair" in d.signs and d.grade == "light":
                d.grade = ""
        self._sides(findings)
        doubts = r.where("doubt")
        marks = [n for n in range(len(r.atoms)) if r.is_mark(n, "?")]
        if doubts or marks:
            r.used |= set(doubts)
            named = next((d for d in self.drafts if d.name), None)
            near_name = named is not None and (
                (marks and "room" in r.atoms[marks[0] - 1].means)
                or (
                    doubts
                    and any("room" in r.atoms[k].means for k in range(doubts[0] + 1, min(doubts[0] + 4, len(r.atoms))))
                )
            )
            if near_name and not findings:
                pass  # the name is in doubt, not the branch
            elif doubts and len(findings) > 1:
                target = self._nearest(doubts[0] + 1 if doubts[0] + 1 < len(r.atoms) else doubts[0], findings)
                if target is not None:
                    target.doubt = True
            else:
                for d in self.drafts:
                    d.doubt = True
        if r.has("after cleaning"):
            r.used |= set(r.where("after cleaning"))
            for d in findings:
                d.after_cleaning = True
        if self._has_range() and any(
            w in r.words() for w in ("under water", "underwater", "bajo el agua", "bajo agua")
        ):
            for d in findings:
                if d.word == "sag" and d.short_of_amount:
                    d.signs.append("lens under")
        for d in self.drafts[:1]:
            d.photo, d.video = self.numbers.photo, self.numbers.video
        if self.numbers.every_ft and findings:
            self.numbers.every_ft = None

    def _sides(self, findings: list[Draft]) -> None:
        r = self.r
        for n in r.where("side"):
            if n in r.used or "grade" in r.atoms[n].means:
                continue
            side = r.atoms[n].means["side"]
            bend = next((d for d in self.drafts if d.word in ("bend", "cleanout")), None)
            target = self._nearest(n, findings)
            if bend is not None and not bend.direction:
                bend.direction = side
            elif target is None:
                continue
            elif target.word == "offset":
                target.direction = target.direction or side
            elif target.clock is None and side in ("left", "right"):
                target.clock = side
            elif (
                side in ("up", "down") and target.clock is None and target.word not in ("sag", "scale", "reverse fall")
            ):
                target.clock = "top" if side == "up" else "bottom"
            r.used.add(n)
        for n in r.where("part"):
            part = r.atoms[n].means["part"]
            if part not in ("top", "bottom") or n in r.used:
                continue
            bend = next((d for d in self.drafts if d.word == "bend"), None)
            if bend is not None and not bend.direction:
                bend.direction = "up" if part == "top" else "down"
                r.used.add(n)
                continue
            target = self._nearest(n, [d for d in findings if d.word not in ("sag", "mud", "channel", "reverse fall")])
            r.used.add(n)
            if target is None:
                continue
            if target.word == "offset":
                target.direction = target.direction or ("up" if part == "top" else "down")
            elif target.clock is None:
                target.clock = part

    # ── readings ──────────────────────────────────────────────────────────────────────────────

    def _way(self) -> tuple[Way, Way | None]:
        found = ways(self.r, self.numbers.free, self.drafts)
        best = found[0]
        second = next((w for w in found[1:] if w.meaning != best.meaning and best.score - w.score < CLOSE_CALL), None)
        for n, role in best.roles:
            t = self.r.number(n)
            assert t is not None
            self.r.used.add(n)
            if role == "size":
                for d in [d for d in self.drafts if d.word == "branch"]:
                    d.inch = d.inch if d.inch is not None else t.value
                if n == 0 and "room" in self.r.atoms[1].means:
                    self.counted = t.value
            elif role == "degrees":
                next(d for d in self.drafts if d.word == "bend").degrees = t.value
            elif role == "depth":
                d = next(d for d in self.drafts if d.word in ("loc", "depth", "pothole", "invert"))
                d.depth_ft = d.depth_ft if d.depth_ft is not None else t.value
                self.bare_depth = t.kind == "num" and not t.point
            elif role == "clock":
                target = next((d for d in self.drafts if d.finding or d.word == "branch"), None)
                if target is not None:
                    target.clock = (int(t.value), int(t.to or t.value))
            elif role == "length":
                self.numbers.long_ft = t.value
            elif role == "away":
                next(d for d in self.drafts if d.word == "tree").lengths.append(("away", t.value))
            elif role == "every":
                next(d for d in self.drafts if d.word == "joint").every_ft = t.value
        return best, second

    bare_depth = False
    counted: float | None = None

    def _to_end(self, way: Way) -> bool:
        words = self.r.words()
        ended = any(
            p in words
            for p in (
                "to end",
                "to the end",
                "till end",
                "til end",
                "until end",
                "to end of line",
                "all the way to end",
                "rest of line",
                "rest of the line",
                "rest of the way",
                "hasta el fin",
                "hasta el final",
                "thru to end",
                "rest of pipe",
            )
        )
        if ended:
            for n in self.r.where("end"):
                self.r.used.add(n)
            for d in [d for d in self.drafts if d.word == "end"]:
                self.drafts.remove(d)
        return ended and any(d.finding for d in self.drafts)

    def _rows(self, way: Way, to_end: bool) -> list[str]:
        r = self.r
        at, to = way.at, way.to
        if at is None:
            if r.context.last_ft is not None and any(d.word in ("loc", "depth", "pothole") for d in self.drafts):
                at = r.context.last_ft
            else:
                return []
        if to is None and self.numbers.long_ft is not None:
            to = at + self.numbers.long_ft
            self.numbers.long_ft = None
        if to_end:
            to = None
        spans = [d for d in self.drafts if not (d.word in POINT_LIKE or d.word in ("bend",))]
        points = [d for d in self.drafts if d not in spans]
        if (
            any(d.word in ("pipe",) for d in self.drafts)
            and not (r.has("ends") or r.has("end"))
            and len(self.r.where("material")) > 1
        ):
            rows = self._two_pipes(at, to)
            if rows:
                return rows
        if any(d.word == "again" for d in self.drafts):
            return [f"{shown(at)} = {self.drafts[0].choice}"]
        if self._again():
            kind = next(d.word for d in self.drafts if d.finding)
            return [f"{shown(at)}{'' if to is None else f'-{shown(to)}'} = {kind}"]
        if to is not None:
            for d in spans:
                if d.leg in ("starts", "ends", "still"):
                    d.leg = ""
        rows = []
        for place in (at, *way.more):
            if spans:
                rows.append(row(place, to, [copy.copy(d) for d in spans], to_end, way.about))
            if points:
                rows.append(
                    row(place, to if all(d.word == "utility" for d in points) else None, points, False, way.about)
                )
        return rows

    def _again(self) -> bool:
        """`same hole 20.4` in a later run: it was seen before."""
        r = self.r
        findings = [d for d in self.drafts if d.finding]
        if len(findings) != 1 or not r.has("again") or r.context.runs < 2:
            return False
        r.used |= set(r.where("again"))
        only = findings[0]
        return only.word in r.context.seen and not (only.percent or only.inch or only.grade)

    def _two_pipes(self, at: float, to: float | None) -> list[str]:
        """`pvc c/o to 18 then clay`: one material to the reading, another from there."""
        r = self.r
        where = [n for n in range(len(r.atoms)) if "material" in r.atoms[n].means]
        first, last = where[0], where[-1]
        reading = next(
            (
                n
                for n in range(len(r.atoms))
                if (t := r.number(n)) is not None and t.kind in ("num", "ft") and t.value == at
            ),
            None,
        )
        kinds = [r.atoms[n].means["material"] for n in (first, last)]
        if kinds[0] == kinds[1]:
            return []
        others = [d for d in self.drafts if d.word != "pipe"]
        if reading is not None and first < reading < last and to is None:
            begin = 0.0
            return [
                f"{shown(begin)}-{shown(at)} pipe {kinds[0]}",
                row(at, None, [Draft("pipe", last, 0, choice=kinds[1]), *others]),
            ]
        if to is not None:
            return (
                [f"{shown(at)}-{shown(to)} pipe {kinds[0]}", f"{shown(to)} pipe {kinds[1]}"] if r.has("change") else []
            )
        return []

    # ── what is doubtful ──────────────────────────────────────────────────────────────────────

    def _doubts(self, way: Way, second: Way | None, to_end: bool, rows: list[str]) -> "tuple[str, tuple[str, ...]]":
        r, context = self.r, self.r.context
        findings = [d for d in self.drafts if d.finding]
        best = tuple(rows)
        if not rows:
            if self.drafts and way.at is None:
                last = context.last_ft
                here = (
                    (row(last, None, self.drafts),) if last is not None and not any(d.leg for d in self.drafts) else ()
                )
                return "no footage: where is it?", (*here, "note")
            return "", ()
        at = way.at if way.at is not None else context.last_ft or 0.0
        unknown = [n for n, role in way.roles if role == "unknown"]
        if way.at is not None and self._leap(at):
            tenth = [row(round(at / 10, 4), None, self.drafts)] if way.to is None and at >= 100 else []
            return f"{shown(at)} ft is far beyond everything before; is a point missing?", (*tenth, *best)
        if self.counted is not None:
            return f"{shown(self.counted)} in, or {shown(self.counted)} of them?", best
        if unknown:
            return self._unknown(unknown[0], way, best)
        if self.half is not None:
            return self._half(way)
        if r.has("cannot tell") and "sign" not in r.atoms[r.where("cannot tell")[0]].means:
            sure = [copy.copy(d) for d in self.drafts]
            for d in sure:
                d.doubt = True
            return "what was seen for sure?", (row(at, way.to, sure), "note")
        if (len({d.word for d in findings}) > 1 and r.has("or")) or (r.has("or") and findings and r.has("unclear")):
            return "which of them is it?", (*(row(at, way.to, [d]) for d in findings), "note")
        if self.stray_inches or len(self.numbers.inches) > len(
            [
                d
                for d in self.drafts
                if d.inch is not None or d.depth_ft is not None or d.word in ("beam", "cleaned", "branch")
            ]
        ) + len(self.numbers.lengths):
            extra = [v for _, v in self.numbers.inches]
            if not any(d.word in ("loc", "pothole", "depth", "crossing") for d in self.drafts):
                return f"what do the {shown(extra[-1])} in belong to?", best
        for d in self.drafts:
            if (found := self._impossible(d, way, best)) is not None:
                return found
        if r.has("reading in inches"):
            return "is that inches or feet?", best
        for d in self.drafts:
            if d.short_of_amount and not (to_end and d.leg):
                if d.word == "sag" and self.numbers.bare_fractions:
                    continue
                offered = self._offers(d, way)
                return f"{d.word}: how much? such as {d.word} 30%, {d.word} 2in, light, moderate or severe", offered
            if d.word == "branch" and d.inch is None:
                sizes = []
                for size in (2.0, 3.0, 4.0):
                    other = copy.copy(d)
                    other.inch = size
                    sizes.append(row(at, None, [other]))
                return "what size is the branch?", (*sizes, *best)
            if d.word in ("depth", "invert", "pothole") and d.depth_ft is None:
                return f"{d.word}: how deep, and from which surface? such as {d.word} 3.4ft from lawn", ()
            if d.word == "beam" and not d.lengths:
                return "how deep and wide is the beam? such as beam 24in deep 12in wide", ()
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
            return f"{d.word} ends there, but where does it start?", (
                f"{shown(context.last_ft or 0.0)}-{shown(at)} {d.words().replace(' ends', '')}",
            )
        if second is not None and way.at is not None:
            return "which is meant?", (*best, *self._as(second))
        if (
            any(d.word in POINT_LIKE for d in self.drafts)
            and way.to is not None
            and not findings
            and not any(d.word in ("pipe", "size") for d in self.drafts)
            and any(d.word in ("branch", "bend", "cleanout", "tree", "stop", "end") for d in self.drafts)
        ):
            if way.to < 12:
                return "feet and inches, or from one to the other?", (
                    row(round(at + way.to / 12, 4), None, self.drafts),
                    row(at, None, self.drafts),
                )
            return "at which of the two?", (row(at, None, self.drafts), row(way.to, None, self.drafts))
        if self._feet_and_inches(at):
            return "feet and inches, or from one to the other?", (
                *best,
                *(row(low, high, self.drafts) for low, high in self._feet_and_inches(at)),
            )
        return "", ()

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

    def _leap(self, at: float) -> bool:
        far = self.r.context.furthest_ft
        point = any(
            (t := self.r.number(n)) is not None and t.point and abs(t.value - at) < 0.001 for n in self.numbers.free
        )
        ended = any(d.word in ("stop", "end") for d in self.drafts)
        return at > 400 or (not point and not ended and at > far + FARTHEST_LEAP_FT and at >= 200)

    def _unknown(self, n: int, way: Way, best: tuple[str, ...]) -> "tuple[str, tuple[str, ...]]":
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
        return f"{shown(t.value)} of what?", tuple(offers)

    def _half(self, way: Way) -> "tuple[str, tuple[str, ...]]":
        assert self.half is not None
        d, value = self.half
        at = way.at if way.at is not None else self.r.context.last_ft or 0.0
        inch, share = copy.copy(d), copy.copy(d)
        if d.word == "joint":
            inch, share = Draft("offset", d.at, d.clause), Draft("offset", d.at, d.clause)
        inch.inch = value
        share.percent = (round(value * 100), round(value * 100))
        order = (share, inch) if d.word == "sag" else (inch, share)
        return f"{shown(value)} in, or {shown(value * 100)} percent of the pipe?", tuple(
            row(at, way.to, [x]) for x in order
        )

    def _impossible(self, d: Draft, way: Way, best: tuple[str, ...]) -> "tuple[str, tuple[str, ...]] | None":
        bore = self._bore(d)
        at = way.at if way.at is not None else self.r.context.last_ft or 0.0

        def corrected(inch: float | None = None, depth: float | None = None) -> tuple[str, ...]:
            other = copy.copy(d)
            if inch is not None:
                other.inch = inch
            if depth is not None:
                other.depth_ft = depth
            return (row(at, way.to, [other]),)

        if (
            d.word in ("offset", "sag", "scale", "roots", "grease", "mud", "intruding")
            and d.inch is not None
            and d.inch >= bore
        ):
            if d.word == "offset" and d.inch >= bore:
                return f"an offset of {shown(d.inch)} in cannot be in a {shown(bore)} in pipe", (
                    *((corrected(d.inch / 10)) if d.inch >= 10 else ()),
                    row(at, way.to, [Draft("collapse", d.at, d.clause)]),
                )
            return f"{d.word} of {shown(d.inch)} in cannot be in a {shown(bore)} in pipe", ()
        if d.word in ("hole", "gap") and d.inch is not None and d.inch > 2 * bore:
            return f"a {d.word} of {shown(d.inch)} in in a {shown(bore)} in pipe?", corrected(d.inch / 10)
        if d.percent and d.percent[1] > 100:
            return f"{shown(d.percent[1])} percent is more than the whole pipe", ()
        if d.word == "branch" and d.inch is not None and (d.inch not in SIZES_IN or d.inch > max(bore, 4) + 2):
            return f"a branch of {shown(d.inch)} in?", best
        if d.word == "size" and d.inch is not None and d.inch not in SIZES_IN:
            return f"a pipe of {shown(d.inch)} in?", best
        if d.depth_ft is not None and d.word in ("loc", "depth", "pothole", "invert"):
            if self.bare_depth and d.depth_ft > MOST_BARE_DEPTH:
                feet = () if d.depth_ft > DEEPEST_FT else (row(at, way.to, [d]),)
                return f"{shown(d.depth_ft)} inches or feet deep?", (*corrected(depth=d.depth_ft / 12), *feet)
            if d.depth_ft > DEEPEST_FT:
                return f"{shown(d.depth_ft)} ft is deeper than a house drain lies; inches, or a slip?", corrected(
                    depth=d.depth_ft / 12
                )
        if d.word == "sag" and self.numbers.long_ft is not None:
            return None
        return None

    def _bore(self, d: Draft) -> float:
        return self.r.context.bore_in

    def _offers(self, d: Draft, way: Way) -> tuple[str, ...]:
        at = way.at if way.at is not None else self.r.context.last_ft or 0.0
        to = way.to
        if to is None and self.r.words() and self._length_said is not None:
            to = at + self._length_said
        out = []
        for grade in ("light", "moderate", "severe"):
            other = copy.copy(d)
            other.grade = grade
            out.append(row(at, to, [*(x for x in self.drafts if x is not d), other]))
        return tuple(out)

    _length_said: float | None = None

    def _filled(self, choices: tuple[str, ...], way: Way) -> tuple[str, ...]:
        """Standard words with the place in front."""
        at = way.at if way.at is not None else None
        out = []
        for choice in choices:
            if choice == "note":
                out.append("note")
            elif at is not None and choice not in ("OPENING", "SIZE"):
                where = shown(at) + ("" if way.to is None else f"-{shown(way.to)}")
                doubt = " suspected" if any(d.doubt for d in self.drafts) and "suspected" not in choice else ""
                inches = [v for _, v in self.numbers.inches]
                words = choice
                if (
                    inches
                    and words.split()[0] in ("blocked", "mud", "hole", "gap", "sag", "branch", "offset")
                    and "in" not in words.split()[-1:]
                ):
                    words = f"{words} {shown(inches[0])}in"
                out.append(f"{where} {words}{doubt}")
            elif choice == "OPENING" and at is not None:
                inches = [v for _, v in self.numbers.inches if v < self.r.context.bore_in]
                kind = next((d.word for d in self.drafts if d.finding), "scale")
                if inches:
                    share = round((1 - inches[0] / self.r.context.bore_in) * 100)
                    where = shown(at) + ("" if way.to is None else f"-{shown(way.to)}")
                    out.append(f"{where} {kind} {share}%")
        return tuple(out)

    # ── nothing, and what is left ─────────────────────────────────────────────────────────────

    def _nothing(self, way: Way) -> "Meaning":
        from estimator.fieldnotes.understand import Meaning

        r = self.r
        numbers = [n for n in range(len(r.atoms)) if r.number(n) is not None]
        unknown = [a for a in r.atoms if a.unknown]
        guarded = next((a for a in r.atoms if a.near), None)
        if guarded is not None:
            return Meaning(
                asked=f"“{guarded.text}”: was {guarded.near} meant? A word that may be gas or another utility is never guessed",
                choices=self._filled(("utility gas", "note"), way),
                score=2,
                at=way.at,
            )
        if numbers:
            if all("plain" in a.means or a.token is not None for a in r.atoms):
                last = r.context.last_ft
                size = self.numbers.inches[0][1] if self.numbers.inches else None
                offers = []
                if size is not None and way.at is not None:
                    offers = [f"{shown(way.at)} size {shown(size)}in", f"{shown(way.at)} branch {shown(size)}in"]
                values = [t.value for n in numbers if (t := r.number(n)) is not None]
                if len(values) == 2 and values[1] in (45.0, 90.0, 22.5) and values[0] != values[1]:
                    offers = [f"{shown(values[0])} bend {shown(values[1])}"]
                elif values and values[0] in (45.0, 90.0) and r.has("side") and last is not None:
                    offers = [f"{shown(last)} bend {shown(values[0])} {r.atoms[r.where('side')[0]].means['side']}"]
                return Meaning(asked="what is there?", choices=(*offers, "note"), score=1, at=way.at)
            words = " ".join(a.text for a in unknown) or r.words()
            return Meaning(asked=f"“{words}”: what is there?", choices=("note",), score=1, at=way.at)
        return Meaning(score=1)

    def _strange(self) -> str:
        """A word that could be gas, beside what was understood."""
        near = next((a for a in self.r.atoms if a.near), None)
        if near is not None:
            return f"“{near.text}”: was {near.near} meant? A word that may be gas, live or dead, or “cannot pass” is never guessed"
        return ""

    def _left(self) -> str:
        return " ".join(
            a.text
            for n, a in enumerate(self.r.atoms)
            if a.unknown
            or (
                n not in self.r.used and not a.token and ("plain" not in a.means or (self.r.denied and "no" in a.means))
            )
        )

    def _score(self, way: Way) -> float:
        explained = sum(1 for n, a in enumerate(self.r.atoms) if n in self.r.used or "plain" in a.means)
        return (
            way.score + 0.3 * explained + len([d for d in self.drafts if not d.short_of_amount]) - 3 * len(self.r.ask)
        )


__all__ = ["NEEDS_AMOUNT", "Finish"]
