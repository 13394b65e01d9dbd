"""A bursting head pushes the ground aside, so anything close is uncovered and left open to see.

>>> from tests.made_up.stretch import limits, mark, stretch
>>> gas = lambda inches: (mark("crossing", choice="gas", lengths=(("above", inches / 12),)),)
>>> near(stretch(method="burst", marks=gas(11)), limits()).effect.value
'requires first'
>>> near(stretch(method="burst", marks=gas(12)), limits()) is None
True
"""

from math import hypot

from estimator.model.judgement import Effect
from estimator.model.line import Mark
from estimator.model.say import Say
from estimator.model.stretch import Stretch
from estimator.scopes.rules.concern import BREAKS_PIPE
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import Answers, Rule, Ruling


def near(it: StretchFacts, limits: Limits) -> Answers:
    close = [m for m in it.line_marks if m.word == "crossing" and _clear_in(m, it.stretch) < _least(m, limits)]
    if not close:
        return None
    return Ruling(
        effect=Effect.REQUIRES_FIRST,
        homeowner=Say.of("We uncover nearby utility lines by hand and watch them while the old pipe is broken."),
        estimator=Say.of(
            "{what} within the clearance of the burst: pothole and leave exposed.",
            what=", ".join(m.choice or "a line" for m in close),
        ),
        facts=frozenset({"potholes_first"}),
    )


def _clear_in(crossing: Mark, burst: Stretch) -> float:
    """Inches between the pipe that is burst and the crossing; 0 over it where nobody said, so that it counts as close."""
    feet = [crossing.length(label) for label in ("above", "below", "away", "")]
    return 12 * hypot(min((ft for ft in feet if ft is not None), default=0.0), burst.gap_ft(crossing.stretch))


def _least(crossing: Mark, limits: Limits) -> float:
    return limits("burst_water_in") if "water" in (crossing.choice or "") else limits("burst_utility_in")


RULE = Rule(
    id="burst-near-utilities",
    numbers=("R33",),
    concerns=BREAKS_PIPE,
    statement="A utility within 12 in of the burst, water within 24 in: potholed and left exposed.",
    reason="The ground that a bursting head moves breaks what is near.",
    source="Carmel, Indiana, city standard 33.159 for pipe bursting",
    worse="hurting somebody",
    reads=("burst_water_in", "burst_utility_in"),
    guards_people=True,
    applies=near,
)
