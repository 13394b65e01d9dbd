"""What is wrong with an input, where, and what to write instead: values, collected to the end."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from enum import StrEnum

from estimator.model.frozen import Frozen
from estimator.model.say import GAP, Dollars, Feet, FromTable, Inches, Say, Typed


class Level(StrEnum):
    """How much a problem stops: an error stops the price, a warning does not, a question goes on the visit list."""

    ERROR = "error"
    WARNING = "warning"
    QUESTION = "question"


class Place(Frozen):
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


NAMED_PLACES = (
    Say.of("the job file"),
    Say.of("job file, [[override]]"),
    Say.of("job file, [[discount]]"),
    Say.of("the price tables"),
    Say.of("--with, or [wishes] add_ons in the job file"),
)
"""What stands for the file of a place where none by name is meant."""


class Problem(Frozen):
    """One thing to mend: code, level, place, what is wrong, what to write instead; both are said in the reader's language."""

    code: str
    level: Level
    place: Place
    wrong: Say
    write: Say

    def __str__(self) -> str:
        return f"{self.place}: {self.wrong}\n  {self.write}   ({self.code})"


@dataclass(frozen=True, slots=True)
class Kind:
    """A problem as declared, once, beside the code that raises it; calling it makes the Problem.

    >>> NO_AMOUNT = error("log/amount", "{text} gives no amount.", "Write a percent of the bore.")
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
        return Problem(self.code, self.level, place, _said(self.wrong, words), _said(self.write, words))


def error(code: str, wrong: str, write: str, why: str = "") -> Kind:
    """Return a declared problem that stops the price; `why` is a sentence for docs/problems.md."""
    return Kind(code, Level.ERROR, wrong, write, why)


def warning(code: str, wrong: str, write: str, why: str = "") -> Kind:
    return Kind(code, Level.WARNING, wrong, write, why)


def question(code: str, wrong: str, write: str, why: str = "") -> Kind:
    return Kind(code, Level.QUESTION, wrong, write, why)


def kinds_in(module: Mapping[str, object]) -> tuple[Kind, ...]:
    """Return every kind of problem that a module declares or takes from another, in their order."""
    return tuple(dict.fromkeys(value for value in module.values() if isinstance(value, Kind)))


def _said(text: str, words: Mapping[str, object]) -> Say:
    """Errors: KeyError for a gap that nothing fills."""
    return Say(text, tuple((gap, _word(words[gap])) for gap in dict.fromkeys(GAP.findall(text))))


def _word(value: object) -> object:
    """A sentence, a text of the tables, a length or an amount is said as the reader says it; all else stands as it was typed."""
    match value:
        case Say():
            return Say(value.text, tuple((gap, _word(word)) for gap, word in value.words))
        case tuple():
            return tuple(map(_word, value))
        case FromTable() | Feet() | Inches() | Dollars() | Typed():
            return value
        case float():
            return Typed(f"{value:g}")
    return Typed(str(value))


class CannotGoOn(Exception):
    """Raised where nothing sensible can follow; carries the problems to print. The only exception a user can cause."""

    def __init__(self, *problems: Problem) -> None:
        super().__init__("; ".join(str(p) for p in problems))
        self.problems = problems


def first_of(problems: Sequence[Problem]) -> Say:
    """Return what is wrong first, and how many more there are."""
    more, wrong = len(problems) - 1, problems[0].wrong
    return Say.of("{wrong} (and {count} more)", wrong=wrong, count=more) if more else wrong


def in_short(error: Exception) -> Say:
    """Return what stopped a job: its first problem, else the error's own words."""
    if isinstance(error, CannotGoOn):
        return first_of(error.problems)
    return Say.of("{said}", said=Typed(" ".join(str(error).split()) or type(error).__name__))


def worst_first(problems: tuple[Problem, ...]) -> tuple[Problem, ...]:
    """Errors, then warnings, then questions; in the order of the file within each."""
    order = list(Level)
    return tuple(
        sorted(problems, key=lambda p: (order.index(p.level), p.place.file, p.place.line or 0, p.place.column or 0))
    )
