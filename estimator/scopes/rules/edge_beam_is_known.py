"""Where nobody said whether a beam runs along the slab's edge, whoever digs under or at it asks first: silence is not "none".

>>> from estimator.model.edge_beam import KnownEdge
>>> from estimator.model.job import EdgeBeam
>>> from tests.made_up.stretch import limits, stretch
>>> [r.effect.value for r in edge_known(stretch(method="tunnel", zones=("slab",)), limits())]
['no fixed price', 'requires first']
>>> none = KnownEdge(EdgeBeam(0.0, 0.0), "the house")
>>> edge_known(stretch(method="tunnel", zones=("slab",), edge=none), limits())
()
>>> edge_known(stretch(method="break-through", zones=("slab",), slab_edge_ft=-1.0), limits())
()
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import BELOW_FLOOR, OPENS_GROUND
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Rule, Ruling


def edge_known(it: StretchFacts, limits: Limits) -> tuple[Ruling, ...]:
    """A tunnel always begins under the edge; another dig is asked about where it crosses or comes up to the edge."""
    if it.edge.beam is not None or not it.on_slab_house:
        return ()
    edge = it.slab_edge_ft
    crosses = edge is not None and any(o.along.holds(edge) for o in it.works.digs if o.line == it.line)
    if not ("slab" in it.zones if it.works.tunnels else crosses):
        return ()
    return (
        Ruling(
            effect=Effect.NO_FIXED_PRICE,
            homeowner=Say.of(
                "The depth of your perimeter beam is not measured yet. We can set a firm price after we measure it."
            ),
            estimator=Say.of(
                'No edge beam noted, which is not "none": uncover the edge or get the drawing, then write edge_beam = "none" or "24in deep 12in wide" under [house].'
            ),
            facts=frozenset({"edge_beam_unknown"}),
        ),
        Ruling(
            effect=Effect.REQUIRES_FIRST,
            homeowner=Say.of(
                "A registered professional engineer first reviews the digging at the edge of your foundation."
            ),
            estimator=Say.of(
                "Under or at a slab edge nobody looked at: engineer's letter first (29 CFR 1926.651(i)); a beam of the firm's usual size is counted with."
            ),
            facts=frozenset({"engineer"}),
        ),
    )


RULE = Rule(
    id="edge-beam-is-known",
    numbers=("R18",),
    concerns=BELOW_FLOOR | OPENS_GROUND,
    statement="A dig under or at the slab's edge, with no word about its beam: an engineer first and no fixed price until somebody looked.",
    reason="Most slabs have a beam along the edge; a crew that does not expect it undermines it, and a tunnel that does not dip under it cannot be dug.",
    source=COMMON_PRACTICE + "; 29 CFR 1926.651(i)(2)",
    worse="hurting somebody",
    reads=("edge_beam_near_ft",),
    guards_people=True,
    applies=edge_known,
)
