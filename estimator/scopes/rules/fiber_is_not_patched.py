"""Tar-paper pipe has failed as a material: no spot repair, no cutting tools in it, nothing to couple to.

>>> from tests.made_up.stretch import limits, stretch
>>> fibre(stretch("blister", method="yard spot", pipes=("fiber",)), limits()).effect.value
'blocks'
>>> fibre(stretch("blister", method="burst", pipes=("fiber",)), limits()).effect.value
'prefers'
>>> fibre(stretch("blister", method="reline", pipes=("fiber",)), limits()).effect.value
'caution'
>>> fibre(stretch("crack", method="yard spot", pipes=("clay",)), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import A_PIECE, LINED_WHOLE, ONLY_CLEANS, OPENS_GROUND
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def fibre(it: StretchFacts, limits: Limits) -> Answers:
    if "fibre" not in it.families:
        return None
    if it.works.new_pipe and not it.works.piece:
        return Ruling(
            effect=Effect.PREFERS,
            homeowner=Say.of("This tar-paper (bituminous fiber) pipe is worn out, so we replace the whole run."),
            estimator=Say.of("Fiber pipe: whole run by trench or burst."),
        )
    if it.works.lined and not it.works.piece:
        return Ruling(
            effect=Effect.CAUTION,
            homeowner=Say.of(
                "Tar-paper (bituminous fiber) pipe can change shape under a liner. Replacement is the surer method."
            ),
            estimator=Say.of("Fiber pipe: lining only with care, no chain tools, shape checked first."),
        )
    return Ruling(
        effect=Effect.BLOCKS,
        homeowner=Say.of(
            "Tar-paper (bituminous fiber) pipe cannot be patched. There is no good pipe to couple to, and cutting tools tear it."
        ),
        estimator=Say.of("Fiber pipe: no chain or root cutters, no spot, no sectional liner."),
    )


RULE = Rule(
    id="fiber-is-not-patched",
    numbers=("R09", "D17"),
    concerns=ONLY_CLEANS | A_PIECE | LINED_WHOLE | OPENS_GROUND,
    statement="Fiber pipe: no cutting tools, no spot repair; lining with caution; trench or burst the whole run.",
    reason="It blisters and goes oval everywhere at once; cutters tear it and couplings find no sound end.",
    source=COMMON_PRACTICE,
    worse="offering what cannot work",
    applies=fibre,
)
