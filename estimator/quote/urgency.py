"""What must be put right in, how soon and what happens if it waits out."""

from collections.abc import Sequence

from estimator.model.judgement import Need
from estimator.model.say import FromTable, Say
from estimator.tables.tables import Tables

HOW_SOON: tuple[Say, ...] = (
    Say.of("No. Have it filmed again in a year or two."),
    Say.of("No. Keep an eye on it and have it filmed again within a year."),
    Say.of("Not today, but plan it: within some months."),
    Say.of("Yes, soon: within weeks, not months."),
    Say.of("Yes, now: sewage or loss of ground cannot wait."),
)
"""By urgency, 0 to 4."""

IF_IT_WAITS: tuple[tuple[frozenset[str], Say], ...] = (
    (frozenset({"collapse", "blocked"}), Say.of("The drain can stop completely, and sewage comes up at the lowest drain in the house.")),
    (frozenset({"hole", "channel", "gap", "leak"}), Say.of("Sewage washes the soil away, the opening grows, and what stands above it can sink.")),
    (frozenset({"roots"}), Say.of("The roots grow on, close the pipe and open its joints.")),
    (frozenset({"sag", "reverse fall", "backfall"}), Say.of("Paper and grease settle in the dip, and the drain stops again and again.")),
    (frozenset({"crack", "offset", "oval", "fitting"}), Say.of("The break opens slowly; roots and soil find it.")),
)  # fmt: skip
"""The worst first."""


def how_soon(needs: Sequence[Need]) -> Say | None:
    """The most urgent need decides."""
    return HOW_SOON[min(len(HOW_SOON) - 1, max(need.urgency for need in needs))] if needs else None


def if_nothing(needs: Sequence[Need]) -> Say | None:
    """One honest sentence: the worst that fits."""
    kinds = {kind for need in needs for kind in need.kinds}
    return next((text for some, text in IF_IT_WAITS if kinds & some), None)


def if_cleaned(needs: Sequence[Need], tables: Tables) -> Say | None:
    """What the firm says of cleaning alone; nothing where there is nothing to repair."""
    if not needs:
        return None
    try:
        row = tables.method("clean")
    except KeyError:
        return None
    return Say.of(
        "{first} {second}", first=FromTable(row.under_en, row.under_es), second=FromTable(row.risk_en, row.risk_es)
    )
