"""In the street the city's permit, traffic control and patch come with the dig.

>>> from tests.made_up.stretch import limits, stretch
>>> street(stretch(method="trench", zones=("yard", "street")), limits()).effect.value
'adds work'
>>> street(stretch(method="trench", zones=("yard",)), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import OPENS_GROUND
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def street(it: StretchFacts, limits: Limits) -> Answers:
    opened = [o for o in it.works.open_digs if "street" in o.zones]
    if not opened:
        return None
    return Ruling(
        effect=Effect.ADDS_WORK,
        homeowner=Say.of(
            "Part of the work is in the street. It includes the city permit, traffic control and a patch to city standard."
        ),
        estimator=Say.of(
            "Right of way, opened by {opening}: city permit, traffic control, bond, street patch to the city's rule; who owns the pipe there?",
            opening=opened[0].name,
        ),
        facts=frozenset({"street_permit"}),
    )


RULE = Rule(
    id="street-work",
    numbers=("R41",),
    concerns=OPENS_GROUND,
    statement="Street or right of way: city permit, traffic control, bond and patch by the city's rule.",
    reason="The road is not the homeowner's to open; ownership from property line to main differs by city.",
    source=COMMON_PRACTICE,
    settled_by="",
    worse="leaving out a caution",
    applies=street,
)
