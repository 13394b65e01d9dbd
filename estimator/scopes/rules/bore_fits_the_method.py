"""Liners and bursting heads exist for some sizes only.

>>> from tests.made_up.stretch import limits, stretch
>>> bore(stretch(method="sectional liner", sizes_in=(2.5,)), limits()).effect.value
'blocks'
>>> bore(stretch(method="sectional liner", sizes_in=(3.0,)), limits()) is None
True
>>> bore(stretch(method="reline", sizes_in=(2.0,)), limits()).effect.value
'requires first'
>>> bore(stretch(method="burst", sizes_in=(8.0,)), limits()).effect.value
'blocks'
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import HAS_BORES
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import Answers, Rule, Ruling
from estimator.works.methods import RECORDS, record_of


def bore(it: StretchFacts, limits: Limits) -> Answers:
    least, most = (limits(key) for key in record_of(it.method).bores or ())
    if any(not least <= size <= most for size in it.sizes_in):
        return Ruling(
            effect=Effect.BLOCKS,
            homeowner=Say.of("This method does not fit a pipe of this size."),
            estimator=Say.of(
                "Bore {sizes} in is outside {least} to {most} in.",
                sizes=", ".join(f"{s:g}" for s in it.sizes_in),
                least=f"{least:g}",
                most=f"{most:g}",
            ),
        )
    if it.works.lined and not it.works.piece and it.bore_in <= limits("liner_small_bore_in"):
        return Ruling(
            effect=Effect.REQUIRES_FIRST,
            homeowner=Say.of("The pipe is small, so we use a thin flexible liner. It takes up a little of the inside."),
            estimator=Say.of(
                "Small pipe: flexible thin liner; check that the finished inside diameter still meets the code's minimum."
            ),
            facts=frozenset({"flexible_liner"}),
        )
    return None


RULE = Rule(
    id="bore-fits-the-method",
    numbers=("R12",),
    concerns=HAS_BORES,
    statement="Each way works in some sizes of pipe only; liners in 2 to 3 in must be thin and flexible.",
    reason="Tools and liners are made for those sizes; one city limits bursting to 4 to 6 in, same size.",
    source="common practice; Carmel, Indiana, city standard (bursting sizes)",
    worse="offering what cannot work",
    reads=(*(key for method in RECORDS.values() for key in method.bores or ()), "liner_small_bore_in"),
    applies=bore,
)
