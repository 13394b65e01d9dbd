"""No crew goes into a tunnel, or a pit of 4 ft and more, without a named competent person.

>>> from tests.made_up.stretch import dug, limits
>>> named(dug(2.0, method="tunnel"), limits()).effect.value
'requires first'
>>> named(dug(4.0), limits()).effect.value
'requires first'
>>> named(dug(3.99), limits()) is None
True
>>> named(dug(4.0, site={"competent_person": "the foreman"}), limits()) is None
True
"""

from estimator.knowledge.excavation import needs_ladder
from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import PEOPLE_BELOW
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import Answers, Rule, Ruling


def named(it: StretchFacts, limits: Limits) -> Answers:
    depth_ft = it.safe_depth_ft
    deep = bool(it.works.tunnels) or (depth_ft is not None and needs_ladder(depth_ft))
    if it.site.competent_person or not deep:
        return None
    return Ruling(
        effect=Effect.REQUIRES_FIRST,
        homeowner=Say.of("The competent person in charge of the excavation checks its safety every day."),
        estimator=Say.of("Name the competent person (site, competent_person) before a crew sheet is written."),
        facts=frozenset({"competent_person"}),
    )


RULE = Rule(
    id="competent-person-is-named",
    numbers=("R22", "R25"),
    concerns=PEOPLE_BELOW,
    statement="A tunnel, or a dig of 4 ft and more with tolerance: the competent person is named before a crew sheet is written.",
    reason="Somebody must decide, inspect and stop the work.",
    source="29 CFR 1926.651(k)",
    worse="hurting somebody",
    guards_people=True,
    applies=named,
)
