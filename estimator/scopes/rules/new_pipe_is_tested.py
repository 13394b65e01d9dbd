"""New pipe under a slab is tested before it is covered; the old system is filled only to the lowest opening, never higher.

>>> from tests.made_up.stretch import limits, stretch
>>> new_pipe(stretch(method="tunnel", zones=("slab",)), limits()).effect.value
'requires first'
>>> new_pipe(stretch(method="trench", zones=("yard",)), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import NEW_PIPE
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import Answers, Rule, Ruling


def new_pipe(it: StretchFacts, limits: Limits) -> Answers:
    if not it.under_floor and not it.works.below_floor:
        return None
    return Ruling(
        effect=Effect.REQUIRES_FIRST,
        homeowner=Say.of("We fill the new pipe with water and watch it before we cover it."),
        estimator=Say.of(
            "New drain: 10 ft head, or 5 ft where the house code of 2015 or later rules, 15 min, before cover. Old pipe beside it: only to the lowest opening, watched, drained promptly; never 10 ft on old iron. Plugs rated, tethered, nobody in line; no air test on plastic."
        ),
        facts=frozenset({"new_pipe_test"}),
    )


RULE = Rule(
    id="test-the-new-pipe",
    numbers=("R42",),
    concerns=NEW_PIPE,
    statement="After any replacement under a slab: water test before cover; old systems only to their lowest opening and for minutes.",
    reason="A buried mistake costs the whole job again; filling a leaking old system soaks the soil that carries the house.",
    source="IPC 312 (10 ft, 15 min); IRC P2503.5.1 (5 ft since 2015, from memory); the old system: common practice",
    worse="hurting somebody",
    applies=new_pipe,
)
