"""A drain never gets smaller on its way down.

>>> from tests.made_up.stretch import limits, reroute, stretch
>>> shrinks(stretch(method="reroute", sizes_below_in=(3.0,), reroutes=(reroute(size_in=4.0),)), limits()).effect.value
'blocks'
>>> shrinks(stretch(method="reroute", sizes_below_in=(4.0,), reroutes=(reroute(size_in=4.0),)), limits()) is None
True
>>> shrinks(stretch(method="trench", sizes_below_in=(4.0, 3.0)), limits()).effect.value  # the old house has it already
'caution'
"""

from itertools import pairwise

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import NEW_PIPE
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import Answers, Rule, Ruling


def shrinks(it: StretchFacts, limits: Limits) -> Answers:
    below = it.sizes_below_in
    if not it.works.renewed:  # pipe on a new way
        if not below or not any(way.size_in is not None and way.size_in > below[0] for way in it.reroutes):
            return None
        return Ruling(
            effect=Effect.BLOCKS,
            homeowner=Say.of("The new pipe would run into a smaller one. Code does not allow that."),
            estimator=Say.of("Ties into {below} in: size may not shrink downstream.", below=f"{below[0]:g}"),
        )
    inside = any(b < a for a, b in pairwise(it.sizes_in))
    if inside:
        return Ruling(
            effect=Effect.NO_FIXED_PRICE,
            homeowner=Say.of(
                "Your drain gets smaller downstream. Code does not allow that for new pipe. We ask the inspector before we set a firm price."
            ),
            estimator=Say.of(
                "Sizes {sizes} in down the stretch: new pipe may not get smaller; lay the larger size on to the lower end, or the inspector's word.",
                sizes=", ".join(f"{s:g}" for s in it.sizes_in),
            ),
        )
    narrowest_in = min(below, default=it.bore_in)
    if it.bore_in <= narrowest_in or any("closet bend" in (m.choice or "") for m in it.placed("end", "bend")):
        return None
    return Ruling(
        effect=Effect.CAUTION,
        homeowner=Say.of(
            "Your existing drain is narrower farther down. We will tell you what that means after we open it."
        ),
        estimator=Say.of(
            "Old line shrinks to {below} in below: not allowed in new work (a 4 by 3 closet bend excepted); ask the inspector.",
            below=f"{narrowest_in:g}",
        ),
    )


RULE = Rule(
    id="size-never-shrinks",
    numbers=("R38",),
    concerns=NEW_PIPE,
    statement="New pipe never runs into a smaller one; a 4 by 3 closet bend is excepted; an old line that shrinks is said.",
    reason="What passes the large pipe stops at the small one.",
    source="IPC 704 (read second-hand)",
    worse="offering what cannot work",
    applies=shrinks,
)
