"""New pipe laid between two known levels must fall as the code asks.

>>> from estimator.scopes.rules.examples import limits, stretch
>>> falls(stretch(method="trench", fall_ft=0.312), limits()).effect.value  # 30 ft at 1/8 in/ft is 0.3125 ft
'blocks'
>>> falls(stretch(method="trench", fall_ft=0.3125), limits()) is None
True
>>> falls(stretch(method="trench", fall_ft=None), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Feet, Say
from estimator.scopes.rules.concern import LAYS
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import Answers, Rule, Ruling


def falls(it: StretchFacts, limits: Limits) -> Answers:
    if it.fall_ft is None or it.length_ft == 0:
        return None
    needed_ft = it.length_ft * limits.least_fall_in_per_ft(it.bore_in) / 12
    if round(it.fall_ft, 6) >= round(needed_ft * (1 - limits("slope_tolerance_percent") / 100), 6):
        return None
    return Ruling(
        effect=Effect.BLOCKS,
        homeowner=Say.of(
            "Between these two ends the pipe cannot be given enough slope; it must be laid further, or pumped."
        ),
        estimator=Say.of(
            "Falls {fall} in over {length}; {needed} in are needed: go on to a lower tie-in, or a pump.",
            fall=f"{it.fall_ft * 12:.2f}",
            length=Feet(round(it.length_ft, 1)),
            needed=f"{needed_ft * 12:.2f}",
        ),
    )


RULE = Rule(
    id="new-pipe-has-the-fall",
    numbers=("R36",),
    concerns=LAYS,
    statement="A run relaid between known levels with less than the code's least fall: no gravity drain there.",
    reason="Solids stay behind where water creeps.",
    source="the place's row; IPC 704.1, UPC 708 (read second-hand)",
    worse="offering what cannot work",
    reads=("slope_tolerance_percent",),
    applies=falls,
)
