"""The newest record and the tables of a new revision that keeps its prices in; rows that were written over since, out.

A new price is a new row with its own `from` day, so that an offer that still holds keeps what it was made with. A row
edited in place reaches such an offer all the same: nothing is refused, for the old figure may have been a slip.
"""

from collections.abc import Sequence
from datetime import date

from estimator.model.problem import Place, Problem
from estimator.model.say import Say, chained
from estimator.records.problems import PRICES_EDITED
from estimator.records.record import Record
from estimator.tables.changes import TableChange, changes
from estimator.tables.tables import Tables

SHOWN = 6


def edited(last: Record, tables: Tables, price_day: date) -> tuple[Problem, ...]:
    """One warning that names what moved; none where the new revision takes the prices of another day than the last."""
    if str(price_day) != last.data["day"]:
        return ()
    moved = changes(last.inputs.tables, tables)
    if not moved:
        return ()
    until, number = last.data["quote"]["valid_until"], last.data["revision"]
    words = {"day": price_day, "until": until, "number": number, "moves": _told(moved)}
    return (PRICES_EDITED(Place("the price tables"), **words),)


def _told(moved: Sequence[TableChange]) -> Say:
    shown, more = chained(map(_one, moved[:SHOWN]), ", "), len(moved) - SHOWN
    return Say.of("{shown} and {count} more", shown=shown, count=more) if more > 0 else shown


def _one(change: TableChange) -> Say:
    """`coupling 4 in, cost 24 → 26`."""
    if change.what != "moved":
        name = change.name
        return Say.of("{row} is new", row=name) if change.what == "new" else Say.of("{row} is gone", row=name)
    old, new = change.old or Say.of("empty"), change.new or Say.of("empty")
    return Say.of("{row}, {column} {old} → {new}", row=change.name, column=change.column, old=old, new=new)
