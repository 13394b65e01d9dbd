"""Where the place asks for a valve against the city's sewage, one goes in when the drain to the street is renewed.

>>> from tests.made_up.stretch import limits, place, stretch
>>> valve(stretch(method="trench"), place(backwater_valve=True)).effect.value
'adds work'
>>> valve(stretch(method="trench"), place(backwater_valve=False)) is None
True
>>> valve(stretch(method="trench", house={"sewer": "septic"}), place(backwater_valve=True)) is None
True
>>> valve(stretch(method="trench"), limits(place="unknown")).effect.value  # nobody asked
'caution'
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import A_NEW_RUN
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import Answers, Rule, Ruling


def valve(it: StretchFacts, limits: Limits) -> Answers:
    asked = limits.place.backwater_valve if limits.place else None
    if asked is False or it.is_branch or it.house.sewer == "septic" or it.ends == "septic tank":
        return None
    if asked:
        return Ruling(
            effect=Effect.ADDS_WORK,
            homeowner=Say.of(
                "Your city requires a backwater valve. It keeps city sewage from backing up into the house."
            ),
            estimator=Say.of(
                "The place asks for a backwater valve where the building drain is renewed: add one, reachable. By the UPC (710, from memory) only fixtures below the next manhole upstream may drain through it."
            ),
            facts=frozenset({"backwater_valve"}),
        )
    return Ruling(
        effect=Effect.CAUTION,
        homeowner=Say.of(
            "A fixture below the next street manhole may need a backwater valve. We ask the building department."
        ),
        estimator=Say.of(
            "Backwater valve: nobody asked this place. Fixtures below the next manhole upstream usually need one; ask, and write it in the places table."
        ),
    )


RULE = Rule(
    id="backwater-valve",
    numbers=(),
    concerns=A_NEW_RUN,
    statement="The drain to the city's sewer is renewed: a backwater valve where the place asks for one; a question where nobody asked.",
    reason="When the street's sewer backs up, its sewage comes out of the lowest fixture.",
    source="the place's row (backwater_valve); IPC 714 and UPC 710 ask for one below the next manhole upstream (from memory)",
    worse="leaving out a caution",
    applies=valve,
)
