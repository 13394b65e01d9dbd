"""A small rig lines only so far in one shot, and less far in small pipe.

>>> from estimator.model.stretch import Stretch
>>> from tests.made_up.stretch import limits, stretch
>>> long_liner(stretch(stretch=Stretch(0.0, 120.5)), limits()).effect.value
'caution'
>>> long_liner(stretch(stretch=Stretch(0.0, 120.0)), limits()) is None
True
>>> long_liner(stretch(stretch=Stretch(0.0, 60.5), sizes_in=(3.0,)), limits()).effect.value
'caution'
"""

from estimator.model.judgement import Effect
from estimator.model.say import Feet, Say
from estimator.scopes.rules.concern import LINED_WHOLE
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import FROM_MEMORY, Answers, Rule, Ruling


def long_liner(it: StretchFacts, limits: Limits) -> Answers:
    small = it.bore_in <= limits("liner_small_bore_in")
    if it.length_ft <= limits("liner_small_max_ft" if small else "liner_max_ft"):
        return None
    return Ruling(
        effect=Effect.CAUTION,
        homeowner=Say.of("The run is long, so we line it in two parts that overlap."),
        estimator=Say.of("{length} in one shot is past the rig's usual reach: split it.", length=Feet(it.length_ft)),
        facts=frozenset({"split_shot"}),
    )


RULE = Rule(
    id="long-liner",
    numbers=("R14",),
    concerns=LINED_WHOLE,
    statement="Over about 120 ft, or 60 ft in 2 to 3 in pipe: split the shot.",
    reason="Limits of small rigs.",
    source=FROM_MEMORY,
    worse="leaving out a caution",
    reads=("liner_small_bore_in", "liner_small_max_ft", "liner_max_ft"),
    applies=long_liner,
)
