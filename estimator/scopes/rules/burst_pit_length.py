"""The pit must be long enough for the new pipe to bend into the old one.

>>> from tests.made_up.stretch import limits, mark, measured
>>> room = (mark("clear", lengths=(("", 8.0),)),)
>>> pit_length(measured(3.0, method="burst", burst_entry_ft=8.1, marks=room), limits()).effect.value
'blocks'
>>> pit_length(measured(3.0, method="burst", burst_entry_ft=8.0, marks=room), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Feet, Say
from estimator.scopes.rules.concern import BREAKS_PIPE
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.measured import Measured
from estimator.scopes.rules.rule import Answers, Rule, Ruling


def pit_length(it: Measured, limits: Limits) -> Answers:
    needed_ft = it.entry_pit_ft
    room = [m.length() for m in it.at.placed("clear")]
    free_ft = max((r for r in room if r is not None), default=None)
    if needed_ft is None or free_ft is None or needed_ft <= free_ft:
        return None
    return Ruling(
        effect=Effect.BLOCKS,
        homeowner=Say.of("There is no room for the pit that pipe bursting needs."),
        estimator=Say.of(
            "Entry pit needs {needed}, {free} is free: the bend radius does not allow it.",
            needed=Feet(round(needed_ft, 1)),
            free=Feet(free_ft),
        ),
    )


RULE = Rule(
    id="burst-pit-length",
    numbers=("R35",),
    concerns=BREAKS_PIPE,
    statement="An entry pit shorter than the pipe's bend radius allows: not this layout.",
    reason="Fused pipe bent tighter than about twenty diameters kinks.",
    source="Carmel, Indiana, city standard for pipe bursting (radius); geometry",
    worse="offering what cannot work",
    measures=pit_length,
)
