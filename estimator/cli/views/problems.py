"""Problems in, the text of the place, what is wrong and what to write instead out, on the error stream."""

import sys
from collections.abc import Iterable, Sequence
from textwrap import wrap

from estimator.cli.views.screen import Row, show, width
from estimator.model.problem import Level, Problem, worst_first

LOOKS = {Level.ERROR: "bad", Level.WARNING: "head", Level.QUESTION: ""}
COUNTED = {
    Level.ERROR: ("error", "errors"),
    Level.WARNING: ("warning", "warnings"),
    Level.QUESTION: ("question", "questions"),
}


def tell(problems: Sequence[Problem]) -> None:
    """Prints problems on stderr, worst first, with a count under them."""
    show(rows(problems, width(sys.stderr)), sys.stderr)


def rows(problems: Sequence[Problem], columns: int) -> list[Row]:
    out = [row for problem in worst_first(tuple(problems)) for row in one(problem, columns)]
    return [*out, Row(count(problems), "head")] if len(problems) > 1 else out


def one(problem: Problem, columns: int) -> Iterable[Row]:
    """A problem over as many lines as it needs: place and fault first, what to write indented under it."""
    place = f"{problem.place}: " if str(problem.place) else ""
    first = wrap(f"{place}{problem.wrong}", columns, break_on_hyphens=False)
    advice = wrap(f"{problem.write}   ({problem.code})", columns - 2, break_on_hyphens=False)
    return [*(Row(text, LOOKS[problem.level]) for text in first), *(Row("  " + text) for text in advice)]


def count(problems: Sequence[Problem]) -> str:
    """`2 errors, 1 question`."""
    parts = []
    for level, (single, several) in COUNTED.items():
        number = sum(1 for problem in problems if problem.level == level)
        if number:
            parts.append(f"{number} {single if number == 1 else several}")
    return ", ".join(parts)
