"""What the findings mean and which ways of repair they leave open: Evidence, Need, Verdict."""

from enum import StrEnum
from typing import Literal

from estimator.model.frozen import Frozen
from estimator.model.line import Finding, Grade
from estimator.model.say import Say
from estimator.model.stretch import Stretch
from estimator.model.test_read import TestRead

FLOOR_RULE = "floor-margin"
"""The name under which an owner lets a price go below the floor: [[override]] rule = "floor-margin"."""


class Evidence(Frozen, kw_only=True):
    """A diagnosis rule that fired: what was seen together, what it means, what must be confirmed first."""

    rule: str
    line: str
    stretch: Stretch | None
    findings: tuple[str, ...]
    meaning: Say
    confirm: Say | None = None
    asks: bool = False  # `confirm` is a question for a return visit


PLAN = 2
"""From this severity on a repair is planned."""


class Need(Frozen, kw_only=True):
    """A bare stretch that must (or may) be repaired. Severity 0–4; urgency 0–4; `must` when leaving it is no answer."""

    id: str
    line: str
    stretch: Stretch
    kinds: tuple[str, ...]
    findings: tuple[Finding, ...]
    severity: int
    urgency: int
    grade: Grade
    must: bool
    whole_line: Literal["no", "option", "only"] = "no"
    because: tuple[str, ...] = ()  # ids of the evidence

    @property
    def watched(self) -> bool:
        """So slight that it is looked at again, and nothing is sold for it but what cleans."""
        return not self.must and self.severity < PLAN


class Question(Frozen, kw_only=True):
    """Something the return visit should settle: what to find out, where; `not_fixed` is what the homeowner is told where no
    price is fixed before it is answered.
    """

    about: Say
    line: str = ""
    stretch: Stretch | None = None
    not_fixed: Say | None = None


class LiftStep(Frozen):
    """One step of the order of tests, repairs and foundation lift, with the ids of the needs it is about; `what` it is."""

    text: Say
    needs: tuple[str, ...] = ()
    what: Literal["test", "piers", "repairs", "lift"] = "test"


class LineUrgency(Frozen):
    """How soon a line must be seen to, 0 to 4, and what makes it sooner or later than its trouble alone would."""

    line: str
    level: int
    because: tuple[Say, ...] = ()


class Diagnosis(Frozen, kw_only=True):
    needs: tuple[Need, ...]
    evidence: tuple[Evidence, ...] = ()
    questions: tuple[Question, ...] = ()
    lift_steps: tuple[LiftStep, ...] = ()  # in their order; none without foundation work
    tests: tuple[TestRead, ...] = ()  # every water test of the job, in its order
    tests_compared: tuple[Say, ...] = ()  # each pair of tests of one section, in a sentence
    urgency: tuple[LineUrgency, ...] = ()  # one a line with a need, in the order of the lines


class Effect(StrEnum):
    """What a rule's answer does to a method over a stretch."""

    BLOCKS = "blocks"
    NO_FIXED_PRICE = "no fixed price"
    UNTIL_APPROVED = "until approved"
    DOES_NOT_FIX = "does not fix"
    REQUIRES_FIRST = "requires first"
    ADDS_WORK = "adds work"
    CAUTION = "caution"
    PREFERS = "prefers"


class Verdict(Frozen, kw_only=True):
    """One rule's answer on one method over one stretch; `facts` are the yes/no facts it adds to the takeoff."""

    rule: str
    effect: Effect
    method: str
    line: str
    stretch: Stretch
    homeowner: Say
    estimator: Say
    settings: tuple[str, ...] = ()
    facts: frozenset[str] = frozenset()
    overruled: str = ""  # the reason, when the owner overruled it
