"""Running ground water is stopped or pumped first; a tunnel is not dug below it.

>>> from estimator.scopes.rules.examples import limits, stretch
>>> ground_water(stretch("leak running in"), limits()).effect.value
'requires first'
>>> ground_water(stretch(method="trench", site={"water_table_ft": 2.9}), limits()).effect.value  # pipe at 3.0
'adds work'
>>> ground_water(stretch(method="tunnel", site={"water_table_ft": 2.9}), limits()).effect.value
'blocks'
>>> ground_water(stretch(method="tunnel", site={"water_table_ft": 6.0}), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import DIGS, LINERS, Answers, Rule, Ruling


def ground_water(it: StretchFacts, limits: Limits) -> Answers:
    running = any("running in" in f.signs for f in it.findings)
    table = it.site.water_table_ft
    below = table is not None and it.depth_ft is not None and table <= it.depth_ft + limits("bedding_ft")
    if not (running or below):
        return None
    if it.method in LINERS:
        return Ruling(
            effect=Effect.REQUIRES_FIRST,
            homeowner=Say.of("Ground water runs into the pipe; it is sealed off before the lining goes in."),
            estimator=Say.of("Running ground water: seal, pre-liner or draw down before lining; resin washes out."),
            facts=frozenset({"wet", "seal_water_first"}),
        )
    if it.method == "tunnel" and below:
        return Ruling(
            effect=Effect.BLOCKS,
            homeowner=Say.of(
                "The ground water stands above the pipe, and nobody can dig safely under the house until it is drawn down."
            ),
            estimator=Say.of("Tunnel floor below the water table: not until it is drawn down."),
            facts=frozenset({"wet"}),
        )
    return Ruling(
        effect=Effect.ADDS_WORK,
        homeowner=Say.of("There is water in the ground, so a pump runs while the hole is open."),
        estimator=Say.of(
            "Ground water: pump, soil counts as type C, nobody enters standing water (29 CFR 1926.651(h))."
        ),
        facts=frozenset({"wet"}),
    )


RULE = Rule(
    id="water-in-the-ground",
    numbers=("R16", "D21"),
    methods=(*LINERS, *DIGS),
    statement="Running ground water: seal before lining, pump while digging, no tunnel below the water table.",
    reason="Water washes resin out of a liner and soil into a dig.",
    source="common practice; 29 CFR 1926.651(h)",
    worse="hurting somebody",
    reads=("bedding_ft",),
    guards_people=True,
    applies=ground_water,
)
