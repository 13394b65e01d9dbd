"""The newest record and the tables of a new revision that keeps its prices in; rows that were written over since, out.

A new price is a new row with its own `from` day, so that an offer that still holds keeps what it was made with. A row
edited in place reaches such an offer all the same: nothing is refused, for the old figure may have been a slip.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import date
from decimal import Decimal
from typing import Any

from estimator.model.offer import Option, Quote
from estimator.model.price import Overruled
from estimator.model.problem import Place, Problem
from estimator.model.say import Say, chained
from estimator.records.problems import OWN_NUMBER_ELSEWHERE, OWN_NUMBER_MOVED, PRICES_EDITED
from estimator.records.record import OwnNumber, Record
from estimator.records.same_option import recorded, work_of
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
    words = {"day": price_day, "until": until, "number": number, "moves": _listed(moved)}
    return (PRICES_EDITED(Place("the price tables"), **words),)


def _listed(moved: Sequence[TableChange]) -> Say:
    shown, more = chained(map(_one, moved[:SHOWN]), ", "), len(moved) - SHOWN
    return Say.of("{shown} and {count} more", shown=shown, count=more) if more > 0 else shown


def _one(change: TableChange) -> Say:
    """`coupling 4 in, cost 24 → 26`."""
    if change.what != "moved":
        name = change.name
        return Say.of("{row} is new", row=name) if change.what == "new" else Say.of("{row} is gone", row=name)
    old, new = change.old or Say.of("empty"), change.new or Say.of("empty")
    return Say.of("{row}, {column} {old} → {new}", row=change.name, column=change.column, old=old, new=new)


def set_by_hand(quote: Mapping[str, Any]) -> tuple[OwnNumber, ...]:
    """Those of a quote as its record keeps it."""
    return tuple(
        OwnNumber(option["letter"], recorded(option).title, number["what"], number["ours"], number["reason"])
        for option in quote["options"]
        for number in option["price"].get("overruled", ())
    )


def to_look_at(before: Iterable[OwnNumber], quote: Quote) -> tuple[Problem, ...]:
    """One warning for each number whose ground has moved since."""
    was = {(number.letter, number.what, number.reason): number for number in before}
    return tuple(
        problem
        for option in quote.options
        for number in option.price.overruled
        if (old := was.get((option.letter, number.what, number.reason))) is not None
        for problem in _moved(old, option, number)
    )


def _moved(old: OwnNumber, option: Option, number: Overruled) -> Iterator[Problem]:
    place, mine = Place("the job file"), number.shown(number.mine)
    words = {"mine": mine, "what": number.what, "letter": option.letter, "reason": number.reason}
    now = work_of(option).title
    if old.title not in (now, option.name or str(option.title)):  # records made before kept the whole title
        yield OWN_NUMBER_ELSEWHERE(place, **words, was=old.title, now=now)
    elif Decimal(old.ours) != number.ours:
        was = number.shown(Decimal(old.ours))
        yield OWN_NUMBER_MOVED(place, **words, was=was, now=number.shown(number.ours))
