"""A drain never gets smaller on its way down.

>>> from estimator.scopes.rules.examples import limits, reroute, stretch
>>> shrinks(stretch(method="reroute", downstream_size_in=3.0, reroutes=(reroute(size_in=4.0),)), limits()).effect.value
'blocks'
>>> shrinks(stretch(method="reroute", downstream_size_in=4.0, reroutes=(reroute(size_in=4.0),)), limits()) is None
True
>>> shrinks(stretch(method="trench", downstream_size_in=3.0), limits()).effect.value  # the old house has it already
'caution'
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import NEW_PIPE, Answers, Rule, Ruling


def shrinks(it: StretchFacts, limits: Limits) -> Answers:
    below_in = it.downstream_size_in
    if below_in is None:
        return None
    if it.method == "reroute":
        if not any(way.size_in is not None and way.size_in > below_in for way in it.reroutes):
            return None
        return Ruling(
            effect=Effect.BLOCKS,
            homeowner=Say.of("The new pipe would run into a smaller one, which the code does not allow."),
            estimator=Say.of("Ties into {below} in: size may not shrink downstream.", below=f"{below_in:g}"),
        )
    if it.bore_in <= below_in or any("closet bend" in (m.choice or "") for m in it.placed("end", "bend")):
        return None
    return Ruling(
        effect=Effect.CAUTION,
        homeowner=Say.of(
            "Further down your old drain is narrower than here; we will tell you what that means once it is open."
        ),
        estimator=Say.of(
            "Old line shrinks to {below} in below: not allowed in new work (a 4 by 3 closet bend excepted); ask the inspector.",
            below=f"{below_in:g}",
        ),
    )


RULE = Rule(
    id="size-never-shrinks",
    numbers=("R38",),
    methods=NEW_PIPE,
    statement="New pipe never runs into a smaller one; a 4 by 3 closet bend is excepted; an old line that shrinks is said.",
    reason="What passes the large pipe stops at the small one.",
    source="IPC 704 (read second-hand)",
    worse="offering what cannot work",
    applies=shrinks,
)
