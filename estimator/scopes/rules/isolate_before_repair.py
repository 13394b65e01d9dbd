"""A test that failed with a clean camera says that something leaks, not where: it is isolated before anything is repaired.

>>> from tests.made_up.stretch import limits, need, stretch
>>> isolate(stretch(method="tunnel", needs=(need("failed test"),)), limits()).effect.value
'blocks'
>>> isolate(stretch(method="tunnel", needs=(need("failed test"), need("hole"))), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import DIGS, FROM_INSIDE, NEW_PIPE
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import Answers, Rule, Ruling


def isolate(it: StretchFacts, limits: Limits) -> Answers:
    if not it.needs or not all("failed test" in n.kinds for n in it.needs):
        return None
    return Ruling(
        effect=Effect.BLOCKS,
        homeowner=Say.of(
            "The drains lose water and the leak is not located. We test each section separately before we price a repair."
        ),
        estimator=Say.of("Failed test, clean camera: price the isolation, no repair."),
    )


RULE = Rule(
    id="isolate-before-repair",
    numbers=("D09", "D14"),
    concerns=FROM_INSIDE | NEW_PIPE | DIGS,
    statement="A failed water test with a clean camera yields an isolation test and no repair.",
    reason="The leak may be in a side drain, a riser or a fixture's connection that this repair would not touch.",
    source="common practice; contractors' pages on static tests (read second-hand)",
    worse="offering what cannot work",
    applies=isolate,
)
