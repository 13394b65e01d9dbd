"""A tunnel too low to crawl out of is not dug.

>>> from tests.made_up.stretch import limits, measured
>>> headroom(measured(3.0, method="tunnel", tunnel_face_height_ft=2.49), limits()).effect.value
'blocks'
>>> headroom(measured(3.0, method="tunnel", tunnel_face_height_ft=2.5), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Feet, Say
from estimator.scopes.rules.concern import TUNNELS
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.measured import Measured
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def headroom(it: Measured, limits: Limits) -> Answers:
    height_ft = it.tunnel_height_ft
    if height_ft is None or height_ft >= limits("tunnel_headroom_min_ft"):
        return None
    return Ruling(
        effect=Effect.BLOCKS,
        homeowner=Say.of("A tunnel there would be too low for people to work and leave safely."),
        estimator=Say.of("Headroom {height} is under the least.", height=Feet(round(height_ft, 2))),
    )


RULE = Rule(
    id="headroom",
    numbers=("R26",),
    concerns=TUNNELS,
    statement="Less headroom than the firm's least: no tunnel.",
    reason="Nobody can turn, or be pulled out.",
    source=COMMON_PRACTICE,
    worse="hurting somebody",
    reads=("tunnel_headroom_min_ft",),
    guards_people=True,
    measures=headroom,
)
