"""What moved between two revisions in, the lines that say so out: results first, then what was asked, then prices."""

from collections.abc import Sequence
from decimal import Decimal

from estimator.cli.views.screen import Row
from estimator.cli.views.table import table
from estimator.cli.views.words import dollars
from estimator.records.changes import ASKED, PRICES, Change, Parted

HEADS: tuple[tuple[str, str], ...] = (
    ("option", "Price of an option"),
    ("line", "Lines of the quote"),
    ("finding", "You asked: what was found"),
    ("notes", "You asked: the notes, word for word"),
    ("table", "Prices moved: the tables"),
    ("day", "Prices moved: the day they are of"),
    ("version", "The program"),
)


def as_data(moved: Sequence[Change], parts: Sequence[Parted]) -> dict[str, object]:
    """The same for other programs; each change with whose doing it is."""
    return {
        "options": parts,
        "changes": [{"about": c.about, "what": c.what, "before": c.before, "after": c.after, "because": c.because} for c in moved],
    }  # fmt: skip


def rows(moved: Sequence[Change], old: str, new: str, columns: int, parts: Sequence[Parted] = ()) -> list[Row]:
    """One table a kind of change; a sentence where nothing moved. `parts` say what of a move was asked for."""
    if not moved:
        return [Row(f"Nothing moved between {old} and {new}.")]
    out: list[Row] = []
    for about, head in HEADS:
        if about == "option" and parts:
            out += _parted(parts, old, new, columns)
            continue
        cells = [(c.what, c.before or "—", c.after or "—") for c in moved if c.about == about]
        if cells:
            out += [Row(head, "head"), *(Row(text) for text in table(("", old, new), cells, columns)), Row("")]
    return out[:-1]


def _parted(parts: Sequence[Parted], old: str, new: str, columns: int) -> list[Row]:
    """Each option that moved, and how much of it is whose doing."""
    cells = [
        (p.option, _amount(p.before), by(p.prices), by(p.asked), _amount(p.after)) for p in parts if p.before != p.after
    ]
    if not cells:
        return [Row("No option's price moved.", "head"), Row("")]
    body = table(("", old, PRICES, ASKED, new), cells, columns, right=(1, 2, 3, 4))
    return [Row("Price of an option", "head"), *(Row(text) for text in body), Row("")]


def _amount(total: Decimal | None) -> str:
    return "not offered" if total is None else dollars(total, whole=True)


def by(difference: Decimal | None) -> str:
    """`+$50`, `−$25`, or a dash where it did not move or nobody can say."""
    if not difference:
        return "—"
    return f"{'+' if difference > 0 else '−'}{dollars(abs(difference), whole=True)}"
