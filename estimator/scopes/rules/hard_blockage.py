"""Through a collapse or a hard blockage nothing can be pulled: no cleaning by machine, no lining; bursting only after a cable went through.

>>> from tests.made_up.stretch import limits, stretch
>>> hard_blockage(stretch("collapse cannot pass"), limits()).effect.value
'blocks'
>>> hard_blockage(stretch("collapse cannot pass", method="burst"), limits()).effect.value
'no fixed price'
>>> hard_blockage(stretch("blocked soft"), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import FROM_INSIDE
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def hard_blockage(it: StretchFacts, limits: Limits) -> Answers:
    if not closed_hard(it):
        return None
    if it.works.burst:
        return Ruling(
            effect=Effect.NO_FIXED_PRICE,
            homeowner=Say.of("We must first get a cable through the closed part. If that fails, we have to dig it up."),
            estimator=Say.of("Burst only after a cable or rod has passed the closed part."),
            facts=frozenset({"cable_through_first"}),
        )
    return Ruling(
        effect=Effect.BLOCKS,
        homeowner=Say.of("The pipe is closed there. No tool can pass to work from inside."),
        estimator=Say.of("Collapse or hard blockage: nothing passes, so no rotary cleaning and no liner."),
    )


def closed_hard(it: StretchFacts) -> bool:
    """A collapse, a blockage not called soft, or anything but roots and dirt that the camera cannot pass."""
    if it.of("collapse"):
        return True
    if any("soft" not in f.signs for f in it.of("blocked")):
        return True
    return any(
        "cannot pass" in f.signs
        for f in it.findings
        if f.kind not in ("blocked", "roots", "grease", "scale", "mud", "sag")
    )


RULE = Rule(
    id="hard-blockage",
    numbers=("R05", "D19"),
    concerns=FROM_INSIDE,
    statement="Collapsed, or closed by something hard or unknown: no cleaning by machine, no liner; bursting only once a cable has passed.",
    reason="A tool driven into a collapse gets stuck or makes it worse.",
    source=COMMON_PRACTICE,
    settled_by="film",
    worse="offering what cannot work",
    applies=hard_blockage,
)
