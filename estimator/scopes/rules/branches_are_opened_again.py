"""A liner closes every side drain it passes: each live one is cut open again, a dead one is left shut and said so.

>>> from tests.made_up.stretch import branch, limits, stretch
>>> [r.effect.value for r in branches_opened(stretch(branches=(branch(3.0, "live"),)), limits())]
['adds work']
>>> [r.effect.value for r in branches_opened(stretch(branches=(branch(1.5, "live"),)), limits())]
['requires first']
>>> [r.effect.value for r in branches_opened(stretch(branches=(branch(3.0, "dead"),)), limits())]
['caution']
>>> [r.effect.value for r in branches_opened(stretch(branches=(branch(3.0, None, proven=None),)), limits())]
['no fixed price']
"""

from estimator.model.judgement import Effect
from estimator.model.profile import Branch
from estimator.model.say import Feet, Say
from estimator.model.stretch import Stretch
from estimator.scopes.rules.concern import LINES
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Rule, Ruling


def branches_opened(it: StretchFacts, limits: Limits) -> tuple[Ruling, ...]:
    return tuple(_ruling(b, limits("liner_branch_min_in")) for b in it.branches)


def _ruling(branch: Branch, least_in: float) -> Ruling:
    at = Feet(branch.station_ft)
    spot = Stretch(branch.station_ft, branch.station_ft)
    if branch.live == "dead":
        return Ruling(
            effect=Effect.CAUTION,
            homeowner=Say.of("A branch drain that is no longer used stays closed under the liner."),
            estimator=Say.of("Dead branch at {at}: leave closed, say so on the quote.", at=at),
            stretch=spot,
        )
    if branch.live is None or branch.proven is False:
        return Ruling(
            effect=Effect.NO_FIXED_PRICE,
            homeowner=Say.of("We first verify which branch drains are in use, so that we close none by mistake."),
            estimator=Say.of("Branch at {at} not proven live or dead: run water at each fixture before lining.", at=at),
            facts=frozenset({"prove_branches"}),
            stretch=spot,
        )
    if branch.out_of_reach or branch.size_in < least_in:
        return Ruling(
            effect=Effect.REQUIRES_FIRST,
            homeowner=Say.of(
                "One branch drain is too small or too far to reopen from inside. We dig it up and reconnect it by hand."
            ),
            estimator=Say.of(
                "Branch at {at} under the least size or out of the cutter's reach: dig or tunnel at that wye.", at=at
            ),
            facts=frozenset({"dig_at_branch"}),
            stretch=spot,
        )
    return Ruling(
        effect=Effect.ADDS_WORK,
        homeowner=Say.of("We reopen each branch drain in use after the liner has cured."),
        estimator=Say.of("Branch at {at}: one reinstatement.", at=at),
        facts=frozenset({"reinstate"}),
        stretch=spot,
    )


RULE = Rule(
    id="branches-are-opened-again",
    numbers=("R11",),
    concerns=LINES,
    statement="Reopen each live branch in the lined length. Dig for those that are small or out of reach. Dead ones stay shut.",
    reason="A branch lined shut floods its fixture.",
    source=COMMON_PRACTICE,
    settled_by="film",
    worse="offering what cannot work",
    reads=("liner_branch_min_in",),
    applies=branches_opened,
)
