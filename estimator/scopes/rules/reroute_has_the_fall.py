"""A way round must fall enough, invert to invert, after the wye's drop and the clearance; else only a pump would do.

>>> from tests.made_up.stretch import limits, reroute, stretch
>>> way = lambda fall_in: stretch(method="reroute", reroutes=(reroute(yard_ft=40.0, fall_in=fall_in, size_in=4.0),))
>>> has_the_fall(way(8.2), limits()).effect.value  # 40 ft and 5 %: 42 ft at 1/8 in/ft is 5.25 in, the wye takes 3
'blocks'
>>> has_the_fall(way(8.25), limits()) is None
True
>>> has_the_fall(way(8.25), limits(place="unknown")).effect.value  # nobody asked: the stricter family wants 1/4
'blocks'
"""

from estimator.model.job import Reroute
from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import GOES_ROUND
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import Answers, Rule, Ruling

UPRIGHT = frozenset({"drop", "rise", "stack", "vertical"})


def has_the_fall(it: StretchFacts, limits: Limits) -> Answers:
    for way in it.reroutes:
        size_in = way.size_in or it.bore_in
        needed_in = level_ft(way, limits) * limits.least_fall_in_per_ft(size_in)
        if way.fall_available_ft is None:
            return _not_measured(needed_in)
        left_in = way.fall_available_ft * 12 - limits("wye_drop_in") - limits("reroute_clearance_in")
        if round(left_in, 6) < round(needed_in * (1 - limits("slope_tolerance_percent") / 100), 6):
            return _too_flat(needed_in, left_in)
    return None


def level_ft(way: Reroute, limits: Limits) -> float:
    """Developed length of the level legs, with the allowance for turns."""
    legs = sum(leg.length_ft for leg in way.legs if leg.zone not in UPRIGHT)
    return legs * (1 + limits("reroute_extra_percent") / 100)


def _not_measured(needed_in: float) -> Ruling:
    return Ruling(
        effect=Effect.NO_FIXED_PRICE,
        homeowner=Say.of("We must measure the drop of the reroute before we can price it."),
        estimator=Say.of("Fall not measured; {needed} in are needed.", needed=f"{needed_in:.1f}"),
    )


def _too_flat(needed_in: float, left_in: float) -> Ruling:
    return Ruling(
        effect=Effect.BLOCKS,
        homeowner=Say.of("The reroute does not have enough drop for the water to run."),
        estimator=Say.of(
            "Needs {needed} in, has {left} in after wye drop and clearance: no gravity; a pump is another job.",
            needed=f"{needed_in:.2f}",
            left=f"{left_in:.2f}",
        ),
    )


RULE = Rule(
    id="reroute-has-the-fall",
    numbers=("R36",),
    concerns=GOES_ROUND,
    statement="Fall available, less wye drop and clearance, under the code's least: no gravity drain that way.",
    reason="Solids stay behind where water creeps. Where nobody asked the place, the stricter of two code families counts.",
    source="the place's row; IPC 704.1, UPC 708 (read second-hand)",
    settled_by="level",
    worse="offering what cannot work",
    reads=("wye_drop_in", "reroute_clearance_in", "slope_tolerance_percent", "reroute_extra_percent"),
    applies=has_the_fall,
)
