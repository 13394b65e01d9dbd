"""Walks, drives and slabs beside a dig are not left hanging: support or break them back.

>>> from tests.made_up.stretch import limits, stretch
>>> undermined(stretch(method="trench", zones=("yard", "walk")), limits()).effect.value
'caution'
>>> undermined(stretch(method="trench", zones=("yard",)), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import OPENS_GROUND
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import Answers, Rule, Ruling


def undermined(it: StretchFacts, limits: Limits) -> Answers:
    if not {"walk", "drive"} & {zone for o in it.works.open_digs for zone in o.zones}:
        return None
    return Ruling(
        effect=Effect.CAUTION,
        homeowner=Say.of("We support or cut back paving beside the excavation, so that it does not sink later."),
        estimator=Say.of("No walk, drive or slab undermined without support (29 CFR 1926.651(i)(3))."),
    )


RULE = Rule(
    id="slabs-are-not-undermined",
    numbers=("R18",),
    concerns=OPENS_GROUND,
    statement="Paving beside or over a dig is supported or taken out.",
    reason="Undermined paving drops on whoever works below, or cracks later.",
    source="29 CFR 1926.651(i)(3)",
    settled_by="engineer",
    worse="hurting somebody",
    guards_people=True,
    applies=undermined,
)
