"""From 5 ft on, or at any depth with a sign of caving, the sides are sloped, shored or boxed.

>>> from tests.made_up.stretch import dug, limits
>>> protect(dug(5.0), limits()).effect.value
'requires first'
>>> protect(dug(4.99), limits()).effect.value
'caution'
>>> protect(dug(2.0, site={"caving_signs": True}), limits()).effect.value
'requires first'
"""

from estimator.knowledge.excavation import SYSTEM_FROM_FT, needs_system
from estimator.model.judgement import Effect
from estimator.model.say import Feet, Say
from estimator.scopes.rules.concern import PEOPLE_BELOW
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import Answers, Rule, Ruling


def protect(it: StretchFacts, limits: Limits) -> Answers:
    opening, signs = it.deepest, it.site.caving_signs
    if opening is None:
        return None
    depth_ft = opening.safety_ft
    wet = any(o.wet for o in it.works.with_people) or any("running in" in f.signs for f in it.findings)
    name, depth = opening.name, Feet(round(depth_ft, 2))
    if needs_system(depth_ft, "C", signs):
        return _held(
            Say.of(
                "{opening}, {depth} with tolerance: slope, shore or box before anyone enters; inspected daily and after rain; spoil 2 ft back.",
                opening=name,
                depth=depth,
            )
        )
    if wet:
        return _held(
            Say.of(
                "{opening}, {depth} with tolerance, water in it: seepage is a sign of caving at any depth; pump it down, then slope, shore or box before anyone enters (29 CFR 1926.652(a)(1)(ii)).",
                opening=name,
                depth=depth,
            )
        )
    homeowner = Say.of("A trained person checks the hole before anyone goes in.")
    if depth_ft >= SYSTEM_FROM_FT - limits("protect_near_ft"):
        estimator = Say.of(
            "{opening}, {depth} with tolerance, is so near 5 ft that a few inches decide: bring what holds the sides; the competent person measures and decides before anyone goes in.",
            opening=name,
            depth=depth,
        )
    else:
        estimator = Say.of(
            "{opening}, {depth} with tolerance: the competent person looks for signs of caving and decides before anyone goes in.",
            opening=name,
            depth=depth,
        )
    return Ruling(effect=Effect.CAUTION, homeowner=homeowner, estimator=estimator)


def _held(estimator: Say) -> Ruling:
    return Ruling(
        effect=Effect.REQUIRES_FIRST,
        homeowner=Say.of("We protect the sides of the excavation before anyone enters."),
        estimator=estimator,
        facts=frozenset({"competent_person"}),
    )


RULE = Rule(
    id="protect-from-five-feet",
    numbers=("R22",),
    concerns=PEOPLE_BELOW,
    statement="5 ft deep or more, or any sign of caving, water in the dig among them: a protective system; below that the competent person decides, in writing.",
    reason="A cubic yard of soil weighs as much as a car, and trenches fall in without warning.",
    source="29 CFR 1926.651(j), (k); 1926.652(a)(1)",
    worse="hurting somebody",
    reads=("protect_near_ft",),
    guards_people=True,
    applies=protect,
)
