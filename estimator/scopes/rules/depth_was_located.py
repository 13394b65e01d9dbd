"""Where no depth was read nobody knows how deep the dig is: no fixed price for it.

>>> from tests.made_up.stretch import limits, stretch
>>> located(stretch(method="trench", depth_ft=None), limits()).effect.value
'no fixed price'
>>> located(stretch(method="trench", depth_ft=3.0), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import DIGS
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def located(it: StretchFacts, limits: Limits) -> Answers:
    unknown = [o for o in it.works.digs if not o.depth_known]
    if not unknown and (it.depth_ft is not None or not any(o.line == it.line for o in it.works.digs)):
        return None
    return Ruling(
        effect=Effect.NO_FIXED_PRICE,
        homeowner=Say.of("The depth of the pipe is not measured yet. We can set a firm price after we measure it."),
        estimator=Say.of("No depth on this line: locate it, say from which surface, before a fixed price for digging."),
        facts=frozenset({"depth_unlocated"}),
    )


RULE = Rule(
    id="depth-was-located",
    numbers=("R01",),
    concerns=DIGS,
    statement="A dig on a line without any depth reading has no fixed price.",
    reason="Depth decides protection, hours and whether a footing is in the way.",
    source=COMMON_PRACTICE,
    settled_by="locate",
    worse="offering what cannot work",
    applies=located,
)
