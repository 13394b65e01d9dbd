"""A dig that goes below the base of a footing beside or above it needs support, stable rock or an engineer.

>>> from tests.made_up.stretch import dug, limits, mark
>>> near = mark("footing", 10.0, lengths=(("away", 3.0), ("deep", 1.5)))
>>> footing_below(dug(4.6, dig_width_ft=2.4, line_marks=(near,)), limits()).effect.value
'until approved'
>>> footing_below(dug(1.5, dig_width_ft=2.4, line_marks=(near,)), limits()) is None
True
>>> past_the_end = mark("footing", 32.0, lengths=(("away", 1.0), ("deep", 1.0)))  # the dig ends at 30
>>> footing_below(dug(4.6, line_marks=(past_the_end,)), limits()).effect.value
'until approved'
"""

from estimator.knowledge.excavation import clear_of_footing
from estimator.model.judgement import Effect
from estimator.model.opening import Opening
from estimator.model.say import Feet, Say
from estimator.model.stretch import Stretch
from estimator.scopes.rules.concern import DIGS
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import Answers, Rule, Ruling

Found = tuple[Opening, float | None, float]
"""An opening, the footing's base below the ground (None: nobody said), how far its bottom edge is clear of it in plan. Ft."""


def footing_below(it: StretchFacts, limits: Limits) -> Answers:
    for opening, base_ft, clear_ft in (*_beside(it), *_edge_beam(it, limits)):
        below_ft = opening.safety_ft - (base_ft or 0.0)
        if not clear_of_footing(clear_ft, below_ft):
            return Ruling(
                effect=Effect.UNTIL_APPROVED,
                homeowner=Say.of(
                    "The excavation goes close to your foundation and below it. An engineer must approve it first."
                ),
                estimator=Say.of(
                    "{opening}: bottom {below} below the footing's base and {clear} clear of it, inside the 45 degree line: support system, stable rock or a registered engineer.",
                    opening=opening.name,
                    below=Feet(round(below_ft, 2)),
                    clear=Feet(round(clear_ft, 2)),
                ),
                facts=frozenset({"engineer", "footing_support"}),
            )
    return None


def _beside(it: StretchFacts) -> list[Found]:
    """Footings noted on the line, near whatever is dug; a tunnel itself passes below them, which is asked elsewhere."""
    digs = (o for o in it.works.digs if o.kind != "tunnel")
    return [(o, m.length("deep") or m.depth_ft, far) for o in digs for m, far in it.near(o, "footing")]


def _edge_beam(it: StretchFacts, limits: Limits) -> list[Found]:
    """The beam along the slab's edge, below the ground, near what is dug in the open. Under the floor it is asked elsewhere."""
    at, edge = it, it.edge.beam
    if edge is None or not edge.there or at.slab_edge_ft is None or at.works.below_floor:
        return []
    above = at.house.slab_above_grade_ft
    base = edge.deep_ft - (limits("slab_above_grade_ft") if above is None else above)
    where = Stretch(at.slab_edge_ft, at.slab_edge_ft)
    return [(o, base, o.distance_ft(where, 0.0)) for o in at.works.open_digs if o.line == at.line]


RULE = Rule(
    id="footing-below-dig",
    numbers=("R18", "R19"),
    concerns=DIGS,
    statement="A dig below a footing's base and inside the 45 degree line from it waits for support, stable rock or an engineer.",
    reason="The soil that carries the house would move into the trench. A competent person's plan is not on the list.",
    source="29 CFR 1926.651(i)(2); 45 degree line: IRC P2604.4, UPC 314.1, IPC 307.5 (read second-hand)",
    settled_by="engineer",
    worse="hurting somebody",
    reads=("slab_above_grade_ft",),
    guards_people=True,
    applies=footing_below,
)
