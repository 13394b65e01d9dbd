"""Lines of text in, the terminal out: colour only where a terminal wants it, plain everywhere else."""

import os
import shutil
import sys
from collections.abc import Iterable
from typing import TextIO

from estimator.cli.streams import HANDLER, plain
from estimator.model.frozen import Frozen

NARROWEST, PLAIN, WIDEST = 40, 80, 120


class Row(Frozen):
    """One line of text and how it is to stand out: "", "head", "dim", "bad", "good"."""

    text: str
    look: str = ""


STYLES: dict[str, str] = {"head": "bold", "dim": "dim", "bad": "bold red", "good": "green"}


def width(stream: TextIO | None = None) -> int:
    """How many columns there are to write in: the terminal's own, or 80 when nobody looks."""
    stream = stream or sys.stdout
    if not stream.isatty() and "COLUMNS" not in os.environ:
        return PLAIN
    return max(NARROWEST, min(WIDEST, shutil.get_terminal_size((PLAIN, 24)).columns))


def show(rows: Iterable[Row | str], stream: TextIO | None = None) -> None:
    """Writes the lines; text of the user is never read as markup."""
    stream = stream or sys.stdout
    lines = [row if isinstance(row, Row) else Row(row) for row in rows]
    if stream.isatty() and not os.environ.get("NO_COLOR"):
        _show_in_colour(lines, stream)
    else:
        stream.write("".join(drawable(row.text, stream) + "\n" for row in lines))


def _show_in_colour(lines: list[Row], stream: TextIO) -> None:
    from rich.console import Console
    from rich.text import Text

    console = Console(file=stream, highlight=False, markup=False, emoji=False, soft_wrap=True)
    for row in lines:
        console.print(Text(drawable(row.text, stream), style=STYLES.get(row.look, "")), soft_wrap=True)


DRAWN = frozenset("─═│├┤┴┬▔▁·←→")
"""Marks of one drawing: where one of them cannot be written all become plain, so that they still fit one another."""


def drawable(text: str, stream: TextIO) -> str:
    """The text with every drawing mark the stream cannot write put in plainer ones."""
    clean = "".join(c if c.isprintable() or c == " " else "\N{REPLACEMENT CHARACTER}" for c in text)
    encoding = getattr(stream, "encoding", None) or "ascii"
    try:
        clean.encode(encoding)
    except UnicodeEncodeError:
        clean = "".join(plain(c) if c in DRAWN else c for c in clean)
    except LookupError:
        encoding = "ascii"
    return clean.encode(encoding, HANDLER).decode(encoding)


def answer(plain_answer: object, as_json: bool, rows: Iterable[Row | str]) -> None:
    """The answer of a command on stdout: rows for people, or the same as JSON."""
    if as_json:
        from estimator.records.recorded_text import dumped
        from estimator.records.recorded_text import plain as as_data

        sys.stdout.write(dumped(as_data(plain_answer)).decode())
    else:
        show(rows)
