"""Each way belongs somewhere: a yard dig in the yard, a tunnel under a slab, a crawl-space job in a crawl space.

>>> from tests.made_up.stretch import limits, stretch
>>> fits(stretch(method="tunnel", zones=("yard",)), limits()).effect.value
'blocks'
>>> fits(stretch(method="tunnel", zones=("yard", "slab")), limits()) is None
True
>>> fits(stretch(method="trench", zones=("yard", "slab")), limits()).effect.value
'blocks'
>>> fits(stretch(method="crawl replace", zones=("slab",)), limits()).effect.value
'blocks'
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import HAS_A_GROUND
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling
from estimator.works.methods import record_of

OPEN_GROUND = frozenset({"yard", "drive", "walk", "street"})
FLOOR = frozenset({"slab", "basement"})
WHERE: dict[str, frozenset[str]] = {"outside": OPEN_GROUND, "floor": FLOOR, "crawl": frozenset({"crawl"})}
"""Every zone over the stretch must be one of these; a tunnel needs a slab over a part of it."""


def fits(it: StretchFacts, limits: Limits) -> Answers:
    zones, way = set(it.zones), record_of(it.method)
    tunnels = way.shape == "tunnel"
    if "slab" in zones if tunnels else zones and zones <= WHERE[way.ground]:
        return None
    return Ruling(
        effect=Effect.BLOCKS,
        homeowner=Say.of("This method does not fit the surface above the pipe there."),
        estimator=Say.of(
            "Over the pipe: {zones}; not where this method works. Split the stretch at the change.",
            zones=", ".join(it.zones) or "not stated",
        ),
    )


RULE = Rule(
    id="place-fits-the-method",
    numbers=(),
    concerns=HAS_A_GROUND,
    statement="A yard dig lies in open ground, a floor opening under a floor, a tunnel under a slab, a crawl-space job in a crawl space.",
    reason="Different zones over the pipe do not merge into one scope.",
    source=COMMON_PRACTICE,
    worse="offering what cannot work",
    goes_without_saying=True,
    applies=fits,
)
