"""A tunnel that passes under a beam or a footing needs an engineer's letter before anyone digs.

>>> from tests.made_up.stretch import beam, limits, stretch
>>> under_a_beam(stretch(method="tunnel", zones=("slab",), beams=(beam(),)), limits()).effect.value
'requires first'
>>> under_a_beam(stretch(method="tunnel", zones=("slab",), beams=()), limits()) is None
True
>>> from estimator.model.edge_beam import KnownEdge
>>> from estimator.model.job import EdgeBeam
>>> edge = KnownEdge(EdgeBeam(2.0, 1.0), "the house")
>>> under_a_beam(stretch(method="tunnel", zones=("slab",), edge=edge), limits()).effect.value
'requires first'
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import TUNNELS
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import Answers, Rule, Ruling


def under_a_beam(it: StretchFacts, limits: Limits) -> Answers:
    edge = it.edge.beam is not None and it.edge.beam.there and "slab" in it.zones
    if not it.beams and not it.placed("footing") and not edge:
        return None
    noted = len(it.beams) + len(it.placed("footing"))
    return Ruling(
        effect=Effect.REQUIRES_FIRST,
        homeowner=Say.of(
            "The tunnel passes under a grade beam, so a registered professional engineer reviews it first."
        ),
        estimator=Say.of(
            "Beams or footings over the tunnel: {count}; engineer's letter, support as it says (29 CFR 1926.651(i)).",
            count=max(1, noted),
        ),
        facts=frozenset({"engineer"}),
    )


RULE = Rule(
    id="tunnel-under-a-beam",
    numbers=("R18",),
    concerns=TUNNELS,
    statement="A tunnel under a beam or footing: an engineer's letter first.",
    reason="Below a footing only a support system, stable rock or a registered engineer's word will do.",
    source="29 CFR 1926.651(i)(2)",
    settled_by="engineer",
    worse="hurting somebody",
    guards_people=True,
    applies=under_a_beam,
)
