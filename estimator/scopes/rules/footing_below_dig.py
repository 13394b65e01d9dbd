"""A dig that goes below the base of a footing beside or above it needs support, stable rock or an engineer.

>>> from estimator.scopes.rules.examples import limits, mark, measured
>>> near = mark("footing", lengths=(("away", 3.0), ("deep", 1.5)))
>>> footing_below(measured(4.6, dig_width_ft=2.4, marks=(near,)), limits()).effect.value
'until approved'
>>> footing_below(measured(1.5, dig_width_ft=2.4, marks=(near,)), limits()) is None
True
"""

from estimator.knowledge.excavation import clear_of_footing
from estimator.model.judgement import Effect
from estimator.model.say import Feet, Say
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.measured import Measured
from estimator.scopes.rules.rule import Answers, Rule, Ruling


def footing_below(it: Measured, limits: Limits) -> Answers:
    depth_ft = it.safe_depth_ft(limits)
    if depth_ft is None:
        return None
    for footing in it.at.placed("footing"):
        base_ft, away_ft = footing.length("deep"), footing.length("away")
        below_ft = depth_ft - (base_ft or 0.0)
        clear_ft = (away_ft or 0.0) - (it.bottom_width_ft or 0.0) / 2
        if base_ft is None or not clear_of_footing(clear_ft, below_ft):
            return Ruling(
                effect=Effect.UNTIL_APPROVED,
                homeowner=Say.of(
                    "The dig comes close to and lower than your foundation, so an engineer must agree to it first."
                ),
                estimator=Say.of(
                    "Bottom {below} below the footing's base and {clear} clear of it, inside the 45 degree line: support system, stable rock or a registered engineer.",
                    below=Feet(round(below_ft, 2)),
                    clear=Feet(round(clear_ft, 2)),
                ),
                facts=frozenset({"engineer", "footing_support"}),
            )
    return None


RULE = Rule(
    id="footing-below-dig",
    numbers=("R18", "R19"),
    methods=("yard spot", "trench", "burst", "tunnel", "crawl replace", "look and see"),
    statement="A dig below a footing's base and inside the 45 degree line from it waits for support, stable rock or an engineer.",
    reason="The soil that carries the house would move into the trench. A competent person's plan is not on the list.",
    source="29 CFR 1926.651(i)(2); 45 degree line: IRC P2604.4, UPC 314.1, IPC 307.5 (read second-hand)",
    worse="hurting somebody",
    reads=("locator_tolerance_percent", "locator_tolerance_min_ft"),
    guards_people=True,
    measures=footing_below,
)
