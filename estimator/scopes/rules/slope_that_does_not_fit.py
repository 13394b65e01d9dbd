"""Where a sloped dig is wider than the ground allows it is boxed or shored instead.

>>> from tests.made_up.stretch import dug, limits, mark
>>> wall = mark("edge", lengths=(("away", 5.0),))
>>> no_room(dug(5.2, dig_top_width_ft=10.4, held_by="sloped", line_marks=(wall,)), limits()).effect.value
'requires first'
>>> no_room(dug(5.0, dig_top_width_ft=9.9, held_by="sloped", line_marks=(wall,)), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Feet, Say
from estimator.scopes.rules.concern import OPENS_GROUND
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import Answers, Rule, Ruling


def no_room(it: StretchFacts, limits: Limits) -> Answers:
    sloped = [o for o in it.works.open_digs if o.held_by in ("sloped", "benched")]
    tight = [(far, o) for o in sloped for _, far in it.near(o, "edge", "tree", "footing", at_top=True) if far <= 0]
    clear = [m.length() for m in it.placed("clear")]
    tight += [(c, o) for o in sloped for c in clear if c is not None and c < o.top_width_ft]
    if not tight:
        return None
    room, opening = min(tight, key=lambda found: found[0])
    return Ruling(
        effect=Effect.REQUIRES_FIRST,
        homeowner=Say.of("There is no room to slope the sides, so we shore the excavation."),
        estimator=Say.of(
            "{opening}: sloped top {top} does not fit ({room} free): box or shore.",
            opening=opening.name,
            top=Feet(round(opening.top_width_ft, 1)),
            room=Feet(round(room, 1)),
        ),
        facts=frozenset({"boxed"}),
    )


RULE = Rule(
    id="slope-that-does-not-fit",
    numbers=("R24",),
    concerns=OPENS_GROUND,
    statement="Sloped sides that run into a lot line, house or tree: box or shore instead.",
    reason="Geometry: the top of a slope is wide.",
    source="plain arithmetic",
    worse="hurting somebody",
    guards_people=True,
    applies=no_room,
)
