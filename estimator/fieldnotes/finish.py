"""Things and numbers of a line go together: amounts to their thing, one reading for all; standard words or a question come out."""

import copy
from typing import TYPE_CHECKING

from estimator.fieldnotes.account import left_over, unexplained
from estimator.fieldnotes.bare_figures import ways
from estimator.fieldnotes.drafts import DEEP, Draft, bare, row, shown, too_much
from estimator.fieldnotes.numbers_of_a_line import Way
from estimator.fieldnotes.understand import POINT_LIKE

if TYPE_CHECKING:
    from estimator.fieldnotes.meaning import Meaning
from estimator.fieldnotes.changes import Changes
from estimator.fieldnotes.lexicon import lexicon
from estimator.fieldnotes.unnamed import unnamed
from estimator.model.say import Say

TO_THE_END = (
    "to end", "to the end", "till end", "til end", "until end", "to end of line", "all the way to end", "rest of line",
    "rest of the line", "rest of the way", "hasta el fin", "hasta el final", "thru to end", "rest of pipe",
)  # fmt: skip
CLOSE_CALL = 1.0
AT_THE_LAST = ("loc", "depth", "pothole", "room", "size")
"""What may lie where the line before does: `locate 3 ft`."""
NEARLY_FT = 0.6
SIZED = frozenset(("blocked", "mud", "hole", "gap", "sag", "branch", "offset"))
SHARED = frozenset(("blocked", "mud", "sag", "roots", "grease"))
"""Answers that take the inches of the line, and those that take its percent."""


