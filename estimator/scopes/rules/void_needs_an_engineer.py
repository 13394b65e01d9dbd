"""A hollow under a slab or drive is looked at by an engineer before anyone works on or under it.

>>> from tests.made_up.stretch import limits, stretch
>>> hollow(stretch("hole void", method="tunnel", zones=("slab",)), limits()).effect.value
'requires first'
>>> hollow(stretch("hole soil seen", method="tunnel", zones=("slab",)), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import RENEWS
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def hollow(it: StretchFacts, limits: Limits) -> Answers:
    if not it.has_sign("void") or not {"slab", "drive", "basement", "street"} & set(it.zones):
        return None
    return Ruling(
        effect=Effect.REQUIRES_FIRST,
        homeowner=Say.of(
            "There is an empty space in the soil under the floor or paving. Keep off it until an engineer has looked. The price includes an allowance to fill it."
        ),
        estimator=Say.of(
            "Void under slab or paving: engineer first, keep people and machines off; the fill is priced as an allowance (void_fill_cy)."
        ),
        facts=frozenset({"engineer", "void"}),
    )


RULE = Rule(
    id="void-needs-an-engineer",
    numbers=("D05",),
    concerns=RENEWS,
    statement="A void under slab, drive or street: an engineer first.",
    reason="What stands on it has no support.",
    source=COMMON_PRACTICE,
    settled_by="engineer",
    worse="hurting somebody",
    guards_people=True,
    applies=hollow,
)
