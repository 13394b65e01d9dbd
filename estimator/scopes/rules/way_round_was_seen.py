"""A way round exists only if somebody saw it on site and wrote it down.

>>> from tests.made_up.stretch import limits, reroute, stretch
>>> seen(stretch(method="reroute"), limits()).effect.value
'blocks'
>>> seen(stretch(method="reroute", reroutes=(reroute(),)), limits()).effect.value  # named, no leg of it measured
'blocks'
>>> seen(stretch(method="reroute", reroutes=(reroute(yard_ft=20.0),)), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import A_WAY_ROUND
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def seen(it: StretchFacts, limits: Limits) -> Answers:
    if any(leg.length_ft > 0 for way in it.reroutes for leg in way.legs):
        return None
    return Ruling(
        effect=Effect.BLOCKS,
        homeowner=Say.of("We found no reroute for this drain on site."),
        estimator=Say.of(
            "No reroute in the notes replaces this stretch: walk it, measure legs and fall, write it down."
        ),
    )


RULE = Rule(
    id="way-round-was-seen",
    numbers=("R36",),
    concerns=A_WAY_ROUND,
    statement="A reroute is offered only along a way that was seen on site.",
    reason="Fall, walls and vents decide, and only a visit shows them.",
    source=COMMON_PRACTICE,
    worse="offering what cannot work",
    goes_without_saying=True,
    applies=seen,
)
