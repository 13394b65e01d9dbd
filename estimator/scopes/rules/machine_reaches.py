"""A machine digs only as deep as its arm reaches: beyond that another machine is hired, and the price is not fixed.

>>> from tests.made_up.stretch import dug, limits
>>> reaches(dug(10.1, facts=("depth_over_8",)), limits()).effect.value
'no fixed price'
>>> reaches(dug(10.0, facts=("depth_over_8",)), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Feet, Say
from estimator.scopes.rules.concern import OPENS_GROUND
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def reaches(it: StretchFacts, limits: Limits) -> Answers:
    depth_ft, reach_ft = it.safe_depth_ft, limits("machine_reach_ft")
    if depth_ft is None or depth_ft <= reach_ft:
        return None
    return Ruling(
        effect=Effect.NO_FIXED_PRICE,
        homeowner=Say.of(
            "The pipe is deeper than our machine digs. We set a firm price after we choose the larger machine and the protective system."
        ),
        estimator=Say.of(
            "Depth with tolerance {depth}, the machine digs {reach}: a larger machine and its access, boxes one on another, priced apart; by hand it is not dug so deep without an engineer.",
            depth=Feet(round(depth_ft, 2)),
            reach=Feet(reach_ft),
        ),
    )


RULE = Rule(
    id="machine-reaches",
    numbers=(),
    concerns=OPENS_GROUND,
    statement="Deeper than the firm's machine reaches, locator's tolerance counted: no fixed price.",
    reason="Another machine, another way in and other protection are another job.",
    source=COMMON_PRACTICE + "; the reach is a firm's default",
    worse="offering what cannot work",
    reads=("machine_reach_ft",),
    applies=reaches,
)
