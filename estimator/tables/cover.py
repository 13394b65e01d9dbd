"""A set of tables in, the lines of the workbook's first sheet out: how to use it, the fifty figures, whose table is whose, an index."""

from collections.abc import Callable, Iterator

from estimator.model.say import FromTable, Say
from estimator.sheets.edit_book import CoverLine
from estimator.tables.columns import columns
from estimator.tables.first_questions import CITY, Question, first_questions
from estimator.tables.invented_rows import invented
from estimator.tables.raw import letters
from estimator.tables.rows import id_of
from estimator.tables.table_owners import GROUPS, OWNERS, TITLES, Owner
from estimator.tables.tables import Tables

Speak = Callable[[Say], str]
"""Says a sentence in the reader's language."""
TABS: dict[Owner, str] = {"office": "CFE3D4", "owner": "FBE3B5", "with care": "E3DDE9"}
INDEXED = {
    "materials": "cost",
    "equipment": "cost",
    "subs_and_fees": "cost",
    "roles": "wage",
    "extras": "price",
    "production": "likely",
}


def cover(tables: Tables, speak: Speak) -> tuple[CoverLine, ...]:
    lines = [
        CoverLine((speak(Say.of("Price tables")),), "title"),
        *(CoverLine((speak(s),), "quiet") for s in _how(tables)),
    ]
    lines += first_lines(tables, speak)
    for keeper, title in TITLES.items():
        lines += [CoverLine(("",)), CoverLine((speak(title), "", ""), "heading")]
        for name, (who, what) in OWNERS.items():
            if who == keeper:
                count = speak(Say.of("{count} rows", count=len(tables.rows.get(name, ()))))
                lines.append(CoverLine((count, speak(what), name), link=f"{name}!A1", colour=TABS[keeper]))
    lines += [*_settings(tables, speak), CoverLine(("",))]
    lines.append(CoverLine((speak(Say.of("Where do I find ...")), "", ""), "heading"))
    return (*lines, *_index(tables, speak))


def _how(tables: Tables) -> tuple[Say, ...]:
    return (
        Say.of(
            "As of {day}. One sheet is one table, one row is one thing. Point at a header to read what it means.",
            day=tables.day.isoformat(),
        ),
        Say.of(
            "Orange: must not be empty. Yellow: an old price. Struck out: not in use (active: no). Gray columns in brackets are worked out."
        ),
        Say.of(
            "Never delete a row that was used: set active to no. A new price is a new row with its first day in “from”."
        ),
    )


def _settings(tables: Tables, speak: Speak) -> list[CoverLine]:
    """A line a group of settings: what it decides, who keeps it, what moves with it, and its first cell."""
    lines = [CoverLine(("",)), CoverLine((speak(Say.of("Settings, by what they decide")), "", ""), "heading")]
    rows = [getattr(row, "decides", "") for row in tables.rows.get("settings", ())]
    for group, (keeper, moves) in GROUPS.items():
        if group in rows:
            cell = f"settings!A{rows.index(group) + 2}"
            words = speak(Say.of("{keeper}: {moves}", keeper=TITLES[keeper], moves=moves))
            lines.append(CoverLine((group, words, cell), link=cell, colour=TABS[keeper]))
    return lines


def _index(tables: Tables, speak: Speak) -> list[CoverLine]:
    """Every thing with a price or a time, and its cell."""
    lines = []
    for table, price in INDEXED.items():
        names = [c.name for c in columns(table)]
        for at, row in enumerate(tables.rows.get(table, ()), start=2):
            cell = f"{table}!{letters(names.index(price))}{at}"
            told = next((getattr(row, n) for n in ("text", "text_en", "covers") if getattr(row, n, "")), "")
            spanish = next((getattr(row, n) for n in ("text_es", "covers_es") if getattr(row, n, "")), told)
            words = speak(Say.of("{what}", what=FromTable(str(told), str(spanish))))
            lines.append(CoverLine((str(getattr(row, names[0])), words, cell), link=cell))
    return sorted(lines, key=lambda line: line.texts[0])


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
