"""Numbers and words that no thing has taken yet, in; each given to the thing it says most about, out."""

from estimator.fieldnotes.drafts import FILLS, TAKES_INCHES, TAKES_PERCENT, Draft
from estimator.fieldnotes.legs import Legs
from estimator.fieldnotes.sides import give_sides
from estimator.model.say import Say

FEW = ("few", "a few")
COUNTED = ("crack", "hole", "gap", "offset")
"""Few of these are several places, not a light one."""
STANDS_FULL = Say.of("full of water: a belly, a block farther on, or a full main?")


class Assign(Legs):
    """The things of a line with their amounts, signs and sides."""

    half: "tuple[Draft, float] | None" = None
    bare_depth = False
    counted: float | None = None

    def _amounts(self) -> None:
        """Inches, percents and fractions to the thing they stand with."""
        r = self.r
        self._one_block()
        for n, pair in self.numbers.percents:
            takes = [d for d in self.drafts if d.finding and d.word not in ("utility",)]
            waits = [d for d in takes if d.short_of_amount]
            target = self._nearest(n, takes)
            if target is not None and waits and target.word not in TAKES_PERCENT:
                target = self._nearest(n, waits)
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
                    if target.word == "sag" and target.percent:
                        continue
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
                            STANDS_FULL,
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
        what = [d for d in self.drafts if block is not None and d.word in FILLS and d.clause == block.clause]
        if (
            block is not None
            and len(what) == 1
            and (self.numbers.percents or self.numbers.bare_fractions)
            and not what[0].grade
        ):
            self.drafts.remove(block)

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
        for n in sorted(r.where("grade"), key=lambda n: "plain" in r.atoms[n].means):  # `some heavy roots`
            if n in r.aside or ("side" in r.atoms[n].means and not findings):
                continue
            if n in r.used and "finding" in r.atoms[n].means:
                continue
            takes = [d for d in findings if d.word not in ("utility", "insects", "fitting")]
            target = self._nearest(n, takes)
            if (
                target is not None
                and target.word == "offset"
                and target.inch is not None
                and "side" in r.atoms[n].means
            ):
                target.direction = target.direction or r.atoms[n].means["side"]
                r.used.add(n)
                continue
            if (
                target is not None
                and not target.grade
                and not (r.text(n) in ("some", "a little", "little", "bit", "few", "a few", "small") and target.percent)
            ):
                small_or_big = target.inch is not None or r.text(n) in ("big", "large", "small", "huge", "little")
                if small_or_big and target.word in ("hole", "crack", "gap", "blocked"):
                    r.used.add(n)
                    continue
                if r.text(n) in FEW and target.word in COUNTED:
                    target.signs.append("several")
                else:
                    target.grade = r.atoms[n].means["grade"]
                r.used.add(n)
            elif target is not None and (target.percent or target.grade == r.atoms[n].means["grade"]):
                r.used.add(n)
        for n in [n for n in r.where("side") if "grade" in r.atoms[n].means]:
            d = self._nearest(n, findings)
            if d and d.word == "offset" and d.grade and (d.inch is not None or d.percent):  # `ofs lt 1 1/2"`
                d.direction, d.grade = d.direction or r.atoms[n].means["side"], ""
        for d in findings:
            if d.grade and d.percent:
                d.grade = ""
            if "hair" in d.signs and d.grade == "light":
                d.grade = ""
        give_sides(self.r, self.drafts, self._nearest, findings)
        doubts = [n for n in r.where("doubt") if not self._of_the_amount(n)]
        if any("lens under" in d.signs for d in findings):  # that is why nothing was seen
            r.used |= {n for n in doubts if r.atoms[n].means["doubt"] == "cannot tell"}
            doubts = [n for n in doubts if n not in r.used]
        marks = [n for n in range(len(r.atoms)) if r.is_mark(n, "?")]
        if (
            len(findings) == 1
            and findings[0].word == "sag"
            and any("finding" in r.atoms[n - 1].means for n in marks if n)
        ):
            r.ask.append(
                (Say.of("is it a belly, or water held back by something farther on?"), ("sag suspected", "note"))
            )
        lives = [n for n in r.where("live") if r.atoms[n].means["live"] in ("live", "dead")]
        branch = next((d for d in self.drafts if d.word == "branch"), None)
        looks = any(r.text(n - 1) in ("looks", "look", "seems", "parece") for n in lives)
        if (branch is not None and (looks or any(0 < abs(n - k) <= 2 for n in lives for k in doubts))) or any(
            0 < k - n <= 1 for n in lives for k in marks
        ):
            dead = any(r.atoms[n].means["live"] == "dead" for n in lives)
            choices = ("DEAD", "LIVE") if dead else ("LIVE", "DEAD")
            r.ask.append((Say.of("live or dead? Run water into it and look?"), choices))
            return
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
