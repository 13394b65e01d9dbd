"""Headings, sentences and tables in, one after another; the rows of a terminal out, as wide as the window."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

from estimator.cli.views.screen import PLAIN, Row, width
from estimator.cli.views.table import indented, table
from estimator.cli.views.words import Words


@dataclass(slots=True)
class Layout(Words):
    """What a command answers, in the making: `rows` are what stands there so far."""

    columns: int = PLAIN
    rows: list[Row] = field(default_factory=list)

    def line(self, text: str = "", look: str = "") -> None:
        """A row as it is; an empty one without a text."""
        self.rows.append(Row(text, look))

    def lines(self, texts: Iterable[str], look: str = "") -> None:
        self.rows += [Row(text, look) for text in texts]

    def heading(self, text: str) -> None:
        """A heading, a blank row above it."""
        self.line()
        self.line(text, "head")

    def paragraph(self, text: str, by: int = 0, hanging: int = 0, look: str = "") -> None:
        """A text on as many rows as it needs, set in from the left; `hanging` sets the second row in further."""
        self.lines(indented(text, self.columns, by, hanging), look)

    def table(self, headers: Sequence[str], cells: Sequence[Sequence[str]], right: Sequence[int] = ()) -> None:
        """Long cells are folded; `right` are columns set to the right."""
        self.lines(table(headers, cells, self.columns, right))

    def pairs(self, cells: Sequence[tuple[str, str]]) -> None:
        """A table of two columns without headers."""
        self.table(("", ""), cells)

    def part(self) -> "Layout":
        """An empty one of the same width and language."""
        return Layout(self.language, self.columns)


def in_window(language: str) -> Layout:
    """Nothing yet, as wide as the window."""
    return Layout(language, width())
