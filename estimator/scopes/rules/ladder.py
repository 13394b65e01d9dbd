"""From 4 ft on there is a ladder within reach of everyone in the dig.

>>> from estimator.scopes.rules.examples import limits, measured
>>> ladder(measured(4.0), limits()).effect.value
'requires first'
>>> ladder(measured(3.99), limits()) is None
True
"""

from estimator.knowledge.excavation import needs_ladder
from estimator.model.judgement import Effect
from estimator.model.say import Feet, Say
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.measured import Measured
from estimator.scopes.rules.rule import Answers, Rule, Ruling


def ladder(it: Measured, limits: Limits) -> Answers:
    depth_ft = it.safe_depth_ft(limits)
    if depth_ft is None or not needs_ladder(depth_ft):
        return None
    return Ruling(
        effect=Effect.REQUIRES_FIRST,
        homeowner=Say.of("The hole has a ladder and is fenced while it is open; please keep children and pets away."),
        estimator=Say.of(
            "Depth with tolerance {depth}: ladder or ramp within reach (29 CFR 1926.651(c)(2)); air tested where bad air can be expected.",
            depth=Feet(round(depth_ft, 2)),
        ),
        facts=frozenset({"ladder"}),
    )


RULE = Rule(
    id="ladder-from-four-feet",
    numbers=("R21",),
    methods=("yard spot", "slab spot", "break-through", "trench", "burst", "tunnel", "look and see", "crawl replace"),
    statement="A dig 4 ft deep or more, locator's tolerance and bedding counted: a ladder or ramp, and air tested where bad air is likely.",
    reason="A way out must be near when a side begins to move.",
    source="29 CFR 1926.651(c)(2), (g)",
    worse="hurting somebody",
    reads=("locator_tolerance_percent", "locator_tolerance_min_ft"),
    guards_people=True,
    measures=ladder,
)
