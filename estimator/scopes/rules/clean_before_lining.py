"""A liner copies what it lies on, so roots and build-up come out and the pipe is filmed again first.

>>> from tests.made_up.stretch import limits, stretch
>>> clean_first(stretch("roots 30%"), limits()).effect.value
'requires first'
>>> clean_first(stretch("crack"), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import LINES
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling

DIRT = ("roots", "scale", "grease", "mud")


def clean_first(it: StretchFacts, limits: Limits) -> Answers:
    dirty = [f for f in it.of(*DIRT) if not f.after_cleaning]
    if not dirty:
        return None
    return Ruling(
        effect=Effect.REQUIRES_FIRST,
        homeowner=Say.of("We clean the pipe and inspect it again before we line it."),
        estimator=Say.of(
            "{what} in the length to be lined: clean, re-film, then decide.",
            what=", ".join(sorted({f.kind for f in dirty})),
        ),
        facts=frozenset({"clean_first", "film_again"}),
    )


RULE = Rule(
    id="clean-before-lining",
    numbers=("R02", "D01"),
    concerns=LINES,
    statement="Roots and build-up are removed and the pipe is filmed again before any liner.",
    reason="A liner hardens over whatever it touches; a root mass or crust under it stays there as a bump.",
    source=COMMON_PRACTICE,
    worse="offering what cannot work",
    applies=clean_first,
)
