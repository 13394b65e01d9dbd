"""Close to a trunk roots carry the tree: ask an arborist, bore or dig by hand, and ask the town.

>>> from estimator.scopes.rules.examples import limits, mark, stretch
>>> tree = lambda away, trunk=12.0: (mark("tree", size_in=trunk, lengths=(("away", away),)),)
>>> trees(stretch(method="trench", marks=tree(4.9)), limits()).effect.value
'caution'
>>> trees(stretch(method="trench", marks=tree(5.1)), limits()) is None
True
>>> trees(stretch(method="trench", marks=tree(7.0, trunk=30.0)), limits()).effect.value  # three trunks: 7.5 ft
'caution'
"""

from estimator.model.judgement import Effect
from estimator.model.line import Mark
from estimator.model.say import Feet, Say
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def trees(it: StretchFacts, limits: Limits) -> Answers:
    close = [
        m
        for m in it.placed("tree")
        if _away_ft(m) <= max(limits("tree_near_ft"), limits("tree_trunks") * (m.size_in or 0.0) / 12)
    ]
    if not close:
        return None
    return Ruling(
        effect=Effect.CAUTION,
        homeowner=Say.of(
            "A tree stands close to the dig; its large roots are spared where we can, and your town may ask for a tree permit."
        ),
        estimator=Say.of(
            "Trunk within the clearance at {at}: arborist, bore or hand dig, city tree permit if protected.",
            at=Feet(close[0].stretch.from_ft),
        ),
        facts=frozenset({"arborist"}),
    )


def _away_ft(tree: Mark) -> float:
    away = tree.length("away")
    return away if away is not None else 0.0


RULE = Rule(
    id="trees",
    numbers=("R40",),
    methods=("yard spot", "trench", "burst", "look and see"),
    statement="A trunk within 5 ft or three trunk diameters of the dig: arborist, bore or hand dig, tree permit.",
    reason="Cut anchor roots bring a tree down, on people or on the house.",
    source=COMMON_PRACTICE,
    worse="leaving out a caution",
    reads=("tree_near_ft", "tree_trunks"),
    applies=trees,
)
