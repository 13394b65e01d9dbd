"""Scaled iron is scraped to the bare wall, and only if it still holds its shape may it be lined.

>>> from tests.made_up.stretch import limits, stretch
>>> bare_wall(stretch("scale 30%", pipes=("cast iron",)), limits()).effect.value
'requires first'
>>> bare_wall(stretch("scale 30%", pipes=("clay",)), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import LINES
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def bare_wall(it: StretchFacts, limits: Limits) -> Answers:
    worn = it.of("scale", "channel")
    if "iron" not in it.families or not worn or all(f.after_cleaning for f in worn):
        return None
    return Ruling(
        effect=Effect.REQUIRES_FIRST,
        homeowner=Say.of(
            "We descale the iron pipe and inspect it first. If it no longer holds its shape, it cannot be lined. We will show you the video."
        ),
        estimator=Say.of(
            "Iron with scale or a groove: descale to bare wall, film, check that it holds shape; have the stop-gap price ready if it opens."
        ),
        facts=frozenset({"descale_first", "film_again"}),
    )


RULE = Rule(
    id="descale-iron-before-lining",
    numbers=("R03", "D07", "D08"),
    concerns=LINES,
    statement="Iron is descaled to bare wall and checked for shape before lining; the price of lining hangs on the result.",
    reason="Scale hides grooves and holes, and sometimes the scale is all that is left of the pipe.",
    source=COMMON_PRACTICE,
    worse="offering what cannot work",
    applies=bare_wall,
)
