"""Closing a pipe for good is a repair only for a dead branch; else it follows a reroute.

>>> from tests.made_up.stretch import branch, limits, stretch
>>> follows(stretch(method="abandon"), limits()).effect.value
'blocks'
>>> follows(stretch(method="abandon", branches=(branch(2.0, "dead"),)), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import ONLY_CLOSES
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def follows(it: StretchFacts, limits: Limits) -> Answers:
    if it.reroutes or any(b.live == "dead" for b in it.branches):
        return None
    return Ruling(
        effect=Effect.BLOCKS,
        homeowner=Say.of("This pipe is in use, so it cannot simply be closed."),
        estimator=Say.of("Live pipe without a way round: nothing to abandon."),
    )


RULE = Rule(
    id="abandon-follows-a-way-round",
    numbers=("R48",),
    concerns=ONLY_CLOSES,
    statement="A pipe is abandoned after a reroute, or where it is dead.",
    reason="Something drains through it.",
    source=COMMON_PRACTICE,
    worse="offering what cannot work",
    goes_without_saying=True,
    applies=follows,
)
