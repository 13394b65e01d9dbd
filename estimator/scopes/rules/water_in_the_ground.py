"""Running ground water is stopped or pumped first; a tunnel is not dug below it.

>>> from tests.made_up.stretch import limits, stretch
>>> ground_water(stretch("leak running in"), limits()).effect.value
'requires first'
>>> ground_water(stretch(method="trench", wet=True), limits()).effect.value
'adds work'
>>> ground_water(stretch(method="tunnel", wet=True, zones=("slab",)), limits()).effect.value
'blocks'
>>> ground_water(stretch(method="tunnel", zones=("slab",)), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Feet, Say
from estimator.scopes.rules.concern import DIGS, LINES
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import Answers, Rule, Ruling


def ground_water(it: StretchFacts, limits: Limits) -> Answers:
    running = any("running in" in f.signs for f in it.findings)
    wet = [o for o in it.works.digs if o.wet]
    table = it.site.water_table_ft
    below = table is not None and it.depth_ft is not None and table <= it.depth_ft + limits("bedding_ft")
    if not (running or wet or (below and it.works.lined)):
        return None
    if it.works.lined:
        return Ruling(
            effect=Effect.REQUIRES_FIRST,
            homeowner=Say.of("Groundwater runs into the pipe. We seal it off before we line."),
            estimator=Say.of("Running ground water: seal, pre-liner or draw down before lining; resin washes out."),
            facts=frozenset({"wet", "seal_water_first"}),
        )
    under = [o for o in wet if o.kind == "tunnel"]
    if under:
        return Ruling(
            effect=Effect.BLOCKS,
            homeowner=Say.of(
                "The groundwater is above the tunnel floor. We cannot dig safely under the house until it is drawn down."
            ),
            estimator=Say.of(
                "Floor of {opening} at {deep}, below the water table: not until it is drawn down (29 CFR 1926.651(h)).",
                opening=under[0].name,
                deep=Feet(round(under[0].depth_ft, 2)),
            ),
            facts=frozenset({"wet"}),
        )
    return Ruling(
        effect=Effect.ADDS_WORK,
        homeowner=Say.of("There is groundwater, so a pump runs while the excavation is open."),
        estimator=Say.of(
            "Ground water: pump, soil counts as type C, nobody enters standing water (29 CFR 1926.651(h))."
        ),
        facts=frozenset({"wet"}),
    )


RULE = Rule(
    id="water-in-the-ground",
    numbers=("R16", "D21"),
    concerns=LINES | DIGS,
    statement="Running ground water: seal before lining, pump while digging, no tunnel whose floor lies below the water table.",
    reason="Water washes resin out of a liner and soil into a dig.",
    source="common practice; 29 CFR 1926.651(h)",
    worse="hurting somebody",
    reads=("bedding_ft",),
    guards_people=True,
    applies=ground_water,
)
