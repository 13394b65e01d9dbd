"""A job and a firm's tables in; the demo's figures its price still rests on, as questions, those first that move it most, out."""

from collections.abc import Sequence
from dataclasses import replace
from decimal import Decimal
from pathlib import Path

from estimator.cli.priced_job import priced
from estimator.model.frozen import Frozen
from estimator.model.offer import Option
from estimator.model.say import FromTable, Say
from estimator.quote.invented import figures_of
from estimator.tables.first_answers import answered
from estimator.tables.first_questions import Question, figure, first_questions
from estimator.tables.rows import Equipment, Material, SubOrFee
from estimator.tables.tables import Tables

NAMED = 3
"""So many of the figures that are left are named."""


class Left(Frozen, kw_only=True):
    """How much of an option's cost still rests on the demo's figures, percent, and the largest of them, in words."""

    letter: str
    percent: Decimal
    largest: tuple[Say, ...]


def questions_of(job: Path, folder: Path) -> tuple[Question, ...]:
    """Return what is asked for this job: who the firm is and its margin where they are not its own, then wages, prices and
    hours in the order of their share. Hours stand at the share they have once their wages are the firm's.

    Errors: CannotGoOn where the job or the tables cannot be read.
    """
    tables, options = _priced(job, folder)
    fifty = first_questions(tables)
    first = [q for q in fifty if q.table == "settings" and not answered(q, tables)]
    moved: dict[tuple[str, str], Decimal] = {}
    for option in options:
        for found in (figures_of(option, tables), figures_of(option, tables, paid=True)):
            for key, share in found.items():
                moved[key] = max(share, moved.get(key, Decimal(0)))
    asked = {(q.table, q.row): q for q in fifty}
    figures = []
    for (table, row), share in sorted(moved.items(), key=lambda one: (-one[1], one[0])):
        question = asked.get((table, row)) or figure(table, row, 0.0, tables)
        if question is not None and round(share, 1):
            figures.append(replace(question, share=float(round(share, 1))))
    after = max((at for at, q in enumerate(figures, start=1) if q.table == "roles"), default=0)
    burden = [q for q in fifty if q.column == "burden_percent" and not answered(q, tables)]
    return (*first, *figures[:after], *burden, *figures[after:])


def left(job: Path, folder: Path) -> Sequence[Left]:
    """Return what of each option still rests on the demo's figures."""
    tables, options = _priced(job, folder)
    out = []
    for option in options:
        held = figures_of(option, tables)
        largest = sorted((key for key, share in held.items() if round(share, 1)), key=lambda key: -held[key])
        named = tuple(_called(*key, tables) for key in largest[:NAMED])
        out.append(Left(letter=option.letter, percent=sum(held.values(), Decimal(0)), largest=named))
    return out


def _called(table: str, row: str, tables: Tables) -> Say:
    """What people call it: the text of a thing that is bought, the name of a task or of who is paid."""
    found = next((r for r in tables.current(table) if getattr(r, "item", None) == row), None)
    if isinstance(found, Material | Equipment | SubOrFee):
        return Say.of("{what}", what=FromTable(found.text, found.text_es))
    return Say.of(row)


def _priced(job: Path, folder: Path) -> tuple[Tables, Sequence[Option]]:
    found = priced(job, folder)
    return found.tables, found.quote.options if found.quote else ()
