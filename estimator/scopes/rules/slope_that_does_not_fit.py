"""Where a sloped dig is wider than the ground allows it is boxed or shored instead.

>>> from estimator.scopes.rules.examples import limits, mark, measured
>>> wall = mark("edge", lengths=(("away", 5.0),))
>>> no_room(measured(5.2, dig_top_width_ft=10.4, facts=("sloped",), marks=(wall,)), limits()).effect.value
'requires first'
>>> no_room(measured(5.0, dig_top_width_ft=10.0, facts=("sloped",), marks=(wall,)), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Feet, Say
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.measured import Measured
from estimator.scopes.rules.rule import Answers, Rule, Ruling


def no_room(it: Measured, limits: Limits) -> Answers:
    top_ft = it.top_width_ft
    if top_ft is None or "sloped" not in it.takeoff.facts:
        return None
    away = [m.length("away") or m.length() for m in it.at.placed("edge", "tree", "footing")]
    clear = [m.length() for m in it.at.placed("clear")]
    tight = [a for a in away if a is not None and a < top_ft / 2] + [c for c in clear if c is not None and c < top_ft]
    if not tight:
        return None
    return Ruling(
        effect=Effect.REQUIRES_FIRST,
        homeowner=Say.of("There is no room for sloping sides, so the hole is held open with shoring."),
        estimator=Say.of(
            "Sloped top {top} does not fit ({room} free): box or shore.",
            top=Feet(round(top_ft, 1)),
            room=Feet(min(tight)),
        ),
        facts=frozenset({"boxed"}),
    )


RULE = Rule(
    id="slope-that-does-not-fit",
    numbers=("R24",),
    methods=("yard spot", "trench", "burst", "look and see"),
    statement="Sloped sides that run into a lot line, house or tree: box or shore instead.",
    reason="Geometry: the top of a slope is wide.",
    source="plain arithmetic",
    worse="hurting somebody",
    guards_people=True,
    measures=no_room,
)
