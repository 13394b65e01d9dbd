"""What must be put right in, how soon and what happens if it waits out."""

from collections.abc import Sequence

from estimator.model.job import Job
from estimator.model.judgement import Need
from estimator.model.profile import Profile
from estimator.model.say import Say

HOW_SOON: tuple[Say, ...] = (
    Say.of("No. Have it filmed again in a year or two."),
    Say.of("No. Keep an eye on it and have it filmed again within a year."),
    Say.of("Not today, but plan it: within some months."),
    Say.of("Yes, soon: within weeks, not months."),
    Say.of("Yes, now: sewage or loss of ground cannot wait."),
)
"""By urgency, 0 to 4."""

IN_THE_OPEN = ("crawl", "basement")
LEAKS = frozenset({"hole", "channel", "gap", "leak"})
IF_IT_WAITS: tuple[tuple[frozenset[str], Say], ...] = (
    (frozenset({"utility"}), Say.of("Nobody may use, clean or dig up this drain before the owner of that line has made it safe: a damaged gas line fills the house.")),
    (frozenset({"collapse", "blocked"}), Say.of("The drain can stop completely, and sewage comes up at the lowest drain in the house.")),
    (LEAKS, Say.of("Sewage washes the soil away, the opening grows, and what stands above it can sink.")),
    (frozenset({"roots"}), Say.of("The roots grow on, close the pipe and open its joints.")),
    (frozenset({"sag", "reverse fall", "backfall"}), Say.of("Paper and grease settle in the dip, and the drain stops again and again.")),
    (frozenset({"crack", "offset", "oval", "fitting"}), Say.of("The break opens slowly; roots and soil find it.")),
)  # fmt: skip
"""The worst first."""
IN_THE_OPEN_TOO = Say.of("Sewage drips under the house, with smell, damp wood and germs, and the opening grows.")
"""In place of soil that is washed away, where the pipe hangs free."""

IF_CLEANED: tuple[tuple[frozenset[str], Say], ...] = (
    (frozenset({"utility"}), Say.of("Never clean it: a tool can cut the line that runs through it.")),
    (frozenset({"collapse"}), Say.of("Cleaning cannot open a pipe that has fallen in.")),
    (frozenset({"blocked"}), Say.of("It may flow again for a while; what stopped it can stop it again.")),
    (frozenset({"roots"}), Say.of("It flows again; roots come back, often within 6 to 24 months.")),
    (frozenset({"channel"}), Say.of("The rust that is loose comes off; the worn or missing bottom stays.")),
    (frozenset({"sag", "reverse fall", "backfall"}), Say.of("It flows until paper and grease settle in the dip again.")),
    (frozenset({"scale", "grease", "mud"}), Say.of("It flows again; the build-up comes back in time.")),
    (frozenset({"hole", "gap", "leak", "opening", "crack", "offset", "oval", "fitting"}), Say.of("Every hole, crack and step in the pipe stays.")),
)  # fmt: skip
"""What cleaning does for each kind of trouble (common practice); the first two that fit are said."""
MOST_SAID = 2


def how_soon(needs: Sequence[Need]) -> Say | None:
    """The most urgent need decides."""
    return HOW_SOON[min(len(HOW_SOON) - 1, max(need.urgency for need in needs))] if needs else None


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
    if not fit or "utility" in kinds:
        return fit[0] if fit else None
    return Say.of("{first} {second}", first=fit[0], second=fit[1]) if len(fit) >= MOST_SAID else fit[0]
