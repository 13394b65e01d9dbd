"""Close to a trunk roots carry the tree: ask an arborist, bore or dig by hand, and ask the town.

>>> from estimator.scopes.rules.examples import limits, mark, stretch
>>> # the trench is 2.4 ft wide: its edge lies 1.2 ft off the pipe
>>> tree = lambda away, trunk=12.0: (mark("tree", size_in=trunk, lengths=(("away", away),)),)
>>> trees(stretch(method="trench", line_marks=tree(6.1)), limits()).effect.value
'caution'
>>> trees(stretch(method="trench", line_marks=tree(6.3)), limits()) is None
True
>>> trees(stretch(method="trench", line_marks=tree(8.6, trunk=30.0)), limits()).effect.value  # three trunks: 7.5 ft
'caution'
"""

from estimator.model.judgement import Effect
from estimator.model.say import Feet, Say
from estimator.scopes.rules.concern import OPENS_GROUND
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def trees(it: StretchFacts, limits: Limits) -> Answers:
    near, trunks = limits("tree_near_ft"), limits("tree_trunks")
    close = [
        (far, tree, opening)
        for opening in it.works.open_digs
        for tree, far in it.near(opening, "tree", at_top=True)
        if far <= max(near, trunks * (tree.size_in or 0.0) / 12)
    ]
    if not close:
        return None
    far, tree, opening = min(close, key=lambda found: found[0])
    return Ruling(
        effect=Effect.CAUTION,
        homeowner=Say.of(
            "A tree is close to the excavation. We spare its large roots where we can. Your city may require a tree permit."
        ),
        estimator=Say.of(
            "Trunk at {at} stands {far} from the edge of {opening}: arborist, bore or hand dig, city tree permit if protected.",
            at=Feet(tree.stretch.from_ft),
            far=Feet(round(far, 1)),
            opening=opening.name,
        ),
        facts=frozenset({"arborist"}),
    )


RULE = Rule(
    id="trees",
    numbers=("R40",),
    concerns=OPENS_GROUND,
    statement="A trunk within 5 ft or three trunk diameters of the dig: arborist, bore or hand dig, tree permit.",
    reason="Cut anchor roots bring a tree down, on people or on the house.",
    source=COMMON_PRACTICE,
    worse="leaving out a caution",
    reads=("tree_near_ft", "tree_trunks"),
    applies=trees,
)
