"""A part that was only suspected or never filmed gets no fixed price.

>>> from tests.made_up.stretch import limits, stretch
>>> not_confirmed(stretch("crack suspected", method="trench"), limits()).effect.value
'no fixed price'
>>> not_confirmed(stretch("crack inferred", method="trench"), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Feet, Say
from estimator.scopes.rules.concern import RENEWS
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def not_confirmed(it: StretchFacts, limits: Limits) -> Answers:
    unsure = [n for n in it.needs if n.grade in ("suspected", "not inspected")]
    unsure_findings = [f for f in it.findings if f.grade in ("suspected", "not inspected")] if not it.needs else []
    if it.unclear:
        return ASKED_BACK
    if not unsure and not unsure_findings and it.filmed:
        return None if it.run_out_seen else BEYOND
    return Ruling(
        effect=Effect.NO_FIXED_PRICE,
        homeowner=Say.of("We set a firm price after we see all of this pipe clearly."),
        estimator=Say.of(
            "Suspected or not filmed between {low} and {high}: confirm before a fixed price.",
            low=Feet(it.stretch.from_ft),
            high=Feet(it.stretch.to_ft),
        ),
        facts=frozenset({"confirm_first"}),
    )


ASKED_BACK = Ruling(
    effect=Effect.NO_FIXED_PRICE,
    homeowner=Say.of(
        "One of our inspection notes there can mean two things. We can set a firm price after we find out which."
    ),
    estimator=Say.of(
        "A line of the log there is asked back and not answered: answer it (estimator check) before a fixed price."
    ),
    facts=frozenset({"confirm_first"}),
)

BEYOND = Ruling(
    effect=Effect.NO_FIXED_PRICE,
    homeowner=Say.of(
        "We could not see past this spot, so the length of the damage is not known. We can set a firm price after we inspect it from the other end or open it."
    ),
    estimator=Say.of(
        "Sound pipe beyond the end of this repair was not seen: film from the other end, or a look-and-see dig, before a fixed price."
    ),
    facts=frozenset({"confirm_first"}),
)


RULE = Rule(
    id="not-confirmed-no-fixed-price",
    numbers=("R01",),
    concerns=RENEWS,
    statement="What is only suspected, was not filmed, or stands in a log line that may mean two things, has no fixed price; nor has a repair where sound pipe beyond its ends was not seen.",
    reason="A price for work nobody has seen is a guess that one side pays for. What follows from something seen (inferred) counts as known.",
    source=COMMON_PRACTICE,
    settled_by="film",
    worse="offering what cannot work",
    applies=not_confirmed,
)
