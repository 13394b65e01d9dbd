"""Where the bottom of the pipe is missing, a liner has nothing to press against: that part is dug out first.

>>> from tests.made_up.stretch import limits, stretch
>>> bottom_gone(stretch("20-29 channel gone, soil seen", pipes=("cast iron",)), limits())[0].effect.value
'requires first'
>>> bottom_gone(stretch("20-23 channel soil seen", pipes=("cast iron",)), limits())
()
>>> len(bottom_gone(stretch("20-21 hole at 4-8"), limits()))  # 4 of 12 hours is a third, over 33 percent
1
>>> bottom_gone(stretch("20-21 channel gone 33%"), limits())
()
"""

from estimator.model.judgement import Effect
from estimator.model.line import Finding
from estimator.model.say import Feet, Say
from estimator.scopes.rules.concern import LINES
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import FROM_MEMORY, Rule, Ruling

LOOSE = frozenset({"gone", "broken", "loose"})


def missing_percent(finding: Finding) -> float:
    """How much of the round is gone, percent: of the clock hours given, else of the percent given for a groove; else 0.

    A crack, however far it runs round, is missing pipe only where pieces are loose or gone.
    """
    if finding.kind == "crack" and not LOOSE & set(finding.signs):
        return 0.0
    if finding.clock is not None:
        start, end = finding.clock
        return 100.0 * ((end - start) % 12) / 12
    return finding.worst_percent or 0.0 if finding.kind == "channel" and "gone" in finding.signs else 0.0


WORN = ("channel", "hole", "crack")


def wall_is_lost(finding: Finding, limits: Limits) -> bool:
    """More of the round is gone than a liner bridges, or the pipe is open to the soil for longer."""
    most, long_ft = limits("channel_missing_caution_percent"), limits("channel_missing_max_ft")
    open_to_soil = bool({"soil seen", "void", "washing", "gone"} & set(finding.signs))
    return missing_percent(finding) > most or (open_to_soil and finding.stretch.length_ft > long_ft)


def bottom_gone(it: StretchFacts, limits: Limits) -> tuple[Ruling, ...]:
    out = []
    for f in it.of(*WORN):
        if wall_is_lost(f, limits):
            out.append(
                Ruling(
                    effect=Effect.REQUIRES_FIRST,
                    homeowner=Say.of(
                        "Where the bottom of the pipe is gone, a liner has nothing to rest on. We dig up and replace that part first."
                    ),
                    estimator=Say.of(
                        "Bottom missing or soil seen from {low} to {high}: replace that part before any liner.",
                        low=Feet(f.stretch.from_ft),
                        high=Feet(f.stretch.to_ft),
                    ),
                    facts=frozenset({"dig_first"}),
                    stretch=f.stretch,
                )
            )
    return tuple(out)


RULE = Rule(
    id="bottom-gone-dig-first",
    numbers=("R04",),
    concerns=LINES,
    statement="More than a third of the round missing, or soil seen over more than a few feet: dig there before lining.",
    reason="A liner needs a pipe to press against while it cures.",
    source=FROM_MEMORY,
    worse="offering what cannot work",
    reads=("channel_missing_caution_percent", "channel_missing_max_ft"),
    applies=bottom_gone,
)
