"""Where an inspector must see the pipe, it stays open and under water until he has.

>>> from tests.made_up.stretch import limits, stretch
>>> inspection(stretch(method="trench"), limits(place="demo")).effect.value
'adds work'
>>> inspection(stretch(method="trench"), limits(place="")).effect.value
'caution'
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import NEW_PIPE
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import Answers, Rule, Ruling


def inspection(it: StretchFacts, limits: Limits) -> Answers:
    asked = limits.place.inspection_before_cover if limits.place else None
    if asked is False:
        return None
    if asked is None:
        return Ruling(
            effect=Effect.CAUTION,
            homeowner=Say.of("We ask your town whether an inspector must see the pipe before it is covered."),
            estimator=Say.of("Inspection before cover not asked here: ask; leave open until answered."),
        )
    return Ruling(
        effect=Effect.ADDS_WORK,
        homeowner=Say.of("The pipe stays open until the inspector has seen it."),
        estimator=Say.of(
            "Inspection before cover: water standing, pipe open, safe to look at without entering, or pictures agreed beforehand; film before cover and after backfill."
        ),
        facts=frozenset({"inspection_before_cover"}),
    )


RULE = Rule(
    id="inspection-before-cover",
    numbers=("R44",),
    concerns=NEW_PIPE,
    statement="Inspection before backfill where the place asks it: an inspection wait; where nobody asked, a question.",
    reason="Covered work has been ordered open again.",
    source="the place's row; a Texas town's ordinance (read second-hand)",
    worse="leaving out a caution",
    applies=inspection,
)
