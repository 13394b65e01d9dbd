"""A liner or a burst pipe lies where the old pipe lay, so a dip stays a dip.

>>> from tests.made_up.stretch import limits, stretch
>>> [r.effect.value for r in keeps_the_grade(stretch("sag 16%"), limits())]
['does not fix']
>>> keeps_the_grade(stretch("sag 15%"), limits())
()
"""

from estimator.model.judgement import Effect
from estimator.model.say import Feet, Say
from estimator.scopes.rules.concern import KEEPS_THE_OLD_PATH
from estimator.scopes.rules.facts import StretchFacts, percent_of
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import Rule, Ruling

DIPS = ("sag", "reverse fall", "backfall")


def keeps_the_grade(it: StretchFacts, limits: Limits) -> tuple[Ruling, ...]:
    counts = limits("sag_counts_percent")
    alone = {f.id for n in it.needs if set(n.kinds) <= set(DIPS) for f in n.findings}
    dips = [
        f
        for f in it.of(*DIPS)
        if f.kind != "sag" or f.id in alone or percent_of(f, it.bore_in) > counts or "full" in f.signs
    ]
    return tuple(
        Ruling(
            effect=Effect.DOES_NOT_FIX,
            homeowner=Say.of("This method does not remove the low spot. Water will still stand there."),
            estimator=Say.of(
                "Dip from {low} to {high} stays; offer only with “the dip stays” in writing.",
                low=Feet(f.stretch.from_ft),
                high=Feet(f.stretch.to_ft),
            ),
            facts=frozenset({"dip_stays"}),
            stretch=f.stretch,
        )
        for f in dips
    )


RULE = Rule(
    id="lining-keeps-the-grade",
    numbers=("R07", "D02"),
    concerns=KEEPS_THE_OLD_PATH,
    statement="A liner or burst pipe follows the old grade: a dip or reverse fall stays.",
    reason="New inside does not lift the pipe. It may be offered only with that in writing.",
    source="common practice; for bursting a city's standard for pipe bursting (Carmel, Indiana, 33.159) calls sags and low grade unsuitable",
    worse="offering what cannot work",
    reads=("sag_counts_percent",),
    judges_the_cure=True,
    applies=keeps_the_grade,
)
