"""A strip broken through the floor never crosses a beam: it stops each side, and the pipe goes under by hand.

>>> from tests.made_up.stretch import beam, limits, stretch
>>> at_a_beam(stretch(method="break-through", zones=("slab",), beams=(beam(),)), limits()).effect.value
'requires first'
>>> at_a_beam(stretch(method="slab spot", zones=("slab",), beams=(beam(),)), limits()).effect.value
'blocks'
>>> at_a_beam(stretch(method="break-through", zones=("slab",)), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Feet, Say
from estimator.scopes.rules.concern import CUTS_FLOOR
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def at_a_beam(it: StretchFacts, limits: Limits) -> Answers:
    floors = [o for o in it.works.floors if o.line == it.line]
    inside = [b for b in it.beams if b.stretch.overlaps(it.stretch) and floors]
    if not inside:
        return None
    if it.works.piece:
        return Ruling(
            effect=Effect.BLOCKS,
            homeowner=Say.of("A grade beam is over that spot. We do not cut a beam."),
            estimator=Say.of(
                "Beam at {at}: no opening there; tunnel, or a strip that stops each side.",
                at=Feet(inside[0].stretch.from_ft),
            ),
        )
    return Ruling(
        effect=Effect.REQUIRES_FIRST,
        homeowner=Say.of("The floor opening stops on both sides of the grade beam. We pass the pipe under it by hand."),
        estimator=Say.of(
            "{count} beams: stop the strip each side, hand-tunnel under; never cut or notch a beam; engineer where it is undermined.",
            count=len(inside),
        ),
        facts=frozenset({"hand_tunnel_under_beam", "engineer"}),
    )


RULE = Rule(
    id="strip-stops-at-a-beam",
    numbers=("R18",),
    concerns=CUTS_FLOOR,
    statement="An opening in the floor never crosses a grade beam: it stops each side and the pipe passes under by hand.",
    reason="A notched beam lets the house break there.",
    source=COMMON_PRACTICE,
    worse="hurting somebody",
    guards_people=True,
    applies=at_a_beam,
)
