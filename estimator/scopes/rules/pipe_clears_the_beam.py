"""The top of new pipe clears every beam it passes under: a beam is never notched. Asked in the takeoff, beside the profile.

A 4 in pipe at 1/4 in/ft from an exit 2.6 ft down meets a beam 24 in deep at 15 ft; at 1/8 in/ft it clears it by about an
inch [computed].
"""

from estimator.scopes.rules.concern import LAID_UNDER_A_FLOOR
from estimator.scopes.rules.rule import COMMON_PRACTICE, Rule

RULE = Rule(
    id="pipe-clears-the-beam",
    numbers=("R18",),
    concerns=LAID_UNDER_A_FLOOR,
    statement="New pipe with the slope it needs passes under every beam with the firm's clearance, or that way is not offered.",
    reason="A notched beam lets the house break there; a flatter fall where the place allows it, or a lower exit, may do.",
    source=COMMON_PRACTICE,
    worse="offering what cannot work",
    reads=("beam_clearance_in",),
)
