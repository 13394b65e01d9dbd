"""An opening that nobody measured a place for, or a wye in a line at a place nobody noted, is a guess: no fixed price until
somebody has.

>>> from tests.made_up.stretch import limits, stretch
>>> [r.effect.value for r in measured_way(stretch(method="tunnel", zones=("slab",), assumed=True), limits())]
['no fixed price']
>>> measured_way(stretch(method="tunnel", zones=("slab",)), limits())
()
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import ANYTHING
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Rule, Ruling


def measured_way(it: StretchFacts, limits: Limits) -> tuple[Ruling, ...]:
    return (*_openings(it), *_joins(it))


def _openings(it: StretchFacts) -> tuple[Ruling, ...]:
    return tuple(
        Ruling(
            effect=Effect.NO_FIXED_PRICE,
            homeowner=Say.of(
                "The access there is not measured yet. Without open ground we have to open a floor. We can set a firm price after we measure it."
            ),
            estimator=Say.of(
                "{opening} is assumed: {why}. Measure the way in (beside, joins) before a fixed price.",
                opening=opening.name,
                why=opening.why_assumed or opening.name,
            ),
            facts=frozenset({"way_in_assumed"}),
        )
        for opening in it.works.assumed[:1]
    )


def _joins(it: StretchFacts) -> tuple[Ruling, ...]:
    if it.is_branch or not any(x.new_wye and x.line == it.line for x in it.works.laid):
        return ()
    return (
        Ruling(
            effect=Effect.NO_FIXED_PRICE,
            homeowner=Say.of(
                "We have not located where this line joins the next one. We can set a firm price after we locate it."
            ),
            estimator=Say.of("New wye, no note of where the line joins. Locate it (joins) before a fixed price."),
        ),
    )


RULE = Rule(
    id="way-in-was-measured",
    numbers=(),
    concerns=ANYTHING,
    statement="An opening that rests on a place nobody measured, such as a second pit at a tunnel's far end, has no fixed price; nor has a new wye at a place that was not noted.",
    reason="Where there is no open ground the second pit is an opening in the floor, and a way in taken for 15 ft may be 50.",
    source=COMMON_PRACTICE,
    worse="offering what cannot work",
    applies=measured_way,
)
