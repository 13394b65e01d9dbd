"""New pipe laid between two known levels must fall as the code asks.

>>> from tests.made_up.stretch import limits, stretch
>>> falls(stretch(method="trench", fall_ft=0.312), limits()).effect.value  # 30 ft at 1/8 in/ft is 0.3125 ft
'no fixed price'
>>> falls(stretch(method="trench", fall_ft=0.27), limits()).effect.value  # more than two readings may be off
'blocks'
>>> falls(stretch(method="trench", fall_ft=0.3125), limits()) is None
True
>>> falls(stretch(method="trench", fall_ft=None), limits()) is None
True
>>> falls(stretch(method="trench", fall_ft=0.32), limits(place="unknown")).effect.value  # 1/4 in/ft asks for 0.625 ft; 1/8 may be approved
'no fixed price'
>>> falls(stretch(method="trench", line_fall=-0.03), limits()).effect.value  # it climbs toward the main
'no fixed price'
"""

from estimator.model.fall import CLIMBS
from estimator.model.judgement import Effect
from estimator.model.say import Feet, Say
from estimator.scopes.rules.concern import LAYS
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import Answers, Rule, Ruling
from estimator.works.grade import approved_in_per_ft

READINGS = 2
"""Both ends may be off by one standard error of a reading."""


def falls(it: StretchFacts, limits: Limits) -> Answers:
    if it.line_fall is not None and it.line_fall <= 0:
        return _climbs(it.line_fall)
    if it.fall_ft is None or it.length_ft == 0:
        return None
    needed_ft = it.length_ft * limits.least_fall_in_per_ft(it.bore_in) / 12
    least_ft = needed_ft * (1 - limits("slope_tolerance_percent") / 100)
    if round(it.fall_ft * 12, 2) >= round(least_ft * 12, 2):  # nobody reads closer than what is printed
        return None
    if round((needed_ft - it.fall_ft) * 12, 2) <= READINGS * limits("level_error_in"):
        return _too_close(it.fall_ft, needed_ft)
    if it.fall_ft * 12 >= it.length_ft * approved_in_per_ft(it.bore_in, limits.slope_is_known(it.bore_in)):
        return _approval(it.fall_ft, needed_ft)
    return Ruling(
        effect=Effect.BLOCKS,
        homeowner=Say.of("The pipe cannot get enough slope between these two ends. It must run farther, or be pumped."),
        estimator=Say.of(
            "Falls {fall} in over {length}; {needed} in are needed: go on to a lower tie-in, or a pump.",
            fall=f"{it.fall_ft * 12:.2f}",
            length=Feet(round(it.length_ft, 1)),
            needed=f"{needed_ft * 12:.2f}",
        ),
    )


def _approval(fall_ft: float, needed_ft: float) -> Ruling:
    return Ruling(
        effect=Effect.NO_FIXED_PRICE,
        homeowner=Say.of(
            "Your pipe has little slope. We ask the building department to approve it before we give a firm price."
        ),
        estimator=Say.of(
            "Falls {fall} in; {needed} in are asked for. At 1/8 in a foot the official may approve it: get that in writing, or go on to a lower tie-in.",
            fall=f"{fall_ft * 12:.2f}",
            needed=f"{needed_ft * 12:.2f}",
        ),
    )


def _too_close(fall_ft: float, needed_ft: float) -> Ruling:
    return Ruling(
        effect=Effect.NO_FIXED_PRICE,
        homeowner=Say.of(
            "Between these two ends the pipe has just about the slope it needs. We measure both ends again before we give a fixed price."
        ),
        estimator=Say.of(
            "Falls {fall} in; {needed} in are needed: nearer than two readings can tell apart. Take the levels again, or go on to a lower tie-in, before a fixed price.",
            fall=f"{fall_ft * 12:.2f}",
            needed=f"{needed_ft * 12:.2f}",
        ),
    )


def _climbs(fall: float) -> Ruling:
    return Ruling(
        effect=Effect.NO_FIXED_PRICE,
        homeowner=CLIMBS,
        estimator=Say.of(
            "The levels say that the line climbs {rise} in a foot with the flow: a lower tie-in, levels taken again, or the inspector's word before a fixed price.",
            rise=f"{-fall * 12:.2g}",
        ),
    )


RULE = Rule(
    id="new-pipe-has-the-fall",
    numbers=("R36",),
    concerns=LAYS,
    statement="A run relaid between known levels with less than the code's least fall: no gravity drain there; at 1/8 in per ft in 4 in pipe and larger only with the official's approval; so near it that the readings cannot tell: no fixed price; in a line whose levels climb with the flow no dig has a fixed price.",
    reason="Solids stay behind where water creeps.",
    source="the place's row; IPC 704.1, UPC 708 (read second-hand)",
    settled_by="level",
    worse="offering what cannot work",
    reads=("slope_tolerance_percent", "level_error_in"),
    applies=falls,
)
