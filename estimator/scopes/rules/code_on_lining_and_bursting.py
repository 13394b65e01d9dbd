"""Where the IPC of 2018 or later is in force it has a section on bursting (716) and one on relining (717).

>>> from tests.made_up.stretch import limits, place, stretch
>>> [r.effect.value for r in by_the_code(stretch(method="reline", sizes_in=(4.0,)), limits())]
['adds work']
>>> [r.effect.value for r in by_the_code(stretch(method="reline", sizes_in=(2.0,)), limits())]
['no fixed price']
>>> said = [str(r.estimator) for r in by_the_code(stretch("8-14 channel sharp", pipes=("cast iron",)), limits())]
>>> "over 33% of the round" in said[0], "from 8 ft to 14 ft was judged less" in said[0]
(True, True)
>>> gone = by_the_code(stretch("8-14 channel gone 50%", pipes=("cast iron",)), limits())  # dug out first: a rule of its own
>>> "judged" in str(gone[0].estimator)
False
>>> by_the_code(stretch(method="reline", sizes_in=(2.0,)), place(code="UPC"))
()
"""

from collections.abc import Sequence

from estimator.knowledge.plumbing_code import BURST_UP_TO_IN, RELINED_FROM_IN, allows_lining
from estimator.model.judgement import Effect
from estimator.model.line import Finding
from estimator.model.say import Feet, Say
from estimator.scopes.rules.bottom_gone_dig_first import WORN, wall_is_lost
from estimator.scopes.rules.concern import BREAKS_PIPE, LINES
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import FROM_MEMORY, Rule, Ruling


def by_the_code(it: StretchFacts, limits: Limits) -> tuple[Ruling, ...]:
    if not allows_lining(limits.code, limits.place.code_edition if limits.place else ""):
        return ()
    if it.works.burst:
        return (_too_large(),) if it.sizes_in and max(it.sizes_in) > BURST_UP_TO_IN else (_bursting(),)
    return (_too_small(),) if it.bore_in < RELINED_FROM_IN else (_relining(it, limits),)


def _too_small() -> Ruling:
    return Ruling(
        effect=Effect.NO_FIXED_PRICE,
        homeowner=Say.of(
            "The plumbing code here speaks of lining for 4-inch pipe and larger. We ask the building department before we fix this price."
        ),
        estimator=Say.of("Under 4 in: IPC 717 covers 4 in and larger. Written word of the code official first."),
    )


def _relining(it: StretchFacts, limits: Limits) -> Ruling:
    """What the section asks; where worn pipe is lined, what counts as lost wall here and that what was seen is less."""
    worn = it.of(*WORN)
    judged = bool(worn) and not any(wall_is_lost(f, limits) for f in worn)
    return Ruling(
        effect=Effect.ADDS_WORK,
        homeowner=Say.of("The city inspector gets a video before and after the lining, and a certificate of the work."),
        estimator=_judged(worn, limits)
        if judged
        else Say.of("IPC 717: video before and after, certificate to the code official."),
    )


def _judged(worn: Sequence[Finding], limits: Limits) -> Say:
    return Say.of(
        "IPC 717: no liner over lost wall or slope. Counted as lost: over {percent}% of the round, or open to soil over {length}. The worn pipe from {low} to {high} was judged less. More after cleaning: no liner, stop and call. Video before and after, certificate to the code official.",
        percent=f"{limits('channel_missing_caution_percent'):g}",
        length=Feet(limits("channel_missing_max_ft")),
        low=Feet(min(f.stretch.from_ft for f in worn)),
        high=Feet(max(f.stretch.to_ft for f in worn)),
    )


def _too_large() -> Ruling:
    return Ruling(
        effect=Effect.NO_FIXED_PRICE,
        homeowner=Say.of(
            "The plumbing code here speaks of bursting for pipe up to 6 inches. We ask the building department before we fix this price."
        ),
        estimator=Say.of("Over 6 in: IPC 716 covers 6 in and smaller. Code official first."),
    )


def _bursting() -> Ruling:
    return Ruling(
        effect=Effect.ADDS_WORK,
        homeowner=Say.of("The city inspector gets a video of the new pipe before it is used."),
        estimator=Say.of(
            "IPC 716: video before and after, cleanouts as for a new line, fused joints, crew trained by the maker."
        ),
    )


RULE = Rule(
    id="code-on-lining-and-bursting",
    numbers=(),
    concerns=LINES | BREAKS_PIPE,
    statement="IPC 2018 and later: lining of 4 in and larger, bursting up to 6 in, both with a video before and after; other sizes need the code official's word.",
    reason="What the code does not speak of an inspector may refuse after it is done.",
    source=FROM_MEMORY,
    settled_by="",
    worse="offering what cannot work",
    reads=("channel_missing_caution_percent", "channel_missing_max_ft"),
    applies=by_the_code,
)
