"""No crew goes into a tunnel, or a pit of 4 ft and more, without a named competent person.

>>> from estimator.scopes.rules.examples import limits, measured
>>> named(measured(2.0, method="tunnel"), limits()).effect.value
'requires first'
>>> named(measured(4.0), limits()).effect.value
'requires first'
>>> named(measured(3.99), limits()) is None
True
>>> named(measured(4.0, site={"competent_person": "the foreman"}), limits()) is None
True
"""

from estimator.knowledge.excavation import needs_ladder
from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.measured import Measured
from estimator.scopes.rules.rule import Answers, Rule, Ruling


def named(it: Measured, limits: Limits) -> Answers:
    depth_ft = it.safe_depth_ft(limits)
    deep = it.repair.method == "tunnel" or (depth_ft is not None and needs_ladder(depth_ft))
    if it.at.site.competent_person or not deep:
        return None
    return Ruling(
        effect=Effect.REQUIRES_FIRST,
        homeowner=Say.of("A trained person answers for the safety of the dig every day."),
        estimator=Say.of("Name the competent person (site, competent_person) before a crew sheet is written."),
        facts=frozenset({"competent_person"}),
    )


RULE = Rule(
    id="competent-person-is-named",
    numbers=("R22", "R25"),
    methods=("yard spot", "slab spot", "break-through", "trench", "burst", "tunnel", "look and see", "crawl replace"),
    statement="A tunnel, or a dig of 4 ft and more with tolerance: the competent person is named before a crew sheet is written.",
    reason="Somebody must decide, inspect and stop the work.",
    source="29 CFR 1926.651(k)",
    worse="hurting somebody",
    reads=("locator_tolerance_percent", "locator_tolerance_min_ft"),
    guards_people=True,
    measures=named,
)
