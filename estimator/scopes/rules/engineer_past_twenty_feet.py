"""Deeper than 20 ft a registered engineer designs the dig.

>>> from tests.made_up.stretch import dug, limits
>>> past_twenty(dug(20.01), limits()).effect.value
'until approved'
>>> past_twenty(dug(20.0), limits()) is None
True
"""

from estimator.knowledge.excavation import needs_engineer
from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import PEOPLE_BELOW
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import Answers, Rule, Ruling


def past_twenty(it: StretchFacts, limits: Limits) -> Answers:
    depth_ft = it.safe_depth_ft
    if depth_ft is None or not needs_engineer(depth_ft):
        return None
    return Ruling(
        effect=Effect.UNTIL_APPROVED,
        homeowner=Say.of("The excavation is so deep that an engineer must design its protective system."),
        estimator=Say.of("Over 20 ft: protective system designed by a registered engineer."),
        facts=frozenset({"engineer"}),
    )


RULE = Rule(
    id="engineer-past-twenty-feet",
    numbers=("R23",),
    concerns=PEOPLE_BELOW,
    statement="Deeper than 20 ft: not without a registered engineer's design.",
    reason="The published tables of slopes and boxes end there.",
    source="29 CFR 1926.652(b), (c); Subpart P App. B Table B-1 note 3 (read second-hand)",
    settled_by="engineer",
    worse="hurting somebody",
    guards_people=True,
    applies=past_twenty,
)
