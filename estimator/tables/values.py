"""One cell in, its value or what is wrong with it out."""

import re
from collections.abc import Callable
from datetime import date, datetime
from decimal import Decimal
from functools import lru_cache
from typing import Any

from estimator.model.problem import Kind
from estimator.model.say import Say
from estimator.sheets.fault import Fault
from estimator.sheets.style import Percent
from estimator.tables import cell_problems
from estimator.tables import problems as p
from estimator.tables.cell_problems import near
from estimator.tables.columns import Column
from estimator.tables.raw import CellValue

MOST = Decimal(10_000_000)
TEXTS_KEPT = 20_000
"""So many texts of cells are kept with what they were read as: most of a table repeats."""
FLOAT_PLACES = 9
"""A spreadsheet's =B7*1.05 ends in 4.409999999999999: what lies behind this many places is noise."""
SHARES = ("margin_percent", "floor_margin_percent", "contingency_percent", "percent", "burden_percent")
"""Percents that are never below one but by a slip, 0.4 typed for 40; a tax or a waste may well be a half."""
NUMBER = re.compile(r"-?(\d+|\d{1,3}(,\d{3})+)(\.\d+)?|-?\.\d+")
DECIMAL_COMMA = re.compile(r"-?\d+,\d{1,2}|-?\d+,\d{4,}|-?\d{1,3}(\.\d{3})+,\d+")
WIDE_SPACES = dict.fromkeys(map(ord, "\u00a0\u2007\u202f"), " ")
UNSEEN = dict.fromkeys(map(ord, "\u200b\u200c\u200d\u2060\ufeff\u00ad"))
DASHES = dict.fromkeys(map(ord, "\u2010\u2011\u2012\u2013\u2212"), "-")
"""What comes along with a text pasted from a web page or a letter, and nobody sees."""
ERRORS = ("#N/A", "#REF!", "#VALUE!", "#DIV/0!", "#NAME?", "#NUM!", "#NULL!", "#SPILL!", "#CALC!", "#ERROR!")


class BadCell(Exception):
    """The cell cannot be read; carries the kind of problem and its words. Never leaves this package."""

    def __init__(self, kind: Kind, **words: object) -> None:
        super().__init__(kind.code)
        self.kind, self.words = kind, {"or_off": "", **words}  # row_reader knows whether the row may be off


def shown(cell: CellValue) -> str:
    """A cell as a person sees it, cut to a readable length."""
    if isinstance(cell, bool):
        return "TRUE" if cell else "FALSE"
    text = str(cell).strip()
    return text if len(text) <= 40 else text[:37] + "..."


def read_cell(cell: CellValue, column: Column) -> Any:
    """The value of a cell in its column. Errors: BadCell."""
    if isinstance(cell, Fault):
        _fault(cell, column)
    return _typed(cell, column) if isinstance(cell, str) else READERS[column.kind](cell, column)


@lru_cache(TEXTS_KEPT)
def _typed(text: str, column: Column) -> Any:
    text = as_typed(text, column)
    if text.upper() in ERRORS:
        raise BadCell(cell_problems.ERROR_VALUE, column=column.header, text=text)
    text = text or column.blank or ""
    return READERS[column.kind](text, column) if text else _nothing(column)


def as_typed(text: str, column: Column) -> str:
    """A text without what came along unseen; a name with plain dashes and one blank between words too.

    >>> from estimator.tables.columns import columns
    >>> as_typed("lead\\u00a0 plumber\\u200b ", columns("roles")[0])
    'lead plumber'
    """
    plain = text.strip() if text.isascii() else text.translate(WIDE_SPACES | UNSEEN).strip()
    return " ".join(plain.translate(DASHES).split()) if column.names else plain


def _fault(fault: Fault, column: Column) -> None:
    kinds = {
        "error": cell_problems.ERROR_VALUE,
        "uncalculated": cell_problems.NOT_CALCULATED,
        "merged": cell_problems.MERGED,
        "currency": cell_problems.CURRENCY,
    }
    raise BadCell(kinds[fault.kind], column=column.header, text=fault.text, range=fault.text)


def _nothing(column: Column) -> Any:
    if not column.empty:
        raise BadCell(cell_problems.EMPTY_CELL, column=column.header, note=Say.of(column.note))
    return {"text": "", "words": ()}.get(column.kind)


def _text(cell: CellValue, column: Column) -> str:
    if isinstance(cell, bool | datetime | date) and column.name != "value":
        raise BadCell(cell_problems.NOT_TEXT, column=column.header, text=shown(cell))
    if isinstance(cell, bool):
        return "yes" if cell else "no"
    if isinstance(cell, datetime):
        cell = cell.date()
    if isinstance(cell, Percent):
        return f"{plain_number(round(float(cell) * 100, FLOAT_PLACES))} %"
    text = plain_number(cell) if isinstance(cell, int | float | Decimal) else str(cell)
    if column.choices and text not in column.choices:
        known = [c for c in column.choices if c]
        raise BadCell(
            cell_problems.NOT_A_CHOICE,
            column=column.header,
            text=shown(text),
            near=near(text, known),
            choices=", ".join(known),
        )
    return text


