"""Cleaning takes out what is in the pipe; the opening it came in by stays.

>>> from tests.made_up.stretch import limits, need, stretch
>>> [r.effect.value for r in no_opening(stretch(method="clean", needs=(need("roots", 3, kinds=("roots", "opening")),)), limits())]
['does not fix']
>>> [r.effect.value for r in no_opening(stretch(method="clean", needs=(need("roots", 2, kinds=("roots", "opening")),)), limits())]
['caution']
>>> no_opening(stretch(method="clean", needs=(need("grease", 3),)), limits())
()
>>> [r.effect.value for n in (1, 2, 3) for r in no_opening(stretch(method="clean", needs=(need("sag", n),)), limits())]
['does not fix', 'caution', 'does not fix']
"""

from estimator.model.judgement import Effect, Need
from estimator.model.line import CLEANABLE
from estimator.model.say import Say
from estimator.scopes.rules.concern import ONLY_CLEANS
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Rule, Ruling
from estimator.scopes.rules.soft_blockage_clean_first import cleaned_first

LIVED_WITH = frozenset({"sag"})
"""What may stay as long as somebody cleans it out on a schedule."""


def no_opening(it: StretchFacts, limits: Limits) -> tuple[Ruling, ...]:
    return tuple(_ruling(n) for n in it.needs if set(n.kinds) - CLEANABLE)


def _ruling(need: Need) -> Ruling:
    if any(cleaned_first(f) and not f.after_cleaning for f in need.findings):
        return Ruling(
            effect=Effect.CAUTION,
            homeowner=Say.of(
                "Cleaning opens the pipe so that we can inspect it. The opening the roots came in by remains. What the camera shows decides the repair."
            ),
            estimator=Say.of("Closed by dirt: clean, re-inspect, then price. The opening stays."),
            facts=frozenset({"film_again"}),
            stretch=need.stretch,
        )
    if not need.must and set(need.kinds) & CLEANABLE:
        return Ruling(
            effect=Effect.CAUTION,
            homeowner=Say.of(
                "Cleaning is upkeep. Roots usually return in 6 to 24 months, because the small opening remains."
            ),
            estimator=Say.of("Cleaning only: the opening stays; say so, film after, and offer the repair beside it."),
            facts=frozenset({"film_again"}),
            stretch=need.stretch,
        )
    if lived_with(need):
        return Ruling(
            effect=Effect.CAUTION,
            homeowner=Say.of("The dip stays and fills again. Have the drain cleaned about once a year."),
            estimator=Say.of("Live with the dip: jet once a year, film each time, set the interval by what is found."),
            facts=frozenset({"film_again"}),
            stretch=need.stretch,
        )
    return Ruling(
        effect=Effect.DOES_NOT_FIX,
        homeowner=Say.of("Cleaning alone does not close the opening in the pipe."),
        estimator=Say.of(
            "{kinds}: cleaning is no repair.", kinds=", ".join(k for k in need.kinds if k not in CLEANABLE)
        ),
        stretch=need.stretch,
    )


def lived_with(need: Need) -> bool:
    """A dip that may stay and has nothing else wrong with it; a mere puddle asks for nothing."""
    return not need.must and not need.watched and set(need.kinds) <= LIVED_WITH


RULE = Rule(
    id="cleaning-closes-no-opening",
    numbers=("D01",),
    concerns=ONLY_CLEANS,
    statement="Cleaning removes roots and build-up; where a repair is a must it does not answer it, else it is upkeep and said to be; a dip that may stay is lived with on a schedule.",
    reason="Roots mean an opening; water gets out where roots get in.",
    source=COMMON_PRACTICE,
    worse="offering what cannot work",
    judges_the_cure=True,
    applies=no_opening,
)
