"""In a crawl space too nobody runs water while anyone is under the house.

>>> from tests.made_up.stretch import limits, stretch
>>> locked(stretch(method="crawl replace", zones=("crawl",)), limits()).effect.value
'requires first'
>>> locked(stretch(method="crawl replace", zones=("yard",)), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import HANGS
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def locked(it: StretchFacts, limits: Limits) -> Answers:
    if "crawl" not in it.zones:
        return None
    return Ruling(
        effect=Effect.REQUIRES_FIRST,
        homeowner=Say.of("Do not run water or flush while anyone is under the house. We lock out and tag the drains."),
        estimator=Say.of("Crawl space: drains locked out and tagged while anyone is under the house."),
        facts=frozenset({"drains_locked_out"}),
    )


RULE = Rule(
    id="drains-are-locked-out",
    numbers=("R25",),
    concerns=HANGS,
    statement="The house drains are locked and tagged while anyone works on them under the house.",
    reason="One flush empties over whoever lies under an open pipe.",
    source=COMMON_PRACTICE,
    worse="hurting somebody",
    guards_people=True,
    applies=locked,
)
