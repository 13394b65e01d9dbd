"""What must be repaired in, how soon and what happens if it waits out."""

from collections.abc import Sequence

from estimator.model.job import Job
from estimator.model.judgement import Need
from estimator.model.profile import Profile
from estimator.model.say import Say

HOW_SOON: tuple[Say, ...] = (
    Say.of("Not urgent. Have it inspected again in a year or two."),
    Say.of("Not urgent. Have it inspected again within a year."),
    Say.of("Plan the repair within a few months."),
    Say.of("Act soon: within weeks, not months."),
    Say.of("Act now."),
)
"""By urgency, 0 to 4."""

IN_THE_OPEN = ("crawl", "basement")
LEAKS = frozenset({"hole", "channel", "gap", "leak"})
IF_IT_WAITS: tuple[tuple[frozenset[str], Say], ...] = (
    (frozenset({"utility"}), Say.of("Do not use, clean or dig up this drain until the utility has made its line safe. A damaged gas line can fill the house with gas.")),
    (frozenset({"collapse", "blocked"}), Say.of("The drain can stop completely. Sewage then comes up at the lowest drain in the house.")),
    (LEAKS, Say.of("Leaking water washes soil away. The ground or floor above can settle.")),
    (frozenset({"roots"}), Say.of("The roots keep growing. They clog the pipe and open its joints.")),
    (frozenset({"sag", "reverse fall", "backfall"}), Say.of("Paper and grease settle where water stands. The drain clogs again and again.")),
    (frozenset({"crack", "offset", "oval", "fitting"}), Say.of("The damage opens further. Roots and soil get in.")),
)  # fmt: skip
"""The worst first."""
IN_THE_OPEN_TOO = Say.of("Sewage drips under the house. It smells, wets the wood and spreads germs.")
"""In place of soil that is washed away, where the pipe hangs free."""

IF_CLEANED: tuple[tuple[frozenset[str], Say], ...] = (
    (frozenset({"utility"}), Say.of("Never clean it. A tool can cut the utility line that runs through it.")),
    (frozenset({"collapse"}), Say.of("Cleaning cannot open a collapsed pipe.")),
    (frozenset({"blocked"}), Say.of("It may flow again for a while. The same clog can come back.")),
    (frozenset({"roots"}), Say.of("The drain runs again for a while. Roots come back, often within 6 to 24 months.")),
    (frozenset({"channel"}), Say.of("The worn bottom of the pipe stays.")),
    (frozenset({"sag", "reverse fall", "backfall"}), Say.of("It flows until paper and grease settle again.")),
    (frozenset({"scale", "grease", "mud"}), Say.of("The drain runs again for a while. The build-up comes back in time.")),
    (frozenset({"hole", "gap", "leak", "opening", "crack", "offset", "oval", "fitting"}), Say.of("Every hole, crack and offset remains.")),
)  # fmt: skip
"""What cleaning does for each kind of trouble (common practice); the first two that fit are said."""
MOST_SAID = 2


def how_soon(needs: Sequence[Need]) -> Say | None:
    """The most urgent need decides."""
    return HOW_SOON[min(len(HOW_SOON) - 1, max(need.urgency for need in needs))] if needs else None


SOON = 3
"""From this urgency on what must be repaired is to be repaired now."""


def what_must(needs: Sequence[Need]) -> Say:
    """What stands over the findings that must be repaired: now, where the most urgent is so."""
    soon = any(need.must and need.urgency >= SOON for need in needs)
    return Say.of("repair now") if soon else Say.of("must be repaired")


def if_nothing(needs: Sequence[Need], job: Job | None = None) -> Say | None:
    """One honest sentence: the worst that fits. Pipe that hangs free washes no soil away."""
    kinds = {kind for need in needs for kind in need.kinds}
    some, text = next(((some, text) for some, text in IF_IT_WAITS if kinds & some), (None, None))
    leaking = [need for need in needs if LEAKS & set(need.kinds)]
    free = job is not None and some is LEAKS and all(_hangs_free(need, job) for need in leaking)
    return IN_THE_OPEN_TOO if free else text


def _hangs_free(need: Need, job: Job) -> bool:
    zones = {zone for _, zone in Profile(job.line(need.line)).zones(need.stretch)}
    return bool(zones) and zones <= set(IN_THE_OPEN)


def if_cleaned(needs: Sequence[Need]) -> Say | None:
    """What cleaning alone would do here; nothing where there is nothing to repair."""
    kinds = {kind for need in needs for kind in need.kinds}
    fit = [text for some, text in IF_CLEANED if kinds & some]
    if not fit or kinds & {"utility", "collapse"}:  # neither is helped by any cleaning elsewhere on the line
        return fit[0] if fit else None
    return Say.of("{first} {second}", first=fit[0], second=fit[1]) if len(fit) >= MOST_SAID else fit[0]
