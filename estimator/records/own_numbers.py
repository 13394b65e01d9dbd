"""The owner's own numbers as the last revision had them and a new quote in; those that want another look, out.

A number set by hand stays whatever is found later. Where the program's own number under it has moved since, or its letter
has come to mean another option, the owner is told: he set it against something that is no longer there.
"""

from collections.abc import Iterable, Iterator, Mapping
from decimal import Decimal
from typing import Any

from estimator.model.offer import Option, Quote
from estimator.model.price import Overruled
from estimator.model.problem import Place, Problem
from estimator.records.problems import OWN_NUMBER_ELSEWHERE, OWN_NUMBER_MOVED
from estimator.records.record import OwnNumber
from estimator.records.same_option import doing, recorded


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
    now = doing(option).title
    if old.title not in (now, option.name or str(option.title)):  # records made before kept the whole title
        yield OWN_NUMBER_ELSEWHERE(place, **words, was=old.title, now=now)
    elif Decimal(old.ours) != number.ours:
        was = number.shown(Decimal(old.ours))
        yield OWN_NUMBER_MOVED(place, **words, was=was, now=number.shown(number.ours))
