"""Close to a trunk roots carry the tree: ask an arborist, bore or dig by hand, and ask the town.

>>> from tests.made_up.stretch import limits, mark, stretch
>>> # the trench is 2.4 ft wide: its edge lies 1.2 ft off the pipe
>>> tree = lambda away, trunk=12.0: (mark("tree", size_in=trunk, lengths=(("away", away),)),)
>>> trees(stretch(method="trench", line_marks=tree(6.1)), limits()).effect.value
'caution'
>>> trees(stretch(method="trench", line_marks=tree(7.3)), limits()) is None
True
>>> of = lambda away: trees(stretch(method="trench", line_marks=tree(away, trunk=30.0)), limits())
>>> of(8.6).facts, of(8.8).facts  # three trunks are 7.5 ft: an arborist; six are 15 ft: a caution
(frozenset({'arborist'}), frozenset())
>>> of(16.1).effect.value, of(16.3) is None
('caution', True)
"""

from estimator.model.judgement import Effect
from estimator.model.line import Mark
from estimator.model.opening import Opening
from estimator.model.say import Feet, Say
from estimator.scopes.rules.concern import OPENS_GROUND
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import Answers, Rule, Ruling


def trees(it: StretchFacts, limits: Limits) -> Answers:
    near, trunks, roots = limits("tree_near_ft"), limits("tree_trunks"), limits("tree_root_trunks")
    close = [
        (far, tree, opening)
        for opening in it.works.open_digs
        for tree, far in it.near(opening, "tree", at_top=True)
        if far <= max(near, roots * (tree.size_in or 0.0) / 12)
    ]
    if not close:
        return None
    far, tree, opening = min(close, key=lambda found: found[0])
    if not any(off <= max(near, trunks * (t.size_in or 0.0) / 12) for off, t, _ in close):
        return _roots_reach(far, tree, opening)
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


def _roots_reach(far: float, tree: Mark, opening: Opening) -> Ruling:
    return Ruling(
        effect=Effect.CAUTION,
        homeowner=Say.of("Roots of a tree reach the dig; we cut as few as we can, and those we cut are cut clean."),
        estimator=Say.of(
            "Trunk at {at} stands {far} from the edge of {opening}, within six of its diameters: no roots torn, cut clean by hand; ask an arborist where many are met.",
            at=Feet(tree.stretch.from_ft),
            far=Feet(round(far, 1)),
            opening=opening.name,
        ),
    )


RULE = Rule(
    id="trees",
    numbers=("R40",),
    concerns=OPENS_GROUND,
    statement="A trunk within 5 ft or three trunk diameters of the dig: arborist, bore or hand dig, tree permit; within six: roots cut clean by hand.",
    reason="Cut anchor roots bring a tree down, on people or on the house.",
    source="common practice; arborists keep digs six trunk diameters off and never nearer than three (from memory)",
    worse="leaving out a caution",
    reads=("tree_near_ft", "tree_trunks", "tree_root_trunks"),
    applies=trees,
)
