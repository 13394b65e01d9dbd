"""A job and a firm's tables in; the demo's figures its price still rests on, as questions, those first that move it most, out."""

from collections.abc import Sequence
from dataclasses import replace
from decimal import Decimal
from pathlib import Path

from estimator.cli.way import priced
from estimator.model.offer import Option
from estimator.quote.invented import figures_of, share_of
from estimator.tables.first_questions import Question, figure, first_questions
from estimator.tables.tables import Tables
from estimator.tables.whose import own_rows


def questions_of(job: Path, folder: Path) -> tuple[Question, ...]:
    """Return what is asked for this job: who the firm is and its margin where they are not its own, then figures by how much they move.

    Errors: CannotGoOn where the job or the tables cannot be read.
    """
    tables, options = _priced(job, folder)
    own, fifty = own_rows(tables), first_questions(tables)
    first = [q for q in fifty if q.table == "settings" and (q.table, q.row) not in own]
    first += [q for q in fifty if q.table == "pricing" and ("pricing", "own") not in own]
    moved: dict[tuple[str, str], Decimal] = {}
    for option in options:
        for key, share in figures_of(option, tables).items():
            moved[key] = max(share, moved.get(key, Decimal(0)))
    asked = {(q.table, q.row): q for q in fifty}
    for (table, row), share in sorted(moved.items(), key=lambda one: (-one[1], one[0])):
        question = asked.get((table, row)) or figure(table, row, 0.0, tables)
        if question is not None and round(share, 1):
            first.append(replace(question, share=float(round(share, 1))))
    return tuple(first)


def left(job: Path, folder: Path) -> Sequence[tuple[str, Decimal]]:
    """Return each option's letter with the percent of its cost that still rests on the demo's figures."""
    tables, options = _priced(job, folder)
    return [(option.letter, share_of(option, tables)) for option in options]


def _priced(job: Path, folder: Path) -> tuple[Tables, Sequence[Option]]:
    found = priced(job, folder)
    return found.tables, found.quote.options if found.quote else ()