def plain_number(number: int | float | Decimal) -> str:
    """A number as one would write it: 4, not 4.0.

    >>> plain_number(4.0), plain_number(4.2), plain_number(Decimal("5.50"))
    ('4', '4.2', '5.5')
    """
    return f"{Decimal(repr(number) if isinstance(number, float) else str(number)).normalize():f}"


def _words(cell: CellValue, column: Column) -> tuple[str, ...]:
    return tuple(part.strip() for part in _text(cell, column).split(",") if part.strip())


def _decimal(cell: CellValue, column: Column) -> Decimal:
    if isinstance(cell, bool | datetime | date):
        raise BadCell(cell_problems.NOT_A_NUMBER, column=column.header, text=shown(cell), example=_example(column))
    if isinstance(cell, str) and column.percent and cell.rstrip().endswith("%"):
        cell = cell.rstrip().removesuffix("%").rstrip()
    if isinstance(cell, Percent):
        number = Decimal(repr(round(float(cell) * (100 if column.percent else 1), FLOAT_PLACES)))
    elif isinstance(cell, int | float | Decimal):
        number = Decimal(repr(round(cell, FLOAT_PLACES)) if isinstance(cell, float) else str(cell))
        if not number.is_finite():
            raise BadCell(cell_problems.NOT_A_NUMBER, column=column.header, text=shown(cell), example=_example(column))
    else:
        number = parse_number(str(cell), column.header, _example(column))
    if column.above is not None and number <= Decimal(str(column.above)):
        raise BadCell(cell_problems.NOT_ABOVE, column=column.header, text=shown(cell), above=plain_number(column.above))
    if column.least is not None and number < Decimal(str(column.least)):
        raise BadCell(cell_problems.NEGATIVE, column=column.header, text=shown(cell), least=plain_number(column.least))
    if abs(number) > MOST:
        raise BadCell(cell_problems.TOO_LARGE, column=column.header, text=shown(cell), most=f"{MOST:,}")
    if column.name in SHARES and 0 < number < 1:
        fixed = plain_number(number * 100)
        raise BadCell(p.MARGIN_SMALL, column=column.header, text=shown(cell), fixed=fixed)
    return number


def parse_number(text: str, header: str, example: str) -> Decimal:
    """A number as people write it: 1,234.50 or $24.50; a decimal comma is refused with what to write. Errors: BadCell.

    >>> parse_number("$ 1,234.50", "cost", "24.50")
    Decimal('1234.50')
    """
    bare = text.strip().removeprefix("$").strip()
    if NUMBER.fullmatch(bare) and bare.isascii():
        return Decimal(bare.replace(",", ""))
    if DECIMAL_COMMA.fullmatch(bare) and bare.isascii():
        fixed = bare.replace(".", "").replace(",", ".")
        raise BadCell(cell_problems.COMMA_NUMBER, column=header, text=shown(text), fixed=fixed)
    raise BadCell(cell_problems.NOT_A_NUMBER, column=header, text=shown(text), example=example)


def _example(column: Column) -> str:
    return {"dollars": "24.50", "whole": "3"}.get(column.kind, "1.5")


def _float(cell: CellValue, column: Column) -> float:
    return float(_decimal(cell, column))


def _whole(cell: CellValue, column: Column) -> int:
    number = _decimal(cell, column)
    if number != number.to_integral_value():
        raise BadCell(cell_problems.NOT_WHOLE, column=column.header, text=shown(cell))
    return int(number)


def _yes_no(cell: CellValue, column: Column) -> bool:
    words = {"yes": True, "true": True, "no": False, "false": False}
    answer = cell if isinstance(cell, bool) else words.get(str(cell).lower())
    if answer is None:
        raise BadCell(cell_problems.NOT_YES_NO, column=column.header, text=shown(cell))
    return answer


def _day(cell: CellValue, column: Column) -> date:
    if isinstance(cell, datetime):
        return cell.date()
    if isinstance(cell, date):
        return cell
    try:
        if not re.fullmatch(r"\d{4}-\d{2}-\d{2}", str(cell)):
            raise ValueError
        return date.fromisoformat(str(cell))
    except ValueError:
        raise BadCell(cell_problems.NOT_A_DAY, column=column.header, text=shown(cell)) from None


READERS: dict[str, Callable[[CellValue, Column], Any]] = {
    "text": _text,
    "words": _words,
    "number": _float,
    "dollars": _decimal,
    "whole": _whole,
    "yes/no": _yes_no,
    "day": _day,
}
