"""A number that the owner set by hand, as a record keeps it for the next revision."""

from estimator.model.frozen import Frozen


class OwnNumber(Frozen):
    """A number set by hand: the letter and title of its option, what it is of, the program's own number then, why."""

    letter: str
    title: str
    what: str
    ours: str
    reason: str
