"""Concrete is cut wet; indoors, and a tunnel is indoors, saws and breakers also need breathing protection.

>>> from tests.made_up.stretch import limits, stretch
>>> dust(stretch(method="break-through", zones=("slab",)), limits()).effect.value
'adds work'
>>> dust(stretch(method="trench", zones=("yard",)), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.model.works import PAVED
from estimator.scopes.rules.concern import CUTS_FLOOR, OPENS_GROUND
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import Answers, Rule, Ruling


def dust(it: StretchFacts, limits: Limits) -> Answers:
    inside = it.works.cuts_floor
    if not inside and not PAVED & set(it.works.zones):
        return None
    return Ruling(
        effect=Effect.ADDS_WORK,
        homeowner=Say.of("We cut concrete with water and hang dust barriers. Keep out of the work area."),
        estimator=(
            Say.of(
                "Inside or enclosed: water-fed saw and shrouded breaker, respirator APF 10 for both at any duration (29 CFR 1926.1153 Table 1)."
            )
            if inside
            else Say.of(
                "Outside: water-fed saw, shrouded breaker; respirator APF 10 for handheld saw and breaker over 4 hours a shift (29 CFR 1926.1153 Table 1)."
            )
        ),
        facts=frozenset({"concrete_dust"}),
    )


RULE = Rule(
    id="concrete-dust",
    numbers=("R31",),
    concerns=CUTS_FLOOR | OPENS_GROUND,
    statement="Cutting or breaking concrete: water-fed saw, shrouded breaker; indoors APF 10 for saws and breakers alike, outdoors over 4 h too.",
    reason="Fine silica dust scars lungs for good.",
    source="29 CFR 1926.1153(c)(1) Table 1",
    worse="hurting somebody",
    guards_people=True,
    applies=dust,
)
