"""Where a dip is the only trouble, lining or bursting cures nothing and is not offered.

>>> from tests.made_up.stretch import limits, need, stretch
>>> deep_dip(stretch("sag 36%", needs=(need("sag"),)), limits()).effect.value
'blocks'
>>> deep_dip(stretch("sag 14%", needs=(need("sag", 1),)), limits()).effect.value  # shallow or deep, it stays
'blocks'
>>> deep_dip(stretch("sag 36%", "crack", needs=(need("sag"), need("crack"))), limits()) is None  # other trouble to cure
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import KEEPS_THE_OLD_PATH
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.lining_keeps_the_grade import DIPS
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def deep_dip(it: StretchFacts, limits: Limits) -> Answers:
    kinds = {k for n in it.needs for k in n.kinds} or {f.kind for f in it.findings}
    if not it.of(*DIPS) or kinds - set(DIPS):
        return None
    return Ruling(
        effect=Effect.BLOCKS,
        homeowner=Say.of("This method does not remove a low spot or a wrong slope."),
        estimator=Say.of(
            "A dip or reverse slope is the only trouble: a liner or burst pipe follows it and cures nothing."
        ),
    )


RULE = Rule(
    id="deep-dip-is-not-lined",
    numbers=("R07",),
    concerns=KEEPS_THE_OLD_PATH,
    statement="A dip or wrong slope that is the only trouble is not cured by lining or bursting.",
    reason="It would be paid for and still hold water.",
    source=COMMON_PRACTICE,
    worse="offering what cannot work",
    applies=deep_dip,
)
