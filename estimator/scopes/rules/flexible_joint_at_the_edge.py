"""Where the joint at the slab edge has moved, the new connection must be able to move too.

>>> from tests.made_up.stretch import limits, stretch
>>> flexible(stretch("2 offset 20%", method="yard spot", slab_edge_ft=0.0), limits()).effect.value
'adds work'
>>> flexible(stretch("6 offset 20%", method="yard spot", slab_edge_ft=0.0), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.model.stretch import Stretch
from estimator.scopes.rules.concern import LAYS
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def flexible(it: StretchFacts, limits: Limits) -> Answers:
    if it.slab_edge_ft is None:
        return None
    near = Stretch.between(it.slab_edge_ft, it.slab_edge_ft + it.downstream * limits("slab_edge_near_ft"))
    if not any(f.stretch.touches(near) for f in it.of("offset", "gap")):
        return None
    return Ruling(
        effect=Effect.ADDS_WORK,
        homeowner=Say.of("The house has moved there and may move again, so we use a flexible connection."),
        estimator=Say.of(
            "Joint moved at the slab edge: flexible connection; movement may recur, say so in the warranty."
        ),
        facts=frozenset({"flexible_connection"}),
    )


RULE = Rule(
    id="flexible-joint-at-the-edge",
    numbers=("D15",),
    concerns=LAYS,
    statement="A joint that moved at the slab edge: a flexible connection, and the warranty says that movement may recur.",
    reason="A stiff joint breaks in the same place.",
    source=COMMON_PRACTICE,
    worse="leaving out a caution",
    reads=("slab_edge_near_ft",),
    applies=flexible,
)
