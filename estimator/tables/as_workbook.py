"""A set of tables in, one workbook that the office can edit out: a cover, a sheet a table."""

from collections.abc import Callable
from datetime import date
from decimal import Decimal

from estimator.model.say import Say
from estimator.sheets.edit_book import Computed, EditBook, EditColumn, EditSheet, Kind, Value
from estimator.sheets.tables_workbook import write_tables
from estimator.tables.columns import Column, columns
from estimator.tables.cover import TABS, Speak, cover
from estimator.tables.rows import NO_NUMBER, PriceClass, Setting, TableRow
from estimator.tables.rows_of_hours import Production, Role
from estimator.tables.table_owners import OWNERS
from estimator.tables.tables import Tables

TITLE = "Price tables"
SPARE_ROWS = 60
WIDEST = 36.0


def workbook(tables: Tables, speak: Speak = str) -> bytes:
    """The tables as one .xlsx file; read again it gives the same rows and the same fingerprint.

    `speak` says its cover and notes in the reader's language; headers are what the program reads and stay as they are.
    """
    sheets = tuple(_sheet(name, tables, speak) for name in OWNERS)
    return write_tables(EditBook(title=TITLE, day=tables.day, cover=cover(tables, speak), sheets=sheets))


# ── sheets ────────────────────────────────────────────────────────────────────────────────────


def _sheet(name: str, tables: Tables, speak: Speak) -> EditSheet:
    keeper, _ = OWNERS[name]
    rows = tables.rows.get(name, ())
    own, kept = _parted(name)
    made = [_column(name, c, tables, speak) for c in own]
    worked_out = [COMPUTED[name](rows, speak)] if name in COMPUTED else []
    made += [*worked_out, *(_column(name, c, tables, speak) for c in kept)]
    blank: tuple[Value, ...] = (None,) * len(worked_out)
    return EditSheet(
        name=name,
        columns=tuple(made),
        rows=tuple((*(_value(r, c) for c in own), *blank, *(_value(r, c) for c in kept)) for r in rows),
        tab=TABS[keeper],
        read_only=keeper == "with care",
        off_column=next(at for at, c in enumerate(made) if c.header == "active"),
        spare_rows=SPARE_ROWS,
    )


def _parted(name: str) -> tuple[list[Column], list[Column]]:
    """The table's own columns; those every table has. What is worked out stands between them."""
    return [c for c in columns(name) if not c.kept], [c for c in columns(name) if c.kept]


def _column(table: str, column: Column, tables: Tables, speak: Speak) -> EditColumn:
    kind: Kind = "text" if column.kind == "words" else column.kind
    if kind == "dollars" and not column.money:
        kind = "number"
    texts = [str(_value(row, column) or "") for row in tables.rows.get(table, ())]
    longest = max((len(text) for text in texts), default=0)
    return EditColumn(
        header=column.header,
        note=_note(column, speak),
        kind=kind,
        width=min(WIDEST, max(9.0, len(column.header) + 2.5, longest * 1.05 + 2)),
        needed=not column.empty,
        choose=column.choices,
        list_from=_list(table, column, tables),
        several=column.kind == "words",
        least=column.least,
        old_after_days=_stale(tables) if column.name == "price_day" else None,
    )


def _note(column: Column, speak: Speak) -> str:
    parts = [speak(Say(column.note)) if column.note else ""]
    if column.refers:
        one = column.kind != "words"
        parts.append(
            speak(
                Say.of("a row of {table}", table=column.refers)
                if one
                else Say.of("rows of {table}, commas between", table=column.refers)
            )
        )
    if column.choices:
        parts.append(speak(Say.of("one of: {words}", words=", ".join(c for c in column.choices if c))))
    if column.kind == "day":
        parts.append(speak(Say.of("year-month-day")))
    parts.append(speak(Say.of("may be empty") if column.empty else Say.of("may not be empty")))
    return ". ".join(part for part in parts if part) + "."


def _list(table: str, column: Column, tables: Tables) -> str:
    """Where a drop-down takes its words; for a recipe's ref, by the kind of its part."""
    if column.refers:
        return "=" + _names(column.refers, tables)
    if (table, column.name) == ("work_items", "tax_class"):
        return "=" + _names("tax_classes", tables, "B")
    if (table, column.name) == ("recipes", "ref"):
        subs = _names("subs_and_fees", tables)
        equipment = f'IF($B2="equipment",{_names("equipment", tables)},{subs})'
        material = f'IF($B2="material",{_names("materials", tables)},{equipment})'
        return f'=IF($B2="labor",{_names("production", tables)},{material})'
    return ""


def _names(table: str, tables: Tables, column: str = "A") -> str:
    return f"{table}!${column}$2:${column}${len(tables.rows.get(table, ())) + SPARE_ROWS + 1}"


def _stale(tables: Tables) -> int | None:
    try:
        return int(tables.number("stale_price_days"))
    except (KeyError, ValueError):
        return None


def _value(row: TableRow, column: Column) -> Value:
    value = getattr(row, column.name)
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, Decimal):
        return float(value)
    if isinstance(value, tuple):
        return ", ".join(value)
    if isinstance(row, Setting) and column.name == "value" and row.unit not in NO_NUMBER:
        return float(value)
    if isinstance(value, str | int | float | date):
        return value
    return None


# ── computed cells, their headers in brackets so that nobody takes them for a table's own ──────


def _computed(header: str, note: str, formula: str, values: tuple[float | str, ...]) -> EditColumn:
    guarded = f'=IF($A{{row}}="","",{formula})'
    return EditColumn(header=f"({header})", note=note, kind="dollars", width=14, computed=Computed(guarded, values))


def _loaded(rows: tuple[TableRow, ...], speak: Speak) -> EditColumn:
    values = tuple(float(r.hour) for r in rows if isinstance(r, Role))
    return _computed(
        speak(Say.of("an hour costs")),
        speak(Say.of("wage × (1 + burden) × paid ÷ worked hours; worked out, not read.")),
        "ROUND($B{row}*(1+$C{row}/100)*IF(N($E{row})>0,$D{row}/$E{row},1),2)",
        values,
    )


def _markup(rows: tuple[TableRow, ...], speak: Speak) -> EditColumn:
    margins = [float(r.margin_percent) for r in rows if isinstance(r, PriceClass)]
    values = tuple(round(100 * m / (100 - m), 1) if m < 100 else "" for m in margins)
    formula = 'IF($B{row}<100,ROUND(100*$B{row}/(100-$B{row}),1),"")'
    note = speak(Say.of("the same margin as a percent of the cost; worked out, not read."))
    return _computed(speak(Say.of("as a markup")), note, formula, values)


def _expected(rows: tuple[TableRow, ...], speak: Speak) -> EditColumn:
    values = tuple(round(r.expected, 4) for r in rows if isinstance(r, Production))
    formula = "ROUND(($D{row}+$E{row}+$F{row})/3,4)"
    said = Say.of(
        "(low + likely + high) ÷ 3; worked out, not read. Prices are built on it, or on likely: setting price_expected_hours."
    )
    return _computed(speak(Say.of("expected")), speak(said), formula, values)


COMPUTED: dict[str, Callable[[tuple[TableRow, ...], Speak], EditColumn]] = {
    "roles": _loaded,
    "pricing": _markup,
    "production": _expected,
}
