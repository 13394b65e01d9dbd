"""Build-up with nothing else wrong is cleaned out, not lined over or dug up.

>>> from estimator.model.stretch import Stretch
>>> from tests.made_up.stretch import limits, need, stretch
>>> dirty = (need("scale", 2, at=Stretch(0.0, 22.0)),)
>>> [r.effect.value for r in dirt_alone(stretch("0-22 scale 30%", needs=dirty), limits())]
['does not fix']
>>> dirt_alone(stretch("0-22 scale 30%", "8-20 channel", needs=dirty), limits())
()
>>> dirt_alone(stretch("0-22 scale 30%", needs=dirty, method="crawl replace"), limits())  # it lies in the yard
()
"""

from estimator.model.judgement import Effect, Need
from estimator.model.say import Say
from estimator.scopes.rules.concern import HAS_A_GROUND, LINES, NEW_PIPE
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.method_rows import in_its_place
from estimator.scopes.rules.rule import COMMON_PRACTICE, Rule, Ruling

DIRT = frozenset({"scale", "grease", "blocked"})
NO_TROUBLE = DIRT | {"mud", "insects"}


def dirt_alone(it: StretchFacts, limits: Limits) -> tuple[Ruling, ...]:
    out_of_place = HAS_A_GROUND.holds(it) and not in_its_place(it)  # said by place-fits-the-method
    if out_of_place or (not it.works.lined and "metal" in it.families):
        return ()
    trouble = [f for f in it.line_findings if f.kind not in NO_TROUBLE and "never ends" not in f.signs]
    return tuple(
        Ruling(
            effect=Effect.DOES_NOT_FIX,
            homeowner=Say.of(
                "We clean out the build-up and inspect the pipe again. Build-up alone does not call for a new pipe or a liner."
            ),
            estimator=Say.of("Only scale, grease or a soft blockage there: clean, film, then choose."),
            stretch=n.stretch,
        )
        for n in it.needs
        if only_dirt(n) and not any(f.stretch.touches(n.stretch) for f in trouble)
    )


def only_dirt(need: Need) -> bool:
    """Scale, grease, or a blockage that is soft."""
    hard = any(f.kind == "blocked" and "soft" not in f.signs for f in need.findings)
    return set(need.kinds) <= DIRT and not hard


RULE = Rule(
    id="dirt-alone-is-cleaned",
    numbers=("D07", "R03", "R05"),
    concerns=NEW_PIPE | LINES,
    statement="Scale, grease or a soft blockage with nothing else wrong: clean and film first, then choose; no liner and no dig for it.",
    reason="Whether the pipe under the scale needs anything is known only once it is bare.",
    source=COMMON_PRACTICE,
    worse="offering what cannot work",
    judges_the_cure=True,
    applies=dirt_alone,
)
