"""Cells of text in, the lines of a table out, made for a number of columns.

>>> print("\\n".join(table(("what", "how much"), [("roots", "40 %")], 40)))
what   how much
─────  ────────
roots  40 %
"""

import unicodedata
from collections.abc import Sequence
from textwrap import wrap

GAP = "  "
LEAST_COLUMN, TIGHT_COLUMN = 6, 15


def cells_wide(text: str) -> int:
    """Columns a terminal needs for the text: wide letters take two, accents laid over a letter none."""
    return sum(0 if unicodedata.combining(c) else 2 if unicodedata.east_asian_width(c) in "WF" else 1 for c in text)


def padded(text: str, columns: int, right: bool = False) -> str:
    blank = " " * (columns - cells_wide(text))
    return blank + text if right else text + blank


def folded(text: str, columns: int) -> list[str]:
    """The text on lines of at most so many columns; words longer than a line are cut."""
    tight = columns < TIGHT_COLUMN
    return [line for part in text.split("\n") for line in (wrap(part, columns, break_on_hyphens=tight) or [""])]


def table(headers: Sequence[str], rows: Sequence[Sequence[str]], columns: int, right: Sequence[int] = ()) -> list[str]:
    """Headers, a rule and the rows; `right` are columns set to the right. Long cells are folded, the widest first."""
    widths = fitted(headers, rows, columns)
    rule = GAP.join("─" * w for w in widths)
    body = [line for row in rows for line in _row(row, widths, right)]
    return [*(_row(headers, widths, right) if any(headers) else []), *([rule] if any(headers) else []), *body]


def fitted(headers: Sequence[str], rows: Sequence[Sequence[str]], columns: int) -> list[int]:
    """How wide each column gets: what it needs, the widest cut down until the table fits; words are cut last of all."""
    held = list(zip(headers, *rows, strict=True))
    widths = [max(cells_wide(line) for cell in column for line in (cell.split("\n") or [""])) for column in held]
    words = [max(LEAST_COLUMN, longest_word(column)) for column in held]
    room = columns - len(GAP) * (len(widths) - 1)
    while sum(widths) > room and max(widths) > LEAST_COLUMN:
        loose = [i for i, width in enumerate(widths) if width > words[i]] or range(len(widths))
        widths[max(loose, key=lambda i: widths[i])] -= 1
    return widths


def longest_word(column: Sequence[str]) -> int:
    return max((cells_wide(word) for cell in column for word in cell.split()), default=0)


def _row(cells: Sequence[str], widths: Sequence[int], right: Sequence[int]) -> list[str]:
    parts = [folded(cell, wide) for cell, wide in zip(cells, widths, strict=True)]
    tall = max((len(part) for part in parts), default=1)
    lines = []
    for number in range(tall):
        texts = [part[number] if number < len(part) else "" for part in parts]
        placed = [padded(t, w, i in right) for i, (t, w) in enumerate(zip(texts, widths, strict=True))]
        lines.append(GAP.join(placed).rstrip())
    return lines


def indented(text: str, columns: int, by: int = 2, hanging: int = 0) -> list[str]:
    """A paragraph set in from the left; `hanging` sets the second line in further."""
    lines = wrap(text, columns, initial_indent=" " * by, subsequent_indent=" " * (by + hanging), break_on_hyphens=False)
    return lines or [""]
