"""Problems in, the text of the place, what is wrong and what to write instead out, on the error stream."""

import sys
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from textwrap import wrap

from estimator.cli.views.screen import Row, show, width
from estimator.model.problem import Level, Problem, worst_first
from estimator.model.say import FromTable, Say
from estimator.wording.numbers import family
from estimator.wording.say import NOTES_LANGUAGE, say, spoken

LOOKS = {Level.ERROR: "bad", Level.WARNING: "head", Level.QUESTION: ""}
COUNTED: Mapping[Level, tuple[Say, Say]] = {
    Level.ERROR: (Say.of("{count} error"), Say.of("{count} errors")),
    Level.WARNING: (Say.of("{count} warning"), Say.of("{count} warnings")),
    Level.QUESTION: (Say.of("{count} question"), Say.of("{count} questions")),
}


PHRASES = ("near", "or_off", "why", "which", "note", "side", "count")
"""Gaps that a fixed phrase fills, not a word that somebody typed."""


def tell(problems: Sequence[Problem], language: str = NOTES_LANGUAGE) -> None:
    """Prints problems on stderr, worst first, with a count under them."""
    show(rows([in_language(p, language) for p in problems], width(sys.stderr), language), sys.stderr)


def in_language(problem: Problem, language: str) -> Problem:
    """The problem with its sentences in the reader's language, as far as the catalog has them."""
    if family(language) == NOTES_LANGUAGE or not problem.says:
        return problem
    wrong, write = (
        say(Say(said.text, tuple((gap, _phrase(gap, value, language)) for gap, value in said.words)), language)
        for said in problem.says
    )
    return replace(problem, wrong=wrong, write=write.strip())


def _phrase(gap: str, value: object, language: str) -> object:
    if isinstance(value, str):  # what somebody typed stands as it was typed
        return FromTable(value, spoken(value, language) if gap in PHRASES else value)
    return value


def rows(problems: Sequence[Problem], columns: int, language: str = NOTES_LANGUAGE) -> list[Row]:
    out = [row for problem in worst_first(tuple(problems)) for row in one(problem, columns)]
    return [*out, Row(count(problems, language), "head")] if len(problems) > 1 else out


def one(problem: Problem, columns: int) -> Iterable[Row]:
    """A problem over as many lines as it needs: place and fault first, what to write indented under it."""
    place = f"{problem.place}: " if str(problem.place) else ""
    first = wrap(f"{place}{problem.wrong}", columns, break_on_hyphens=False)
    advice = wrap(f"{problem.write}   ({problem.code})", columns - 2, break_on_hyphens=False)
    return [*(Row(text, LOOKS[problem.level]) for text in first), *(Row("  " + text) for text in advice)]


def count(problems: Sequence[Problem], language: str = NOTES_LANGUAGE) -> str:
    """`2 errors, 1 question`."""
    parts = []
    for level, (single, several) in COUNTED.items():
        number = sum(1 for problem in problems if problem.level == level)
        if number:
            parts.append(say(Say((single if number == 1 else several).text, (("count", number),)), language))
    return ", ".join(parts)
