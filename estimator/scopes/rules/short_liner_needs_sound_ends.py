"""A short liner needs sound round pipe at both ends and a small defect between.

>>> from tests.made_up.stretch import limits, need, stretch
>>> sound_ends(stretch(method="sectional liner", needs=(need("collapse"),)), limits()).effect.value
'blocks'
>>> sound_ends(stretch(method="sectional liner", needs=(need("crack"),)), limits()) is None
True
>>> sound_ends(stretch("gap 1.1in", method="sectional liner"), limits()).effect.value
'blocks'
>>> sound_ends(stretch("gap 1in", method="sectional liner"), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import LINED_IN_PIECES
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling

TOO_MUCH = frozenset({"collapse", "blister", "channel", "oval", "reverse fall", "backfall"})


def sound_ends(it: StretchFacts, limits: Limits) -> Answers:
    wide = sorted(TOO_MUCH & {k for n in it.needs for k in n.kinds})
    wide += ["gap" for f in it.of("gap") if (f.size_in or 0.0) > limits("gap_2_in")]
    if not wide:
        return None
    return Ruling(
        effect=Effect.BLOCKS,
        homeowner=Say.of("A short liner needs good pipe at both ends. Here there is too little."),
        estimator=Say.of("{kinds}: no sound, round host at both ends for a sectional liner.", kinds=", ".join(wide)),
    )


RULE = Rule(
    id="short-liner-needs-sound-ends",
    numbers=("R04",),
    concerns=LINED_IN_PIECES,
    statement="No short liner over a collapse, a groove, a wide gap or a deformed pipe.",
    reason="It seals only where it overlaps sound pipe by about a foot at each end.",
    source=COMMON_PRACTICE,
    reads=("gap_2_in",),
    worse="offering what cannot work",
    applies=sound_ends,
)
