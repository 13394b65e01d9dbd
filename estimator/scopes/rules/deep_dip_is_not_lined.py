"""Where a deep dip is the trouble, lining or bursting cures nothing and is not offered.

>>> from estimator.scopes.rules.examples import limits, need, stretch
>>> deep_dip(stretch("sag 36%", needs=(need("sag"),)), limits()).effect.value
'blocks'
>>> deep_dip(stretch("sag 35%", needs=(need("sag"),)), limits()) is None
True
>>> deep_dip(stretch("sag 36%", "crack", needs=(need("sag"), need("crack"))), limits()) is None  # other trouble to cure
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.facts import StretchFacts, percent_of
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.lining_keeps_the_grade import DIPS
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def deep_dip(it: StretchFacts, limits: Limits) -> Answers:
    most = limits("sag_blocks_percent")
    deep = [f for f in it.of(*DIPS) if f.kind != "sag" or percent_of(f, it.bore_in) > most]
    kinds = {k for n in it.needs for k in n.kinds} or {f.kind for f in it.findings}
    if not deep or kinds - set(DIPS):
        return None
    return Ruling(
        effect=Effect.BLOCKS,
        homeowner=Say.of("The trouble here is a dip or a wrong slope, and this way would keep it."),
        estimator=Say.of("Dip over the limit is the only trouble: a liner or burst pipe would not cure it."),
    )


RULE = Rule(
    id="deep-dip-is-not-lined",
    numbers=("R07",),
    methods=("reline", "sectional liner", "burst"),
    statement="A dip deeper than about a third of the bore is not cured by lining or bursting alone.",
    reason="It would be paid for and still hold water.",
    source=COMMON_PRACTICE,
    worse="offering what cannot work",
    reads=("sag_blocks_percent",),
    applies=deep_dip,
)
