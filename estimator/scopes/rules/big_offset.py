"""Pipe ends far out of line are dug up: a liner would fold there. A smaller lip may be trimmed only where the wall is sound.

>>> from estimator.model.stretch import Stretch
>>> from tests.made_up.stretch import limits, need, stretch
>>> [r.effect.value for r in big_offset(stretch("offset 30%", method="sectional liner"), limits())]
['blocks']
>>> [r.effect.value for r in big_offset(stretch("offset 30%", "20 crack", needs=(need("offset"), need("crack", at=Stretch(20, 20)))), limits())]
['requires first']
>>> [r.effect.value for r in big_offset(stretch("offset 25%"), limits())]
['caution']
>>> big_offset(stretch("offset 10%"), limits())
()
"""

from estimator.model.judgement import Effect
from estimator.model.line import Finding
from estimator.model.say import Feet, Say
from estimator.scopes.rules.concern import LINES
from estimator.scopes.rules.facts import StretchFacts, percent_of
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Rule, Ruling


def big_offset(it: StretchFacts, limits: Limits) -> tuple[Ruling, ...]:
    trim, most = limits("offset_2_percent"), limits("offset_blocks_percent")
    return tuple(
        _ruling(it, f, most) for f in it.of("offset") if percent_of(f, it.bore_in) > trim or "cannot pass" in f.signs
    )


def _ruling(it: StretchFacts, offset: Finding, most: float) -> Ruling:
    if percent_of(offset, it.bore_in) <= most and "cannot pass" not in offset.signs:
        return Ruling(
            effect=Effect.CAUTION,
            homeowner=Say.of("Where pipe ends do not line up, a slight bump can remain."),
            estimator=Say.of(
                "Lip at {at}: trim only where the wall is sound, else dig; grinding opens thin iron and clay.",
                at=Feet(offset.stretch.from_ft),
            ),
            stretch=offset.stretch,
        )
    elsewhere = [n for n in it.needs if not n.stretch.touches(offset.stretch)]
    if any(not x.pieces_ft for x in it.works.lined) and elsewhere:
        return Ruling(
            effect=Effect.REQUIRES_FIRST,
            homeowner=Say.of(
                "Where the pipe ends are far out of line, we dig up and replace that spot before we line."
            ),
            estimator=Say.of(
                "Offset over the limit at {at}: spot repair there before the liner.", at=Feet(offset.stretch.from_ft)
            ),
            facts=frozenset({"dig_first"}),
            stretch=offset.stretch,
        )
    return Ruling(
        effect=Effect.BLOCKS,
        homeowner=Say.of("The pipe ends are too far out of line for a liner. It would fold there."),
        estimator=Say.of(
            "Offset over the limit at {at}: a liner folds or necks; once it is dug there is nothing else here to line.",
            at=Feet(offset.stretch.from_ft),
        ),
        stretch=offset.stretch,
    )


RULE = Rule(
    id="big-offset",
    numbers=("R06",),
    concerns=LINES,
    statement="Pipe ends more than a quarter of the bore out of line: no sectional liner, and a full liner only after a spot repair there.",
    reason="The liner folds or necks at the step. Grinding the lip of clay or thin iron opens the pipe.",
    source=COMMON_PRACTICE,
    worse="offering what cannot work",
    reads=("offset_2_percent", "offset_blocks_percent"),
    applies=big_offset,
)
