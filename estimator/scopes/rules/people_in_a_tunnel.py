"""Whatever its depth, a tunnel brings its own safety page: air, a second person, light, locked-out drains, a way out.

>>> from tests.made_up.stretch import limits, stretch
>>> in_a_tunnel(stretch(method="tunnel", zones=("slab",)), limits()).effect.value
'requires first'
>>> RULE.is_asked(stretch(method="break-through"))
False
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import TUNNELS
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import Answers, Rule, Ruling


def in_a_tunnel(it: StretchFacts, limits: Limits) -> Answers:
    return Ruling(
        effect=Effect.REQUIRES_FIRST,
        homeowner=Say.of("Do not run water or flush while anyone is under the house. We lock out and tag the drains."),
        estimator=Say.of(
            "Tunnel: gas test before and during entry, blower, attendant outside, low-voltage light, no engine at the mouth, drains locked out, rescue plan; the competent person decides on 29 CFR 1926.800, Subpart P or AA and signs."
        ),
        facts=frozenset({"tunnel", "air_plan", "drains_locked_out", "competent_person"}),
    )


RULE = Rule(
    id="people-in-a-tunnel",
    numbers=("R25",),
    concerns=TUNNELS,
    statement="People under a house: air plan, second person, light, drains locked out, a named competent person, at any depth.",
    reason="An open sewer is a bad-air hazard, and one flush floods the face. Which federal rule applies hangs on where people work.",
    source="29 CFR 1926.651(g), 1926.800(a), 1926.1201(b) (from memory); the rest common practice",
    worse="hurting somebody",
    guards_people=True,
    applies=in_a_tunnel,
)
