"""Spots are short, short liners shorter, and a burst needs some length to be worth its pits.

>>> from estimator.model.stretch import Stretch
>>> from tests.made_up.stretch import limits, stretch
>>> length(stretch(method="sectional liner", stretch=Stretch(0.0, 10.1)), limits()).effect.value
'blocks'
>>> length(stretch(method="sectional liner", stretch=Stretch(0.0, 10.0)), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Feet, Say
from estimator.scopes.rules.concern import HAS_A_LENGTH
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling
from estimator.works.methods import RECORDS, record_of


def length(it: StretchFacts, limits: Limits) -> Answers:
    most = limits(record_of(it.method).longest)
    if it.length_ft <= most:
        return None
    return Ruling(
        effect=Effect.BLOCKS,
        homeowner=Say.of("The damaged part is too long for this method."),
        estimator=Say.of(
            "{length} is over the {most} this method is good for.", length=Feet(round(it.length_ft, 1)), most=Feet(most)
        ),
    )


RULE = Rule(
    id="length-fits-the-method",
    numbers=("R14",),
    concerns=HAS_A_LENGTH,
    statement="A spot, a short liner, a shot, a pull and a jet each reach only so far.",
    reason="Past that another way is meant: a trench for a yard spot, a strip for a floor spot.",
    source=COMMON_PRACTICE,
    worse="offering what cannot work",
    reads=tuple(method.longest for method in RECORDS.values() if method.longest),
    applies=length,
)
