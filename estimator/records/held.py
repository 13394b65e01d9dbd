"""A number that the owner set by hand, as a record keeps it for the next revision."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Held:
    """A number set by hand: the letter and title of its option, what it is of, the program's own number then, why."""

    letter: str
    title: str
    what: str
    ours: str
    reason: str
