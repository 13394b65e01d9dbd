"""A long dead-end tunnel needs a second way out, and past a limit it is not dug from one pit.

>>> from tests.made_up.stretch import limits, measured
>>> way_out(measured(3.0, method="tunnel", tunnel_ft=25.1), limits()).effect.value
'caution'
>>> way_out(measured(3.0, method="tunnel", tunnel_ft=25.0), limits()) is None
True
>>> way_out(measured(3.0, method="tunnel", tunnel_ft=60.0), limits()).effect.value
'blocks'
"""

from estimator.model.judgement import Effect
from estimator.model.say import Feet, Say
from estimator.scopes.rules.concern import TUNNELS
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.measured import Measured
from estimator.scopes.rules.rule import Answers, Rule, Ruling


def way_out(it: Measured, limits: Limits) -> Answers:
    guessed = sum(1 for o in it.at.works.assumed if o.kind == "pit")
    pits = max(it.takeoff.value("pits") - guessed, 1.0)
    far_ft = it.takeoff.value("tunnel_ft") / pits
    if far_ft >= limits("tunnel_dead_end_max_ft"):
        return Ruling(
            effect=Effect.BLOCKS,
            homeowner=Say.of("The tunnel would be too long to leave quickly. It needs a second exit."),
            estimator=Say.of(
                "{far} from the pit to the face is no acceptable dead end: second pit.", far=Feet(round(far_ft, 1))
            ),
        )
    if far_ft > limits("tunnel_exit_ft"):
        return Ruling(
            effect=Effect.CAUTION,
            homeowner=Say.of("The tunnel is long. The crew may need a second access pit."),
            estimator=Say.of(
                "Face {far} from the pit: second way out, or the competent person's word against it in writing.",
                far=Feet(round(far_ft, 1)),
            ),
            facts=frozenset({"second_way_out"}),
        )
    return None


RULE = Rule(
    id="second-way-out",
    numbers=("R25",),
    concerns=TUNNELS,
    statement="A face farther from its pit than the firm's limit needs a second way out; twice as far is not dug from one pit.",
    reason="Whoever is at the face must get out past a fall.",
    source="common practice; the length is a firm's default",
    worse="hurting somebody",
    reads=("tunnel_dead_end_max_ft", "tunnel_exit_ft"),
    guards_people=True,
    measures=way_out,
)
