"""Past the property line somebody else must agree in writing.

>>> from estimator.scopes.rules.examples import limits, mark, stretch
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
from estimator.model.say import Say
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def line(it: StretchFacts, limits: Limits) -> Answers:
    low_end = it.stretch.to_ft if it.downstream == 1 else it.stretch.from_ft
    lines = [m.stretch.from_ft for m in it.line_marks if m.word == "property line"]
    if not it.placed("property line") and not any((low_end - at) * it.downstream > 0 for at in lines):
        return None
    return Ruling(
        effect=Effect.REQUIRES_FIRST,
        homeowner=Say.of(
            "Part of the pipe lies past your property line; we need written permission from whoever owns it."
        ),
        estimator=Say.of("Crosses the property line: written permission, or the city's part of the pipe."),
        facts=frozenset({"permission_first"}),
    )


RULE = Rule(
    id="over-the-property-line",
    numbers=("R41",),
    methods=("yard spot", "trench", "burst", "reroute", "reline"),
    statement="Work past the property line: written permission first; who owns the pipe there differs by city.",
    reason="It is not the homeowner's to open.",
    source=COMMON_PRACTICE,
    worse="leaving out a caution",
    applies=line,
)
