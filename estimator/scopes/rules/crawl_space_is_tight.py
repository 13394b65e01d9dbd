"""A low or muddy crawl space slows the work and asks for a way out.

>>> from tests.made_up.stretch import limits, mark, stretch
>>> tight(stretch(method="crawl replace", zones=("crawl",), marks=(mark("crawl", lengths=(("", 1.99),)),)), limits()).effect.value
'adds work'
>>> tight(stretch(method="crawl replace", zones=("crawl",), marks=(mark("crawl", lengths=(("", 2.0),)),)), limits()).effect.value
'caution'
>>> tight(stretch(method="crawl replace", zones=("crawl",), house={"crawl_mud": True}), limits()).effect.value
'adds work'
"""

from estimator.model import crawl_space
from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import HANGS
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def tight(it: StretchFacts, limits: Limits) -> Answers:
    spaces = it.placed(*crawl_space.WORDS)
    height = crawl_space.height_ft(spaces, it.house)
    low = height is not None and height < limits("crawl_low_ft")
    mud = crawl_space.is_muddy(spaces, it.house)
    if low or mud:
        return Ruling(
            effect=Effect.ADDS_WORK,
            homeowner=Say.of("The space under the house is low or muddy, so the work there takes longer."),
            estimator=Say.of(
                "Crawl space under the firm's clearance or muddy: surcharge; second person, light, way out known."
            ),
            facts=frozenset({*(("crawl_low",) if low else ()), *(("crawl_mud",) if mud else ())}),
        )
    return Ruling(
        effect=Effect.CAUTION,
        homeowner=Say.of("The crew works in the crawl space. Please keep its hatch clear."),
        estimator=Say.of("Crawl space: second person, light, way out known; look for wires, animals and insulation."),
    )


RULE = Rule(
    id="crawl-space-is-tight",
    numbers=(),
    concerns=HANGS,
    statement="Less clearance than the firm's limit, or mud: more hours; always a second person and light.",
    reason="Nobody lies in mud under a house alone.",
    source=COMMON_PRACTICE,
    worse="hurting somebody",
    reads=("crawl_low_ft",),
    applies=tight,
)
