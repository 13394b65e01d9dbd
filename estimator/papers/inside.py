"""What the sheets that stay in the house share: the red first row, tables of cells, formulas that must give the program's cents."""

import re
from collections.abc import Iterable, Sequence
from decimal import Decimal

from estimator.model.gas import first_warnings
from estimator.model.job import Job
from estimator.model.money import cents
from estimator.papers.page import Page
from estimator.sheets.book import Cell, Formula, Sheet, Value

INTERNAL = "INTERNAL – do not send. Costs and margins."
RED = "A61B1B"
PAGE_WORDS = ("Page", "of")


def inside_page(
    name: str, widths: tuple[float, ...], title: str, warning: str = INTERNAL, job: Job | None = None
) -> Page:
    """A page that says at once that it stays in the house; before that, where there may be gas, what comes first."""
    page = Page(name, widths)
    for first in first_warnings(job) if job else ():
        page.line(str(first), "alarm")
    page.line(warning, "alarm")
    page.line(title, "title")
    return page


def head(page: Page, texts: Sequence[str], right_from: int) -> int:
    """A table's head; columns from `right_from` on hold numbers."""
    return page.add(*(Cell(text, "head" if i < right_from else "head right") for i, text in enumerate(texts)))


def table(page: Page, texts: Sequence[str], rows: Iterable[Sequence[Cell]], right_from: int) -> None:
    """A head and its rows; a word where there are none."""
    head(page, texts, right_from)
    count = 0
    for row in rows:
        page.add(*row)
        count += 1
    if not count:
        page.line("nothing", "quiet")
    page.gap()


def live(text: str, computed: Decimal, program: Decimal) -> Value:
    """The formula where it gives the program's cents; else the program's own figure, for the program is right."""
    return Formula(text, program) if cents(computed) == cents(program) else program


def close(page: Page, footer: str, repeat: tuple[int, int] | None = None) -> Sheet:
    return page.sheet(footer=footer, page_words=PAGE_WORDS, repeat=repeat, tab=RED)


def in_hundredths(text: str) -> str:
    """Return a text with its long figures to the hundredth.

    >>> in_hundredths("kitchen: scale 0.066667..10.6667")
    'kitchen: scale 0.07..10.67'
    """
    return re.sub(r"\d+\.\d{3,}", lambda figure: f"{float(figure[0]):.2f}", text)
