"""How far a sunken pipe must be laid anew comes from levels only; without them the length is an allowance, not a price.

>>> from tests.made_up.stretch import limits, need, stretch
>>> measured_dip(stretch(method="trench", needs=(need("sag"),), fall_ft=None), limits()).effect.value
'no fixed price'
>>> measured_dip(stretch(method="trench", needs=(need("sag"),), fall_ft=0.5), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Feet, Say
from estimator.scopes.rules.concern import LAYS
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.lining_keeps_the_grade import DIPS
from estimator.scopes.rules.rule import Answers, Rule, Ruling


def measured_dip(it: StretchFacts, limits: Limits) -> Answers:
    if it.fall_ft is not None or not any(set(DIPS) & set(n.kinds) and not n.watched for n in it.needs):
        return None
    return Ruling(
        effect=Effect.NO_FIXED_PRICE,
        homeowner=Say.of(
            "The length of pipe to replace so that it drains is not measured yet. The length here is an allowance."
        ),
        estimator=Say.of(
            "No levels at both ends: run-out taken as {allowance}; take levels before a fixed price.",
            allowance=Feet(limits("sag_run_out_ft")),
        ),
        facts=frozenset({"levels_missing"}),
    )


RULE = Rule(
    id="dip-length-is-measured",
    numbers=("D02",),
    concerns=LAYS,
    statement="A dip is relaid until the new fall meets the old pipe; without levels that length is an allowance and no fixed price.",
    reason="Both ends of standing water lie at one height, so the wet length alone gives no fall. A locator's depth never gives fall.",
    source="plain arithmetic",
    settled_by="level",
    worse="offering what cannot work",
    reads=("sag_run_out_ft",),
    applies=measured_dip,
)
