"""Floors, glue and ducts are tested before they are cut, whatever the year, unless proven clean.

>>> from tests.made_up.stretch import limits, stretch
>>> asbestos(stretch(method="slab spot", zones=("slab",), house={"built": 1980}), limits()).effect.value
'requires first'
>>> asbestos(stretch(method="slab spot", zones=("slab",), house={"built": 1981}), limits()).effect.value
'caution'
>>> asbestos(stretch(method="tunnel", zones=("slab",), house={"built": 1960}), limits()) is None
True
"""

from estimator.knowledge.houses import ASBESTOS_FLOOR_THROUGH
from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import CUTS_FLOOR
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import FROM_MEMORY, Answers, Rule, Ruling


def asbestos(it: StretchFacts, limits: Limits) -> Answers:
    if not it.works.cuts_floor:
        return None
    if it.house.built is None or it.house.built <= ASBESTOS_FLOOR_THROUGH:
        return Ruling(
            effect=Effect.REQUIRES_FIRST,
            homeowner=Say.of("Older flooring and glue can contain asbestos. We have a sample tested before we cut."),
            estimator=Say.of("Floor, mastic or duct of that age: asbestos test by the state's rule before cutting."),
            facts=frozenset({"asbestos_check"}),
        )
    return Ruling(
        effect=Effect.CAUTION,
        homeowner=Say.of("If we find old floor layers or glue, we have them tested before we go on."),
        estimator=Say.of("Later mastic with asbestos happens: test before cutting, any year, unless proven."),
    )


RULE = Rule(
    id="asbestos-before-cutting",
    numbers=("R29",),
    concerns=CUTS_FLOOR,
    statement="Floor, mastic or ducts disturbed: test before cutting; in older houses always.",
    reason="Resilient floor and mastic through 1980 are presumed to hold asbestos where people work on them (29 CFR 1926.1101(k)(1)); later cases happen.",
    source=FROM_MEMORY,
    worse="hurting somebody",
    guards_people=True,
    applies=asbestos,
)
