"""Some troubles no lining and no bursting cures: a fallen-in pipe, a wrong fitting, another line through the bore.

>>> from tests.made_up.stretch import limits, need, stretch
>>> [r.effect.value for r in no_cure(stretch(needs=(need("collapse"),)), limits())]
['does not fix']
>>> no_cure(stretch(needs=(need("crack"),)), limits())
()
>>> no_cure(stretch(method="burst", needs=(need("collapse"),)), limits())
()
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import KEEPS_THE_OLD_PATH
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Rule, Ruling

NOT_BY_LINING = frozenset({"collapse", "blocked", "fitting", "utility"})
NOT_BY_BURSTING = frozenset({"utility", "fitting"})


def no_cure(it: StretchFacts, limits: Limits) -> tuple[Ruling, ...]:
    beyond = NOT_BY_BURSTING if it.works.burst else NOT_BY_LINING
    return tuple(
        Ruling(
            effect=Effect.DOES_NOT_FIX,
            homeowner=Say.of("This method does not repair the defect there."),
            estimator=Say.of("{kinds}: not cured by this method.", kinds=", ".join(sorted(beyond & set(n.kinds)))),
            stretch=n.stretch,
        )
        for n in it.needs
        if beyond & set(n.kinds)
    )


RULE = Rule(
    id="what-a-lining-cannot-cure",
    numbers=("R05",),
    concerns=KEEPS_THE_OLD_PATH,
    statement="A collapse, a blockage or a wrong fitting is not cured by lining; a wrong fitting is not cured by bursting either.",
    reason="The liner takes the shape it finds, and the head follows the old path.",
    source=COMMON_PRACTICE,
    worse="offering what cannot work",
    judges_the_cure=True,
    applies=no_cure,
)
