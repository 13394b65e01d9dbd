"""A trap too far from its vent loses its water: a long new way needs a vent.

>>> from tests.made_up.stretch import limits, reroute, stretch
>>> sink = lambda feet, vents=0: stretch(method="reroute", reroutes=(reroute(wall_ft=feet, vents=vents, serves=(("kitchen sink", 1),)),))
>>> trap_arm(sink(6.1), limits()).effect.value
'requires first'
>>> trap_arm(sink(6.0), limits()) is None
True
>>> trap_arm(sink(20.0, vents=1), limits()) is None
True
>>> trap_arm(sink(3.6), limits(place="unknown")).effect.value
'requires first'
"""

from estimator.knowledge.fixture_units import TRAP_IN, fixture, is_fixture
from estimator.model.judgement import Effect
from estimator.model.say import Feet, Say
from estimator.scopes.rules.concern import GOES_ROUND
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import Answers, Rule, Ruling


def trap_arm(it: StretchFacts, limits: Limits) -> Answers:
    for way in it.reroutes:
        traps = [TRAP_IN[f] for word, _ in way.serves if is_fixture(word) and (f := fixture(word)) in TRAP_IN]
        if not traps or way.vents:
            continue
        longest_ft = min(limits.longest_trap_arm_ft(trap) for trap in traps)
        if sum(leg.length_ft for leg in way.legs) > longest_ft:
            return Ruling(
                effect=Effect.REQUIRES_FIRST,
                homeowner=Say.of(
                    "The new pipe needs a vent to the roof, so that the trap under your sink keeps its water."
                ),
                estimator=Say.of(
                    "Longer than the trap arm allowed ({longest}): a vent within that length.", longest=Feet(longest_ft)
                ),
                facts=frozenset({"vent_needed"}),
            )
    return None


RULE = Rule(
    id="trap-arms",
    numbers=(),
    concerns=GOES_ROUND,
    statement="A fixture farther from its vent than its trap arm may be long: a vent is added.",
    reason="Flowing water siphons the trap dry and sewer gas comes in.",
    source="the place's row (trap_arms); where it says nothing, IPC/IRC and UPC tables of trap arms (read second-hand)",
    worse="hurting somebody",
    applies=trap_arm,
)
