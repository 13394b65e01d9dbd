"""Problems in, the text of the place, what is wrong and what to write instead out, on the error stream."""

import sys
from collections.abc import Iterable, Sequence
from textwrap import wrap

from estimator.cli.reader import reader
from estimator.cli.views.layout import Layout
from estimator.cli.views.screen import Row, show, width
from estimator.model.gas import first_warnings
from estimator.model.job import Job
from estimator.model.problem import Level, Problem, worst_first
from estimator.model.say import Say
from estimator.wording.places import placed
from estimator.wording.say import say

LOOKS = {Level.ERROR: "bad", Level.WARNING: "head", Level.QUESTION: ""}
COUNTED = {
    Level.ERROR: (Say.of("1 error"), Say.of("{count} errors")),
    Level.WARNING: (Say.of("1 warning"), Say.of("{count} warnings")),
    Level.QUESTION: (Say.of("1 question"), Say.of("{count} questions")),
}


def tell(problems: Sequence[Problem]) -> None:
    """Prints problems on stderr in the reader's language, worst first, with a count under them."""
    show(rows(problems, width(sys.stderr), reader()), sys.stderr)


def rows(problems: Sequence[Problem], columns: int, language: str) -> list[Row]:
    out = [row for problem in worst_first(tuple(problems)) for row in one(problem, columns, language)]
    return [*out, Row(count(problems, language), "head")] if len(problems) > 1 else out


def one(problem: Problem, columns: int, language: str) -> Iterable[Row]:
    """A problem over as many lines as it needs: place and fault first, what to write indented under it."""
    wrong, write = say(problem.wrong, language), say(problem.write, language)
    place = placed(problem.place, language)
    first = wrap(f"{place}: {wrong}" if place else wrong, columns, break_on_hyphens=False)
    advice = wrap(f"{write}   ({problem.code})", columns - 2, break_on_hyphens=False)
    return [*(Row(text, LOOKS[problem.level]) for text in first), *(Row("  " + text) for text in advice)]


def count(problems: Sequence[Problem], language: str) -> str:
    """`2 errors, 1 question`."""
    parts = []
    for level, (single, several) in COUNTED.items():
        number = sum(1 for problem in problems if problem.level == level)
        if number:
            parts.append(say(single if number == 1 else Say(several.text, (("count", number),)), language))
    return ", ".join(parts)


def as_data(problems: Sequence[Problem]) -> list[dict[str, object]]:
    """The same for other programs, in English."""
    return [
        {"code": p.code, "level": p.level, "place": p.place, "wrong": str(p.wrong), "write": str(p.write)}
        for p in problems
    ]


def write_gas_first(out: Layout, job: Job | None) -> None:
    """The warnings, and a blank row under them; nothing where no gas is suspected."""
    warnings = first_warnings(job) if job else ()
    for warning in warnings:
        out.paragraph(out.say(warning), look="bad")
    if warnings:
        out.line()
