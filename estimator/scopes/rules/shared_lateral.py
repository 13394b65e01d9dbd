"""Another house drains into the same line: its owner agrees first, and its water is stopped while the pipe is open.

>>> from tests.made_up.stretch import limits, stretch
>>> shared(stretch(house={"shared_lateral": True}), limits()).effect.value
'caution'
>>> shared(stretch(), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import LINES, NEW_PIPE, ONLY_CLEANS
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def shared(it: StretchFacts, limits: Limits) -> Answers:
    if not it.house.shared_lateral:
        return None
    return Ruling(
        effect=Effect.CAUTION,
        homeowner=Say.of(
            "Another house drains into this line. Its owner must agree to the work. That house must not use water while the pipe is open."
        ),
        estimator=Say.of(
            "Shared lateral: written consent of the other owner; no water from there while the pipe is open; watch that house's lowest fixture while cleaning or jetting."
        ),
    )


RULE = Rule(
    id="shared-lateral",
    numbers=(),
    concerns=NEW_PIPE | LINES | ONLY_CLEANS,
    statement="A line another house drains into: consent of its owner, its water stopped, its fixtures watched.",
    reason="Sewage of the other house comes while the pipe is open, and a jet can push it up into that house.",
    source=COMMON_PRACTICE,
    worse="leaving out a caution",
    applies=shared,
)
