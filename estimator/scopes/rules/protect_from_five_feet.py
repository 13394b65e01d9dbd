"""From 5 ft on, or at any depth with a sign of caving, the sides are sloped, shored or boxed.

>>> from estimator.scopes.rules.examples import limits, measured
>>> protect(measured(5.0), limits()).effect.value
'requires first'
>>> protect(measured(4.99), limits()).effect.value
'caution'
>>> protect(measured(2.0, site={"caving_signs": True}), limits()).effect.value
'requires first'
"""

from estimator.knowledge.excavation import needs_system
from estimator.model.judgement import Effect
from estimator.model.say import Feet, Say
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.measured import Measured
from estimator.scopes.rules.rule import Answers, Rule, Ruling


def protect(it: Measured, limits: Limits) -> Answers:
    depth_ft = it.safe_depth_ft(limits)
    signs = it.at.site.caving_signs
    if depth_ft is None:
        return None
    if needs_system(depth_ft, "C", signs):
        return Ruling(
            effect=Effect.REQUIRES_FIRST,
            homeowner=Say.of("The sides of the hole are secured before anyone goes in."),
            estimator=Say.of(
                "Depth with tolerance {depth}: slope, shore or box before anyone enters; inspected daily and after rain; spoil 2 ft back.",
                depth=Feet(round(depth_ft, 2)),
            ),
            facts=frozenset({"competent_person"}),
        )
    return Ruling(
        effect=Effect.CAUTION,
        homeowner=Say.of("A trained person checks the hole before anyone goes in."),
        estimator=Say.of(
            "Depth with tolerance {depth}: the competent person decides; nothing seen so far that forces a system.",
            depth=Feet(round(depth_ft, 2)),
        ),
    )


RULE = Rule(
    id="protect-from-five-feet",
    numbers=("R22",),
    methods=("yard spot", "slab spot", "break-through", "trench", "burst", "tunnel", "look and see", "crawl replace"),
    statement="5 ft deep or more, or any sign of caving: a protective system; below that the competent person decides, in writing.",
    reason="A cubic yard of soil weighs as much as a car, and trenches fall in without warning.",
    source="29 CFR 1926.651(j), (k); 1926.652(a)(1)",
    worse="hurting somebody",
    reads=("locator_tolerance_percent", "locator_tolerance_min_ft"),
    guards_people=True,
    measures=protect,
)
