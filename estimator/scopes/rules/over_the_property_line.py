"""Past the property line somebody else must agree in writing.

>>> from tests.made_up.stretch import limits, mark, stretch
>>> line(stretch(method="trench", marks=(mark("property line"),)), limits()).effect.value
'requires first'
>>> line(stretch(method="trench"), limits()) is None
True
>>> line(stretch(method="trench", line_marks=(mark("property line", -5.0),)), limits()).effect.value  # wholly beyond it
'requires first'
>>> line(stretch(method="trench", line_marks=(mark("property line", 40.0),)), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.opening import Opening
from estimator.model.say import Say
from estimator.model.stretch import Stretch
from estimator.scopes.rules.concern import OPENS_GROUND, RENEWS
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def line(it: StretchFacts, limits: Limits) -> Answers:
    touched: list[tuple[Stretch, Opening | None]] = [(part, None) for part in it.works.renewed]
    touched += [(o.at_top, o) for o in it.works.open_digs if o.line == it.line]
    lines = [m.stretch for m in it.line_marks if m.word == "property line"]
    over = [(where, o) for where, o in touched for lot in lines if _past(where, lot, it.downstream)]
    if not over:
        return None
    opening = next((o for _, o in over if o is not None), None)
    return Ruling(
        effect=Effect.REQUIRES_FIRST,
        homeowner=Say.of(
            "Part of the work is past your property line. We need written permission from the owner there."
        ),
        estimator=(
            Say.of("Crosses the property line: written permission, or the city's part of the pipe.")
            if opening is None
            else Say.of(
                "Past the property line with {opening}: written permission, or the city's part of the pipe.",
                opening=opening.name,
            )
        ),
        facts=frozenset({"permission_first"}),
    )


def _past(where: Stretch, lot: Stretch, downstream: int) -> bool:
    """It reaches the lot line or lies beyond it, down the drain."""
    low_end = where.to_ft if downstream == 1 else where.from_ft
    edge = lot.from_ft if downstream == 1 else lot.to_ft
    return where.touches(lot) or (low_end - edge) * downstream > 0


RULE = Rule(
    id="over-the-property-line",
    numbers=("R41",),
    concerns=RENEWS | OPENS_GROUND,
    statement="Work past the property line: written permission first; who owns the pipe there differs by city.",
    reason="It is not the homeowner's to open.",
    source=COMMON_PRACTICE,
    settled_by="",
    worse="leaving out a caution",
    applies=line,
)
