"""A soft blockage is what cleaning is for: clean gently, film again, and only then decide on anything else.

>>> from tests.made_up.stretch import limits, stretch
>>> soft_blockage(stretch("blocked soft", method="clean"), limits()).effect.value
'prefers'
>>> soft_blockage(stretch("blocked soft"), limits()).effect.value
'no fixed price'
>>> soft_blockage(stretch("blocked hard"), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.line import Finding
from estimator.model.say import Say
from estimator.scopes.rules.concern import FROM_INSIDE, RENEWS
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def soft_blockage(it: StretchFacts, limits: Limits) -> Answers:
    soft = [f for f in it.findings if cleaned_first(f) and not f.after_cleaning]
    if not soft:
        return None
    if not it.works.renewed:
        return Ruling(
            effect=Effect.PREFERS,
            homeowner=Say.of("The blockage looks soft. We clean it out gently and inspect the pipe again."),
            estimator=Say.of("Soft blockage: clean at low pressure, inspect again; gently if the pipe may be fiber."),
            facts=frozenset({"film_again"}),
        )
    return Ruling(
        effect=Effect.NO_FIXED_PRICE,
        homeowner=Say.of(
            "We could not see past a blockage. We can set a firm price after we clear the line and inspect it again."
        ),
        estimator=Say.of("Soft blockage not cleared yet: nothing beyond it is known; clean and inspect again first."),
        facts=frozenset({"clean_first", "film_again"}),
    )


def cleaned_first(finding: Finding) -> bool:
    """A blockage called soft, or roots, grease and the like that the camera could not pass."""
    if finding.kind == "blocked":
        return "soft" in finding.signs
    return "cannot pass" in finding.signs and finding.kind in ("roots", "grease", "scale", "mud")


RULE = Rule(
    id="soft-blockage-clean-first",
    numbers=("R05", "D19"),
    concerns=FROM_INSIDE | RENEWS,
    statement="A soft blockage is cleaned out and filmed before anything is priced beyond it.",
    reason="Roots, grease and paper are why a camera stops, and cleaning is the remedy.",
    source=COMMON_PRACTICE,
    settled_by="film",
    worse="leaving out a way that works",
    applies=soft_blockage,
)
