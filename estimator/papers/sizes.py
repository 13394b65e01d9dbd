"""A size and its unit in; both as a person reads them, out."""

from estimator.papers.letter import Letter
from estimator.wording.numbers import number
from estimator.wording.plain import ONE, UNITS, in_plain_words


def size(letter: Letter, amount: float, unit: str) -> str:
    """`36.1 ft`, `1 load`."""
    units = {**UNITS, **ONE} if amount == 1 else UNITS
    return f"{number(amount, letter.language, 1)} {letter.say(in_plain_words(units, unit))}"