class Finish(Changes):
    """The meaning of a line: its rows in standard words, what is asked, what is left over."""

    def meaning(self) -> "Meaning":
        from estimator.fieldnotes.meaning import Meaning

        r = self.r
        self._legs()
        self._amounts()
        self._qualities()
        self._merged()
        way, second = self._way()
        asks = r.ask
        if not self.drafts and not asks:
            return unnamed(self.r, self.numbers, self._filled(("utility gas", "note"), way), way.at)
        self._counted(way)
        to_end = way.to is None and self._to_end(way)
        rows = self._rows(way, to_end)
        question, choices = self._doubts(way, second, to_end, rows) or (None, ())
        if asks:
            question, more = asks[0]
            if "EDGE" in more:
                zone = "yard" if r.context.zone in ("slab", "basement", "crawl") else "slab"
                more = tuple(zone if c == "EDGE" else c for c in more)
            choices = self._filled(more, way)
        left = left_over(r, rows)
        score = self._score(way)
        if not question and rows and (long := self.numbers.long_ft) is not None and not _is_long(way, long):
            question, choices = Say.of("{value} of what?", value=shown(long)), tuple(rows)
        if not question and (strange := self._strange(rows, way)):
            question, choices = strange, tuple(rows)
        if question:
            return Meaning(
                asked=question,
                choices=tuple(dict.fromkeys(choices)),
                left=left,
                score=score,
                at=way.at,
                to=way.to,
                short=any(d.short_of_amount or (d.word == "branch" and d.inch is None) for d in self.drafts),
            )
        return Meaning(rows=tuple(rows), left=left, score=score)

    def _counted(self, way: Way) -> None:
        """How many there are, of the one finding; or as many as places are named."""
        if self.numbers.count is None:
            return
        n, many = self.numbers.count
        findings = [d for d in self.drafts if d.finding]
        if many == 1 + len(way.more):
            self.r.aside.add(n)
        elif len(findings) == 1 and not way.more:
            findings[0].count = many

    def _merged(self) -> None:
        """`dips at 31.5 and holds water`: one thing said in two words."""
        first: dict[str, Draft] = {}
        for d in list(self.drafts):
            old = first.setdefault(d.word, d) if d.finding else d
            if old is d or not (bare(d) or bare(old)):
                continue
            kept, gone = (old, d) if bare(d) else (d, old)
            kept.signs += [s for s in gone.signs if s not in kept.signs]
            kept.leg, kept.doubt = kept.leg or gone.leg, kept.doubt or gone.doubt
            self.drafts.remove(gone)
            first[d.word] = kept

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
                counts = n == 0 and "room" in self.r.atoms[1].means
                if "/" not in t.text and (counts or self.r.text(n - 1).startswith(("bath", "unit", "apt"))):
                    self.counted = t.value
            elif role == "degrees":
                next(d for d in self.drafts if d.word == "bend").degrees = t.value
            elif role == "depth":
                d = next(d for d in self.drafts if d.word in DEEP)
                d.depth_ft = d.depth_ft if d.depth_ft is not None else t.value
                self.bare_depth = t.kind == "num" and not t.point
            elif role == "clock":
                target = next((d for d in self.drafts if d.finding or d.word == "branch"), None)
                if target is not None:
                    target.clock = (int(t.value), int(t.to or t.value))
            elif role == "inside":
                self.r.aside.add(n)
            elif role == "length":
                self.numbers.long_ft = t.value
                self.r.aside.add(n)
            elif role == "away":
                next(d for d in self.drafts if d.word == "tree").lengths.append(("away", t.value))
            elif role == "every":
                next(d for d in self.drafts if d.word == "joint").every_ft = t.value
        return best, second

    def _to_end(self, way: Way) -> bool:
        words = self.r.words()
        ended = any(p in words for p in TO_THE_END)
        if ended:
            for n in self.r.where("end"):
                self.r.used.add(n)
            for d in [d for d in self.drafts if d.word == "end"]:
                self.drafts.remove(d)
        return ended and any(d.finding for d in self.drafts)

    def _with_branch(self, way: Way, choice: str) -> list[str]:
        """The line in standard words, its branch LIVE, DEAD or NAME so and so."""
        for d in [d for d in self.drafts if d.word == "branch"]:
            if choice.startswith("NAME "):
                d.name = choice.removeprefix("NAME ")
            else:
                d.live = choice.lower()
        return self._rows(way, False)

    def _rows(self, way: Way, to_end: bool) -> list[str]:
        r = self.r
        at, to = way.at, way.to
        if at is None:
            if r.context.last_ft is not None and all(d.word in AT_THE_LAST for d in self.drafts):
                at = r.context.last_ft
            else:
                return []
        if to is None and self.numbers.long_ft is not None:
            to = at + self.numbers.long_ft
            self.numbers.long_ft = None
        if to_end:
            to = None
        spans = [d for d in self.drafts if d.word not in POINT_LIKE]
        points = [d for d in self.drafts if d not in spans]
        changes = any(d.word == "pipe" for d in self.drafts) and not (r.has("ends") or r.has("end"))
        if changes and len(r.where("material")) > 1 and (rows := self._two_pipes(at, to)):
            return rows
        if rows := self._two_sizes(at, to) or self._two_floors(at, to):
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
        for place, end in ((at, to), *way.more):
            if spans:
                rows.append(row(place, end, [copy.copy(d) for d in spans], to_end, way.about))
            if points:
                rows.append(
                    row(place, end if all(d.word == "utility" for d in points) else None, points, False, way.about)
                )
        return rows

    def _filled(self, choices: tuple[str, ...], way: Way) -> tuple[str, ...]:
        """Standard words with the place in front."""
        at = way.at
        out = []
        for choice in choices:
            if choice.startswith(("LIVE", "DEAD", "NAME ")) and at is not None:
                out += self._with_branch(way, choice)
            elif choice == "note":
                out.append("note")
            elif at is not None and choice not in ("OPENING", "SIZE"):
                where = shown(at) + ("" if way.to is None else f"-{shown(way.to)}")
                doubt = " suspected" if any(d.doubt for d in self.drafts) and "suspected" not in choice else ""
                inches = [v for _, v in self.numbers.inches]
                sized = choice.split()[0] in SIZED and not choice.endswith(" in")
                shares = [f" {shown(v)}%" for _, (_, v) in self.numbers.percents if choice.split()[0] in SHARED]
                amount = f" {shown(inches[0])}in" if sized and inches else (shares or [""])[0]
                out.append(f"{where} {choice}{amount}{doubt}")
            elif choice == "OPENING" and at is not None:
                inches = [v for _, v in self.numbers.inches if v < self.r.context.bore_in]
                kind = next((d.word for d in self.drafts if d.finding), "scale")
                if inches:
                    share = round((1 - inches[0] / self.r.context.bore_in) * 100)
                    where = shown(at) + ("" if way.to is None else f"-{shown(way.to)}")
                    out.append(f"{where} {kind} {share}%")
        return tuple(out)

    def _strange(self, rows: list[str], way: Way) -> Say | None:
        """A word that could be gas, or one that the reading leaves out."""
        r = self.r
        said = [dict(a.means) for a in r.atoms if a.means]
        near = next((a for a in r.atoms if a.near and dict(lexicon().means((a.near,))) not in said), None)
        if near is not None:
            return Say.of(
                "“{typed}”: was {word} meant? A word that may be gas, live or dead, or “cannot pass” is never guessed?",
                typed=near.text,
                word=near.near,
            )
        loose = unexplained(r, rows, len(way.more) + 1)
        return None if loose is None else Say.of("“{typed}”: what is there?", typed=loose.text)

    def _score(self, way: Way) -> float:
        explained = sum(1 for n, a in enumerate(self.r.atoms) if n in self.r.used or "plain" in a.means)
        return (
            way.score
            + 0.3 * explained
            + len([d for d in self.drafts if not d.short_of_amount])
            - 3 * len(self.r.ask)
            - 3 * sum(too_much(d) for d in self.drafts)
        )


def _is_long(way: Way, long_ft: float) -> bool:
    """`44-52, runs 8 ft`: so long the stretch is."""
    return way.at is not None and way.to is not None and abs(way.to - way.at - long_ft) < NEARLY_FT
