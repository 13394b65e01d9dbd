"""A foreign pipe or cable through the drain may be gas: everything stops.

>>> from tests.made_up.stretch import limits, stretch
>>> in_the_bore(stretch("utility", method="clean"), limits()).effect.value
'blocks'
>>> in_the_bore(stretch("intruding", method="clean"), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import ANYTHING
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import Answers, Rule, Ruling


def in_the_bore(it: StretchFacts, limits: Limits) -> Answers:
    if not any(f.kind == "utility" for f in it.line_findings):
        return ASKED_BACK if any(u.danger for u in it.line_unclear) else None
    return Ruling(
        effect=Effect.BLOCKS,
        homeowner=Say.of(
            "A gas or other utility line runs through your drain. Do not use the drain, light anything or touch switches. If you smell gas, leave. Call 911 and the gas company from outside."
        ),
        estimator=Say.of(
            "Utility in the bore: stop everything, do not pull the tool back, people out, 911 and the gas company from outside; no cutter, no jet, no plug, no liner, no burst, no way round, no machine dig until the owner of the line has cleared it."
        ),
        facts=frozenset({"utility_in_the_bore"}),
    )


ASKED_BACK = Ruling(
    effect=Effect.BLOCKS,
    homeowner=Say.of(
        "Our notes may mean that gas or another utility line runs through or beside your drain. We do not work there until we know."
    ),
    estimator=Say.of(
        "A line of the log may mean a gas or other utility line, and is not answered: treat it as gas. No cutter, no jet, no plug, no liner, no burst, no machine dig until it is."
    ),
    facts=frozenset({"utility_in_the_bore"}),
)


RULE = Rule(
    id="utility-in-the-bore",
    numbers=("R46",),
    concerns=ANYTHING,
    statement="A foreign utility in the bore: nothing is done in or above that pipe until its owner has cleared it.",
    reason="A cutter through a gas line fills the house with gas through its drains.",
    source="common practice (gas cross-bores)",
    worse="hurting somebody",
    guards_people=True,
    applies=in_the_bore,
)
