"""Small galvanized, lead or copper drains that are rusted or furred shut are replaced, not lined and not scraped.

>>> from estimator.model.stretch import Stretch
>>> from tests.made_up.stretch import limits, need, stretch
>>> furred = {"pipes": ("galvanized",), "needs": (need("scale", 3, at=Stretch(2.0, 17.0)),)}
>>> [r.effect.value for r in rusted(stretch(method="reline", **furred), limits())]
['blocks']
>>> [r.effect.value for r in rusted(stretch(method="clean", **furred), limits())]
['caution']
>>> rusted(stretch(method="reline", pipes=("cast iron",)), limits())
()
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import CLEANS, LINES
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Rule, Ruling


def rusted(it: StretchFacts, limits: Limits) -> tuple[Ruling, ...]:
    if "metal" not in it.families:
        return ()
    if not it.works.lined:
        return (
            Ruling(
                effect=Effect.CAUTION,
                homeowner=Say.of("Old metal pipe of this kind soon rusts shut again. Cleaning buys a little time."),
                estimator=Say.of("Galvanized, lead or copper branch: cleaning may open it; replace."),
            ),
        )
    return (
        Ruling(
            effect=Effect.BLOCKS,
            homeowner=Say.of("We replace old metal pipe of this kind. A liner would leave too little room."),
            estimator=Say.of("Galvanized, lead or copper branch: replace, do not line."),
        ),
    )


RULE = Rule(
    id="rusted-metal-is-replaced",
    numbers=("R12",),
    concerns=LINES | CLEANS,
    statement="Galvanized, lead and copper drains are replaced, not lined.",
    reason="They rust shut from inside, and what bore is left is too small for a liner.",
    source=COMMON_PRACTICE,
    worse="offering what cannot work",
    applies=rusted,
)
