"""Asbestos-cement pipe needs no test: its name says it. It is never broken in the ground at a fixed price, and dug out wet.

>>> from tests.made_up.stretch import limits, stretch
>>> cement(stretch(method="burst", pipes=("asbestos cement",)), limits()).effect.value
'no fixed price'
>>> cement(stretch(method="trench", pipes=("asbestos cement",)), limits()).effect.value
'caution'
>>> cement(stretch(method="trench", pipes=("concrete",)), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import BREAKS_PIPE, DIGS, FROM_INSIDE, RENEWS
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import FROM_MEMORY, Answers, Rule, Ruling


def is_cement(it: StretchFacts) -> bool:
    return any("asbestos" in pipe.lower() for pipe in it.pipes)


def cement(it: StretchFacts, limits: Limits) -> Answers:
    if not is_cement(it):
        return None
    if it.works.burst:
        return Ruling(
            effect=Effect.NO_FIXED_PRICE,
            homeowner=Say.of(
                "The existing pipe contains asbestos. Breaking it in the ground leaves asbestos there. We price it only after the agency in charge agrees in writing."
            ),
            estimator=Say.of(
                "Asbestos-cement pipe: bursting leaves regulated waste in the ground (40 CFR 61.145, 61.150, from memory). Written word of the asbestos agency first, or another way."
            ),
            facts=frozenset({"asbestos_cement"}),
        )
    return Ruling(
        effect=Effect.CAUTION,
        homeowner=Say.of(
            "The old pipe contains asbestos. Trained workers keep it wet, do not saw or grind it, and wrap what comes out."
        ),
        estimator=Say.of(
            "Asbestos-cement pipe: trained crew, wet work, snap cutter, no saw, no grinder, no chain; wrapped, labeled, to a landfill that takes it (29 CFR 1926.1101(g), 40 CFR 61.145, from memory). No test of the pipe."
        ),
        facts=frozenset({"asbestos_cement"}),
    )


RULE = Rule(
    id="asbestos-cement-pipe",
    numbers=("R29",),
    concerns=BREAKS_PIPE | DIGS | RENEWS | FROM_INSIDE,
    statement="Asbestos-cement pipe: bursting has no fixed price; whoever cuts or digs it works wet, with a trained crew, and wraps it.",
    reason="Its name says that it holds asbestos; broken dry it sets the fibers free, and its pieces are regulated waste.",
    source=FROM_MEMORY,
    settled_by="",
    worse="hurting somebody",
    guards_people=True,
    applies=cement,
)
