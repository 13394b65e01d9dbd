"""Soil over an existing pipe was dug before: never type A, and at a leak or unclassified type C.

>>> from tests.made_up.stretch import limits, stretch
>>> str(soil_type(stretch("hole soil seen", method="trench"), limits()).estimator)[:11]
'Soil type C'
>>> classified = stretch("offset 30%", method="trench", site={"competent_person": "the foreman", "caving_signs": False})
>>> str(soil_type(classified, limits()).estimator)[:11]
'Soil type B'
"""

from estimator.knowledge.excavation import type_over_a_pipe
from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import DIGS
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.read_out import why_of_type
from estimator.scopes.rules.rule import Answers, Rule, Ruling

LEAKS = frozenset({"hole", "gap", "crack", "collapse", "leak", "channel", "roots"})


def soil_type(it: StretchFacts, limits: Limits) -> Answers:
    leak = bool(LEAKS & set(it.kinds)) or any(t.result == "failed" for t in it.tests)
    water = any("running in" in f.signs for f in it.findings) or it.site.water_table_ft is not None
    classified = bool(it.site.competent_person) and it.site.caving_signs is not None
    word = type_over_a_pipe("A", classified=classified, leak=leak, water=water)
    return Ruling(
        effect=Effect.CAUTION,
        homeowner=Say.of(
            "The soil over a pipe was dug before and is looser than it looks. The competent person checks it every day and after rain."
        ),
        estimator=Say.of(
            "Soil type {kind} over this pipe (disturbed; {why}): the competent person classifies it.",
            kind=word,
            why=why_of_type(leak=leak, water=water, classified=classified),
        ),
    )


RULE = Rule(
    id="soil-over-an-old-pipe",
    numbers=("R22",),
    concerns=DIGS,
    statement="Soil over an existing pipe is never type A; at a leak, in water or unclassified it is type C.",
    reason="It was disturbed when the pipe was laid, and a leaking drain keeps it wet.",
    source="29 CFR 1926 Subpart P App. A; 1926.651(k)",
    worse="hurting somebody",
    guards_people=True,
    applies=soil_type,
)
