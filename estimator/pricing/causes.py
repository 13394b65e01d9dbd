"""A task in; the common cause that makes it slow together with others (soil, access), out."""

from estimator.tables.tables import Tables

SOIL = frozenset({"hard_clay", "roots_in_soil", "wet", "rock", "soil_unknown", "over_fill", "clay_dry_months"})
ACCESS = frozenset(
    {"carry_over_50", "carry_over_100", "hand_only", "lived_in", "inside_work", "crawl_low", "crawl_mud"}
)
UNSEEN = frozenset({"depth_unlocated", "soil_unknown"})
"""Facts under which the earth itself may be more or less than measured."""


def cause_of(task: str, tables: Tables) -> str:
    """Soil where any soil fact slows the task down, access where any access fact does, else nothing in common."""
    facts = {f.fact for f in tables.factors if task in f.tasks}
    if facts & SOIL:
        return "soil"
    return "access" if facts & ACCESS else ""
