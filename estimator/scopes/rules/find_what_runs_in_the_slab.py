"""Water, gas, power and ducts in or under the slab are found and shut off before anyone saws, breaks or digs there.

>>> from tests.made_up.stretch import limits, stretch
>>> services(stretch(method="break-through", zones=("slab",)), limits()).effect.value
'requires first'
>>> clear = {"in_slab": "nothing", "water_lines": "overhead"}
>>> services(stretch(method="break-through", zones=("slab",), house=clear), limits()).effect.value
'caution'
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import BELOW_FLOOR
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.read_out import RUNS
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def services(it: StretchFacts, limits: Limits) -> Answers:
    if it.house.in_slab == "nothing" and it.house.water_lines == "overhead":
        return Ruling(
            effect=Effect.CAUTION,
            homeowner=Say.of("We mark the shut-offs for water, gas and power before we start."),
            estimator=Say.of("Nothing known in the slab: mark the shut-offs all the same."),
        )
    return Ruling(
        effect=Effect.REQUIRES_FIRST,
        homeowner=Say.of(
            "Before we cut or dig, we locate water, gas and power lines in and under the floor. We shut off what is near."
        ),
        estimator=Say.of(
            "In the slab: {slab}; water: {water}. Scan or isolate water, gas, power, line sets and ducts, mark shut-offs, before saw, breaker or spade bar.",
            slab=RUNS.get(it.house.in_slab, it.house.in_slab),
            water=RUNS.get(it.house.water_lines, it.house.water_lines),
        ),
        facts=frozenset({"services_scan"}),
    )


RULE = Rule(
    id="find-what-runs-in-the-slab",
    numbers=("R32",),
    concerns=BELOW_FLOOR,
    statement="Services in and under the slab are found or shut off before sawing, breaking or digging there.",
    reason="A cut gas or power line kills, a cut water line floods the house.",
    source=COMMON_PRACTICE,
    worse="hurting somebody",
    guards_people=True,
    applies=services,
)
