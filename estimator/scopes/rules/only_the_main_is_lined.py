"""Lining the main cures the main: a water test of the whole house can still fail at side drains and risers.

>>> from estimator.model.job import WaterTest
>>> from tests.made_up.stretch import limits, stretch
>>> failed = (WaterTest(section="all", result="failed"),)
>>> only_main(stretch(tests=failed), limits()).effect.value
'caution'
>>> only_main(stretch(), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import LINES
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def only_main(it: StretchFacts, limits: Limits) -> Answers:
    if not any(t.result == "failed" for t in it.tests):
        return None
    return Ruling(
        effect=Effect.CAUTION,
        homeowner=Say.of("A water test of the whole house can still fail at branch drains."),
        estimator=Say.of(
            "Test was the trigger: unlined branches, risers and liner ends can still leak; price end seals or promise “main lined” only."
        ),
        facts=frozenset({"end_seals"}),
    )


RULE = Rule(
    id="only-the-main-is-lined",
    numbers=("R43",),
    concerns=LINES,
    statement="Lining after a failed test: the whole system can still fail at unlined parts; price end seals or promise the main only.",
    reason="The test fills everything, the liner covers one pipe.",
    source=COMMON_PRACTICE,
    worse="leaving out a caution",
    applies=only_main,
)
