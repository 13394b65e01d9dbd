"""Where a job's money stands in, the office's lines out: payments, changes and credits, what came in, what is owed."""

from datetime import date
from decimal import Decimal

from estimator.cli.views.screen import Row
from estimator.cli.views.table import table
from estimator.cli.views.words import dollars
from estimator.records.afterwards.money import Money

SAID = {"payment": "received"}
"""What came in stands as it came, above nothing."""
HEADS = ("payment", "amount", "due on", "came in", "open")


def rows(state: Money, day: date, columns: int) -> list[Row]:
    """Two tables and the balance."""
    cells = [
        (
            m.name,
            dollars(m.amount),
            str(m.due or "—"),
            dollars(state.paid_on(m.name)),
            dollars(m.amount - state.paid_on(m.name)),
        )
        for m in state.milestones
    ]
    out = [Row("Payments agreed", "head"), *(Row(text) for text in table(HEADS, cells, columns, right=(1, 3, 4)))]
    if state.later:
        later = [
            (
                str(e.day),
                SAID.get(e.kind, e.kind),
                e.text,
                dollars(-e.amount if e.kind == "credit" else e.amount),
                e.reference,
            )
            for e in state.later
        ]
        heads = ("day", "kind", "what", "amount", "reference")
        out += [Row(""), Row("Noted since", "head"), *(Row(text) for text in table(heads, later, columns, right=(3,)))]
    return [*out, Row(""), *_balance(state, day)]


def _balance(state: Money, day: date) -> list[Row]:
    due = state.due(day)
    late = f"{dollars(due)} of it is due by {day}" if due > 0 else f"nothing of it is due by {day}"
    if state.balance < 0:
        return [Row(f"Paid too much: {dollars(-state.balance)} goes back.", "bad")]
    if state.balance == Decimal(0):
        return [Row("Nothing is owed.", "good")]
    return [Row(f"Still owed: {dollars(state.balance)}; {late}.", "head")]
