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

OPEN_DIGS = ("yard spot", "trench", "burst")


def footing_below(it: Measured, limits: Limits) -> Answers:
    depth_ft = it.safe_depth_ft(limits)
    if depth_ft is None:
        return None
    half_ft = (it.bottom_width_ft or 0.0) / 2
    beside = [(f.length("deep"), (f.length("away") or 0.0) - half_ft) for f in it.at.placed("footing")]
    for base_ft, clear_ft in (*beside, *_edge_beam(it, limits)):
        below_ft = depth_ft - (base_ft or 0.0)
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


def _edge_beam(it: Measured, limits: Limits) -> list[tuple[float | None, float]]:
    """The beam along the slab's edge, below the ground, where a dig in the open comes right up to it."""
    at, edge = it.at, it.at.edge.beam
    if edge is None or not edge.there or at.method not in OPEN_DIGS:
        return []
    if at.slab_edge_ft is None or not at.stretch.holds(at.slab_edge_ft):
        return []
    above = at.house.slab_above_grade_ft
    return [(edge.deep_ft - (limits("slab_above_grade_ft") if above is None else above), 0.0)]


RULE = Rule(
    id="footing-below-dig",
    numbers=("R18", "R19"),
    methods=("yard spot", "trench", "burst", "tunnel", "crawl replace", "look and see"),
    statement="A dig below a footing's base and inside the 45 degree line from it waits for support, stable rock or an engineer.",
    reason="The soil that carries the house would move into the trench. A competent person's plan is not on the list.",
    source="29 CFR 1926.651(i)(2); 45 degree line: IRC P2604.4, UPC 314.1, IPC 307.5 (read second-hand)",
    worse="hurting somebody",
    reads=("locator_tolerance_percent", "locator_tolerance_min_ft", "slab_above_grade_ft"),
    guards_people=True,
    measures=footing_below,
)
