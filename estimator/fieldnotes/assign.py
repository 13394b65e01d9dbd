"""Numbers and words that no thing has taken yet, in; each given to the thing it says most about, out."""

from estimator.fieldnotes.drafts import DEEP, FILLS, TAKES_INCHES, TAKES_PERCENT, Draft
from estimator.fieldnotes.legs import Legs
from estimator.fieldnotes.sides import give_sides
from estimator.model.lengths import IN_PER_FT
from estimator.model.say import Say

FEW = ("few", "a few")
A_LITTLE = ("some", "a little", "little", "bit", "few", "a few", "small")
BIG_OR_SMALL = ("big", "large", "small", "huge", "little")
COUNTED = ("crack", "hole", "gap", "offset")
"""Few of these are several places, not a light one."""
FULL_OF = ("sag", *FILLS, "blocked", "reverse fall")
SHARE_OF = (*FILLS, "blocked", "oval")
"""What a bare fraction is a share of the pipe of."""
FILLED_BY = Say.of("full of what: water that stands, roots, mud, or scale?")
STANDS_FULL = Say.of("full of water: a belly, a block farther on, or a full main?")
UNDER_WATER = ("under water", "underwater", "bajo el agua", "bajo agua")


class Assign(Legs):
    """The things of a line with their amounts, signs and sides."""

    half: "tuple[Draft, float] | None" = None
    bare_depth = False
    counted: float | None = None

    def _amounts(self) -> None:
        """Inches, percents and fractions to the thing they stand with."""
        self._one_block()
        self._percents()
        self._share_of_nothing()
        self._full()
        self._inches()
        self._sizes_of_branches()
        self._fractions()
        for n, pair in self.numbers.clocks:
            if target := self._nearest(n, [d for d in self.drafts if d.finding or d.word == "branch"]):
                target.clock = pair
        for _, value in self.numbers.degrees:
            if bend := self._first("bend"):
                bend.degrees = value

    def _percents(self) -> None:
        takes = [d for d in self.drafts if d.finding and d.word != "utility"]
        for n, pair in self.numbers.percents:
            waits = [d for d in takes if d.short_of_amount]
            target = self._nearest(n, takes)
            if target and waits and target.word not in TAKES_PERCENT:
                target = self._nearest(n, waits)
            if target and (target.percent is None or pair[1] > target.percent[1]):
                target.percent = pair

    def _full(self) -> None:
        """`full of roots`; alone it is water that stands."""
        r = self.r
        for n in r.where("fraction", "full"):
            if n in r.used:
                continue
            target = self._nearest(n, [d for d in self.drafts if d.word in FULL_OF])
            r.used.add(n)
            if target and target.word != "sag":
                target.percent = target.percent or (100.0, 100.0)
            elif target and not target.percent and "full" not in target.signs:
                target.signs.append("full")
            elif not self.drafts and "sag" not in r.context.started:
                r.ask.append((STANDS_FULL, ("sag full starts", "sag, lens under starts", "blocked cannot pass")))

    def _inches(self) -> None:
        takes = [d for d in self.drafts if d.word in (*TAKES_INCHES, "branch", "tree", "size")]
        for n, value in self.numbers.inches:
            if target := self._nearest(n, [d for d in takes if d.inch is None]):
                target.inch = value
            elif deep := next((d for d in self.drafts if d.word in DEEP and d.depth_ft is None), None):
                deep.depth_ft = value / IN_PER_FT

    def _sizes_of_branches(self) -> None:
        """`4x3` of a branch or a hole, and one size for the left and the right of one fitting."""
        branches = [d for d in self.drafts if d.word == "branch"]
        for _, a, b in self.numbers.sizes:
            if branches:
                branches[0].inch = min(a, b)
            elif hole := self._first("hole", "gap"):
                hole.inch = max(a, b)
        if len(branches) == 2:
            sized = next((d.inch for d in branches if d.inch), None)
            for d in branches:
                d.inch = d.inch or sized

    def _fractions(self) -> None:
        for n, value in self.numbers.bare_fractions:
            target = self._nearest(n, [d for d in self.drafts if d.finding or d.word == "joint"])
            if target and target.word in SHARE_OF:
                target.percent = target.percent or (round(value * 100), round(value * 100))
            elif target:
                self.half = (target, value)

    def _of_the_amount(self, n: int) -> bool:
        """`maybe 10%`: about so much; what is there is no doubt."""
        after = self.r.number(n + 1)
        amount = after is not None and after.kind in ("in", "pct", "frac")
        if amount or (n + 1 < len(self.r.atoms) and "fraction" in self.r.atoms[n + 1].means):
            self.r.used.add(n)
            return True
        return False

    def _one_block(self) -> None:
        """`roots plugging 60%`: the roots are what blocks, and the percent is theirs."""
        block = next((d for d in self.drafts if d.word == "blocked" and not d.signs and d.inch is None), None)
        what = [d for d in self.drafts if block and d.word in FILLS and d.clause == block.clause]
        shares = self.numbers.percents or self.numbers.bare_fractions
        if block and len(what) == 1 and shares and not what[0].grade:
            self.drafts.remove(block)

    def _share_of_nothing(self) -> None:
        """`22-26 1/2 full`, `24 30%`: a share of the pipe, and nobody said of what."""
        if not self.drafts and not self.r.ask and self.numbers.percents:
            self.r.ask.append((FILLED_BY, ("sag", "roots", "mud", "scale")))

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
        self._grades(findings)
        give_sides(r, self.drafts, self._nearest, findings)
        if self._doubted(findings):
            return
        if after := r.where("after cleaning"):
            r.used |= set(after)
            for d in findings:
                d.after_cleaning = True
        if self._has_range() and any(w in r.words() for w in UNDER_WATER):
            for d in findings:
                if d.word == "sag" and d.short_of_amount:
                    d.signs.append("lens under")
        for d in self.drafts[:1]:
            d.photo, d.video = self.numbers.photo, self.numbers.video
        if self.numbers.every_ft and findings:
            self.numbers.every_ft = None

    def _grades(self, findings: list[Draft]) -> None:
        """How much in words; `lt` of an offset may be its side."""
        r = self.r
        for n in sorted(r.where("grade"), key=lambda n: "plain" in r.atoms[n].means):  # `some heavy roots`
            means = r.atoms[n].means
            if n in r.aside or ("side" in means and not findings) or (n in r.used and "finding" in means):
                continue
            takes = [d for d in findings if d.word not in ("utility", "insects", "fitting")]
            target = self._nearest(n, takes)
            if target and target.word == "offset" and target.inch is not None and "side" in means:
                target.direction = target.direction or means["side"]
                r.used.add(n)
            elif target and self._graded(target, r.text(n), means["grade"]):
                r.used.add(n)
        for n in [n for n in r.where("side") if "grade" in r.atoms[n].means]:
            d = self._nearest(n, findings)
            if d and d.word == "offset" and d.grade and (d.inch is not None or d.percent):  # `ofs lt 1 1/2"`
                d.direction, d.grade = d.direction or r.atoms[n].means["side"], ""
        for d in findings:
            if d.percent or ("hair" in d.signs and d.grade == "light"):
                d.grade = ""

    def _graded(self, d: Draft, typed: str, grade: str) -> bool:
        """Whether the thing takes this grade, or its size, its share or its number says it already."""
        if d.grade or (typed in A_LITTLE and d.percent):
            return bool(d.percent) or d.grade == grade
        if (d.inch is not None or typed in BIG_OR_SMALL) and d.word in ("hole", "crack", "gap", "blocked"):
            return True
        if typed in FEW and d.word in COUNTED:
            d.signs.append("several")
        else:
            d.grade = grade
        return True

    def _doubted(self, findings: list[Draft]) -> bool:
        """`maybe`, `looks like`, `?`: each to what it makes doubtful. True where it is asked whether a branch is live."""
        r = self.r
        doubts = [n for n in r.where("doubt") if not self._of_the_amount(n)]
        if any("lens under" in d.signs for d in findings):  # that is why nothing was seen
            r.used |= {n for n in doubts if r.atoms[n].means["doubt"] == "cannot tell"}
            doubts = [n for n in doubts if n not in r.used]
        marks = [n for n in range(len(r.atoms)) if r.is_mark(n, "?")]
        sag = [d.word for d in findings] == ["sag"]
        if sag and any("finding" in r.atoms[n - 1].means for n in marks if n):
            held = Say.of("is it a belly, or water held back by something farther on?")
            r.ask.append((held, ("sag suspected", "note")))
        if self._live_in_doubt(doubts, marks):
            return True
        r.used |= set(doubts)
        if self._name_in_doubt(doubts, marks) and not findings:
            return False  # not the branch
        if doubts and len(findings) > 1:
            if target := self._nearest(min(doubts[0] + 1, len(r.atoms) - 1), findings):
                target.doubt = True
        elif doubts or marks:
            for d in self.drafts:
                d.doubt = True
        return False

    def _live_in_doubt(self, doubts: list[int], marks: list[int]) -> bool:
        """`branch 3in maybe dead`, `live?`: asked, the likelier first."""
        r = self.r
        lives = [n for n in r.where("live") if r.atoms[n].means["live"] in ("live", "dead")]
        looks = any(r.text(n - 1) in ("looks", "look", "seems", "parece") for n in lives)
        beside = looks or any(0 < abs(n - k) <= 2 for n in lives for k in doubts)
        if not ((beside and self._first("branch")) or any(k - n == 1 for n in lives for k in marks)):
            return False
        dead = any(r.atoms[n].means["live"] == "dead" for n in lives)
        choices = ("DEAD", "LIVE") if dead else ("LIVE", "DEAD")
        r.ask.append((Say.of("live or dead? Run water into it and look?"), choices))
        return True

    def _name_in_doubt(self, doubts: list[int], marks: list[int]) -> bool:
        """`branch 2in left kitchen?`, `maybe from the hall bath`"""
        r = self.r
        if not any(d.name for d in self.drafts):
            return False
        follows = r.atoms[doubts[0] + 1 : doubts[0] + 4] if doubts else []
        return any("room" in a.means for a in (*(r.atoms[n - 1] for n in marks[:1]), *follows))
