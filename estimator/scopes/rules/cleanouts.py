"""A drain that is renewed gets a way in: near the house, at every long stretch, at every turn.

>>> from estimator.model.stretch import Stretch
>>> from tests.made_up.stretch import limits, mark, stretch
>>> cleanouts(stretch(method="trench", cleanouts_ft=(), slab_edge_ft=0.0), limits()).effect.value
'adds work'
>>> cleanouts(stretch(method="trench", cleanouts_ft=(0.0,), slab_edge_ft=0.0), limits()) is None
True
>>> far = {"method": "trench", "cleanouts_ft": (0.0,), "slab_edge_ft": 0.0}
>>> cleanouts(stretch(stretch=Stretch(0.0, 101.0), **far), limits()).effect.value
'adds work'
>>> cleanouts(stretch(stretch=Stretch(0.0, 100.0), **far), limits()) is None
True
>>> turns = lambda *at: {"marks": tuple(mark("bend", ft, degrees=90.0) for ft in at), **far}
>>> two = lambda second: cleanouts(stretch(stretch=Stretch(0.0, 60.0), **turns(2.0, second)), limits())
>>> two(42.0) is None, two(43.0).effect.value  # one at the first turn serves 40 ft on
(True, 'adds work')
"""

from itertools import pairwise

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.model.stretch import Stretch
from estimator.scopes.rules.concern import BREAKS_PIPE, LAYS
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import Answers, Rule, Ruling


def cleanouts(it: StretchFacts, limits: Limits) -> Answers:
    missing = _none_at_the_exit(it, limits("cleanout_exit_ft")) or _too_far(it, _every_ft(limits)) or _turn(it, limits)
    if not missing:
        return None
    return Ruling(
        effect=Effect.ADDS_WORK,
        homeowner=Say.of("We install a cleanout, so that the drain can be reached without pulling a toilet."),
        estimator=Say.of("Cleanout missing at the exit, over the spacing or at a turn: add one."),
        facts=frozenset({"new_cleanout"}),
    )


def _every_ft(limits: Limits) -> float:
    here = limits.place.cleanout_every_ft if limits.place else None
    return here if here is not None else limits("cleanout_every_ft")


def _none_at_the_exit(it: StretchFacts, near_ft: float) -> bool:
    edge = it.slab_edge_ft
    if edge is None or it.is_branch or it.stretch.gap_ft(Stretch(edge, edge)) > near_ft:
        return False
    return all(abs(at - edge) > near_ft for at in it.cleanouts_ft)


def _too_far(it: StretchFacts, every_ft: float) -> bool:
    ends = sorted({it.stretch.from_ft, it.stretch.to_ft, *(c for c in it.cleanouts_ft if it.stretch.holds(c))})
    return any(b - a > every_ft for a, b in pairwise(ends))


def _turn(it: StretchFacts, limits: Limits) -> bool:
    here = limits.place.cleanout_turn_degrees if limits.place else None
    most = here if here is not None else limits("cleanout_turn_degrees")
    sharp = [m for m in it.placed("bend") if (m.degrees or 0.0) > most and it.stretch.holds(m.stretch.from_ft)]
    near, serves = limits("cleanout_exit_ft"), limits("cleanout_turns_ft")
    turns = sorted((m.stretch.from_ft for m in sharp), reverse=it.downstream == -1)
    reached = [at for at in turns if any(abs(c - at) <= near for c in it.cleanouts_ft)]
    return any(not any(0 <= (at - one) * it.downstream <= serves for one in reached) for at in turns)


RULE = Rule(
    id="cleanouts",
    numbers=("R39",),
    concerns=LAYS | BREAKS_PIPE,
    statement="No cleanout near the building exit, too far between two, or a turn over 45 degrees: one is added.",
    reason="What cannot be reached cannot be kept clean; a code asks for it when a drain is renewed.",
    source="IPC 708 (spacing 100 ft, turns over 45 degrees; 708.1.4, from memory: one at the first of several turns within 40 ft); the place's row stands over it",
    worse="leaving out a caution",
    reads=("cleanout_exit_ft", "cleanout_every_ft", "cleanout_turn_degrees", "cleanout_turns_ft"),
    applies=cleanouts,
)
