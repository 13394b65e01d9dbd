"""A water test soaks the soil and its plugs burst: filled to the lowest opening only, for minutes, nobody in line with a plug.

>>> from tests.made_up.stretch import limits, stretch
>>> plugs(stretch(method="isolation test"), limits()).effect.value
'caution'
>>> RULE.is_asked(stretch(method="clean"))
False
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import TESTS_SECTIONS
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import Answers, Rule, Ruling


def plugs(it: StretchFacts, limits: Limits) -> Answers:
    return Ruling(
        effect=Effect.CAUTION,
        homeowner=Say.of(
            "Do not run water during the test. We fill only to the lowest opening and drain it right away."
        ),
        estimator=Say.of(
            "Fill only to the lowest opening, limit the minutes, watch, drain promptly. Plugs of the right size and pressure, tethered, nobody in line with the pipe, water down before deflating; no air test on plastic."
        ),
    )


RULE = Rule(
    id="test-water-and-plugs",
    numbers=("R42",),
    concerns=TESTS_SECTIONS,
    statement="Old systems are filled to the lowest opening and for minutes only; plugs are rated, tethered and kept clear of.",
    reason="A 4 in plug under 10 ft of water holds back about 55 lb; an air plug far more when it bursts. Leaked water softens the soil under the house.",
    source="plain arithmetic (pressure); common practice",
    worse="hurting somebody",
    guards_people=True,
    applies=plugs,
)
