"""Tables in, the fifty figures a firm needs first as lines of the workbook's first sheet out, each with its cell."""

from collections.abc import Callable, Iterator

from estimator.model.say import Say
from estimator.sheets.edit_book import CoverLine
from estimator.tables.columns import columns
from estimator.tables.first_questions import CITY, Question, first_questions
from estimator.tables.invented_rows import invented
from estimator.tables.raw import letters
from estimator.tables.rows import id_of
from estimator.tables.tables import Tables


def first_lines(tables: Tables, speak: Callable[[Say], str]) -> Iterator[CoverLine]:
    """A heading, then a line a figure: what it is, whose it is and how much hangs on it, and its cell to click on."""
    yield CoverLine(("",))
    yield CoverLine((speak(Say.of("The fifty figures to begin with, the most important first")), "", ""), "heading")
    for question in first_questions(tables):
        row = _row(question)
        theirs = row in invented(tables, question.table)
        whose = "" if not row else speak(Say.of("invented") if theirs else Say.of("yours"))
        part = Say.of("{share}% of a usual job's cost", share=f"{question.share:.1f}")
        share = speak(part) if question.share else ""
        cell = _cell(question, row, tables)
        yield CoverLine((", ".join(w for w in (whose, share) if w), speak(question.asks), cell), link=cell)


def _row(question: Question) -> str:
    """The id of the row it stands in; "" where it is a row still to be written, or one of many."""
    return "" if question.row == CITY or question.table == "crews" else question.row


def _cell(question: Question, row: str, tables: Tables) -> str:
    table = question.table
    names = [column.name for column in columns(table)]
    rows = tables.rows.get(table, ())
    wanted = row or question.row
    at = next((i for i, r in enumerate(rows, start=2) if id_of(table, r) == wanted), 2)
    if question.row == CITY:
        at = len(rows) + 2  # the first free row: a place of the firm's own
    return f"{table}!{letters(names.index(question.column))}{at}"
