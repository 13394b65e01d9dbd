"""What moved between two revisions in, the lines that say so out, results first and then the reasons."""

from collections.abc import Sequence

from estimator.cli.views.screen import Row
from estimator.cli.views.table import table
from estimator.records.changes import Change

HEADS: tuple[tuple[str, str], ...] = (
    ("option", "Price of an option"),
    ("line", "Lines of the quote"),
    ("finding", "What was found"),
    ("notes", "The notes, word for word"),
    ("table", "Price tables"),
    ("day", "Day of the prices"),
    ("version", "Versions"),
)


def rows(moved: Sequence[Change], old: str, new: str, columns: int) -> list[Row]:
    """One table a kind of change; a sentence where nothing moved."""
    if not moved:
        return [Row(f"Nothing moved between {old} and {new}.")]
    out: list[Row] = []
    for about, head in HEADS:
        cells = [(c.what, c.before or "—", c.after or "—") for c in moved if c.about == about]
        if cells:
            out += [Row(head, "head"), *(Row(text) for text in table(("", old, new), cells, columns)), Row("")]
    return out[:-1]
