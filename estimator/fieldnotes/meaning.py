"""What is known when a line is read, and what a line was understood to mean."""

from estimator.model.frozen import Frozen
from estimator.model.say import Say


class Context(Frozen):
    """What the log says before this line."""

    bore_in: float = 4.0
    last_ft: float | None = None
    furthest_ft: float = 0.0
    zone: str = ""
    before: tuple[str, ...] = ()  # the last line, in standard words
    started: frozenset[str] = frozenset()  # stretches that began and have no end
    runs: int = 0
    seen: frozenset[str] = frozenset()  # kinds an earlier run saw
    names: tuple[str, ...] = ()
    access: str = ""  # where the camera went in for this run
    flow: str = ""  # which way
    riser: str = ""  # and how far down to the line, in standard words


class Meaning(Frozen):
    """`rows` are standard words; `asked` is a question, `choices` what may be meant, best first ("note" keeps a remark).

    `instead`: the rows stand in place of the line before. `left` are words that had no part in it.
    """

    rows: tuple[str, ...] = ()
    asked: Say | None = None
    choices: tuple[str, ...] = ()
    left: str = ""
    instead: bool = False
    short: bool = False  # it lacks an amount
    gone: tuple[str, float | None] | None = None  # an earlier thing taken back, by its word and its reading
    score: float = 0.0
    at: float | None = None  # where it lies as far as it says, also where it is asked back
    to: float | None = None

    @property
    def remark(self) -> bool:
        return not (self.rows or self.asked or self.instead or self.gone)
