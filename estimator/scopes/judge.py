"""What the rules say of a way of repair over a stretch, asked once each; and which needs it puts right."""

from collections.abc import Iterable, Sequence
from typing import Protocol

from estimator.model.frozen import replace
from estimator.model.job import Job
from estimator.model.judgement import Effect, Need, Verdict
from estimator.model.line import CLEANABLE
from estimator.model.profile import Profile
from estimator.model.stretch import Stretch
from estimator.model.work import Repair
from estimator.model.works import Works
from estimator.scopes.ground import runs_under
from estimator.scopes.rules import StretchFacts, facts_of
from estimator.scopes.rules.cleaning_closes_no_opening import lived_with
from estimator.scopes.rules.rule import Rule
from estimator.scopes.rules.soft_blockage_clean_first import cleaned_first
from estimator.scopes.rules.verdicts import ON_THE_CURE
from estimator.tables.tables import Tables
from estimator.works import works_of
from estimator.works.methods import record_of


class May(Protocol):
    """A method and the facts of a stretch in, the verdicts of rules, or of all, out: `scopes.rules.verdicts.may`."""

    def __call__(
        self, method: str, facts: StretchFacts, tables: Tables, rules: Sequence[Rule] = ..., /
    ) -> tuple[Verdict, ...]: ...


FAILED_TEST = "failed test"
TESTED_ALONE = "section-fails-nothing-seen"


class Judge:
    """The rules on one job. Answers are remembered: the same question is asked of many candidates."""

    def __init__(self, job: Job, tables: Tables, may: May) -> None:
        self.job, self.tables, self._may = job, tables, may
        self._said: dict[tuple[str, str, Stretch, tuple[str, ...], str, str], tuple[Verdict, ...]] = {}
        self._fixed: dict[tuple[str, str], bool] = {}
        self.does_not_fix: dict[Verdict, None] = {}  # why a way is no answer to a need, in the order found

    def verdicts(
        self, method: str, line: str, stretch: Stretch, needs: tuple[Need, ...], reroute: str = "", entry: str = ""
    ) -> tuple[Verdict, ...]:
        """Every rule's answer on this method over this stretch, and on the works it takes."""
        asked = (method, line, stretch, tuple(n.id for n in needs), reroute, entry)
        if asked not in self._said:
            part = self._part_judged(method, line, stretch)
            works = self.works(method, line, stretch, reroute, entry)
            facts = facts_of(self.job, self.job.line(line), part, needs, self.tables, reroute, works, method)
            self._said[asked] = self._may(method, facts, self.tables)
        return self._said[asked]

    def works(self, method: str, line: str, stretch: Stretch, reroute: str = "", entry: str = "") -> Works:
        """What the method would do over this stretch."""
        repair = Repair(id="", method=method, line=line, stretch=stretch, reroute=reroute, entry=entry)
        return works_of(repair, self.job, self.tables)

    def _part_judged(self, method: str, line: str, stretch: Stretch) -> Stretch:
        """What the rules are asked about: of a tunnel or a strip through the floor, the part under the floor.

        What lies outside the slab edge is open in the pit.
        """
        if not record_of(method).to_the_edge:
            return stretch
        runs = runs_under(Profile(self.job.line(line)), "floor", stretch)
        return runs[0].common(stretch) or stretch if len(runs) == 1 else stretch

    def fixes(self, method: str, need: Need) -> bool:
        """Whether the method puts this need right, looking at nothing but the need and its own findings."""
        if (method, need.id) not in self._fixed:
            self._fixed[method, need.id] = self._fixes(method, need)
        return self._fixed[method, need.id]

    def _fixes(self, method: str, need: Need) -> bool:
        cleans = record_of(method).kind == "clean"
        if cleans and closed_by_dirt(need):
            return True  # what closes the pipe comes out first; what the camera then sees decides on the rest
        if cleans and lived_with(need):
            return True
        if cleans and (not set(need.kinds) & CLEANABLE or (need.must and "roots" in need.kinds)):
            return False  # nothing to clean out; or an opening that roots came in by and that must be closed
        if record_of(method).hands_over:
            return Profile(self.job.line(need.line)).past_the_lot(need.stretch)
        if record_of(method).settles or set(need.kinds) <= {FAILED_TEST}:
            return finds_out(method, need)
        works = self.works(method, need.line, need.stretch)
        facts = facts_of(self.job, self.job.line(need.line), need.stretch, (need,), self.tables, "", works, method)
        said = self._may(method, replace(facts, findings=need.findings), self.tables, ON_THE_CURE)
        against = [v for v in said if counts(v, Effect.DOES_NOT_FIX)]
        self.does_not_fix |= dict.fromkeys(against)
        return not against


def closed_by_dirt(need: Need) -> bool:
    """Roots, grease, wipes or mud stopped the camera and nobody has cleaned there yet."""
    return any(cleaned_first(f) and not f.after_cleaning for f in need.findings)


def counts(verdict: Verdict, *effects: Effect) -> bool:
    """The verdict has one of these effects and nobody overruled it."""
    return verdict.effect in effects and not verdict.overruled


def facts_in(verdicts: Iterable[Verdict]) -> frozenset[str]:
    """The yes/no facts the rules add, for the takeoff and the recipes."""
    return frozenset(fact for v in verdicts if not v.overruled for fact in v.facts)


def finds_out(method: str, need: Need) -> bool:
    """A test or a look is the answer where something is only suspected: there is nothing sure to repair yet.

    A leak known only from a water test is looked for section by section; what the camera could not pass is opened.
    """
    if need.grade == "seen":
        return False
    if record_of(method).measure == "section tests" and TESTED_ALONE in need.because:
        return False  # that section was tested by itself: it is inspected, not tested again
    return any(kind in record_of(method).settles for kind in need.kinds)
