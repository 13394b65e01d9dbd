"""What is wrong with an input, where, and what to write instead: values, collected to the end."""

from dataclasses import dataclass, field
from enum import StrEnum

from estimator.model.say import Say


class Level(StrEnum):
    """How much a problem stops: an error stops the price, a warning does not, a question goes on the visit list."""

    ERROR = "error"
    WARNING = "warning"
    QUESTION = "question"


@dataclass(frozen=True, slots=True)
class Place:
    """Where to look: a file with line and column (both from 1), or a table with row and column name."""

    file: str = ""
    line: int | None = None
    column: int | None = None
    table: str = ""
    cell: str = ""  # "D17" in a workbook, "row 17, cost" in a CSV file

    def __str__(self) -> str:
        if self.table:
            return " ".join(part for part in (self.file, f"[{self.table}]", self.cell) if part)
        return ":".join(str(part) for part in (self.file, self.line, self.column) if part not in (None, ""))


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing to mend: code, level, place, what is wrong, what to write instead."""

    code: str
    level: Level
    place: Place
    wrong: str
    write: str
    says: tuple[Say, ...] = field(default=(), compare=False, repr=False)
    """The two sentences again, to be said in the reader's language."""

    def __str__(self) -> str:
        return f"{self.place}: {self.wrong}\n  {self.write}   ({self.code})"


@dataclass(frozen=True, slots=True)
class Kind:
    """A problem as declared, once, beside the code that raises it; calling it makes the Problem.

    >>> NO_AMOUNT = Kind("log/amount", Level.ERROR, "{text} gives no amount.", "Write a percent of the bore.")
    >>> print(NO_AMOUNT(Place("main.txt", 3, 6), text="roots lots"))
    main.txt:3:6: roots lots gives no amount.
      Write a percent of the bore.   (log/amount)
    """

    code: str
    level: Level
    wrong: str
    write: str
    why: str = field(default="", compare=False)  # one sentence for docs/problems.md

    def __call__(self, place: Place, **words: object) -> Problem:
        wrong, write = self.wrong.format(**words), self.write.format(**words).strip()
        says = tuple(Say(text, tuple(words.items())) for text in (self.wrong, self.write))
        return Problem(self.code, self.level, place, wrong, write, says)


class CannotGoOn(Exception):
    """Raised where nothing sensible can follow; carries the problems to print. The only exception a user can cause."""

    def __init__(self, *problems: Problem) -> None:
        super().__init__("; ".join(str(p) for p in problems))
        self.problems = problems


def worst_first(problems: tuple[Problem, ...]) -> tuple[Problem, ...]:
    """Errors, then warnings, then questions; in the order of the file within each."""
    order = list(Level)
    return tuple(
        sorted(problems, key=lambda p: (order.index(p.level), p.place.file, p.place.line or 0, p.place.column or 0))
    )
