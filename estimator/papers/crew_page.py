"""What the crew's sheets share: the red first row, whose job it is, check boxes and lines to write on."""

from collections.abc import Callable, Sequence
from itertools import zip_longest

from estimator.papers.inside import RED
from estimator.papers.letter import Letter
from estimator.papers.page import Page
from estimator.sheets.book import Cell, Sheet
from estimator.sheets.write import pages_of

NAME_LENGTH = 31  # the longest a sheet's name may be
SHORT_LABEL = 40  # characters: a longer label takes two lines
NOT_IN_NAMES = "[]:*?/\\"


def sheet_name(text: str) -> str:
    """A sheet's name: what a name may not hold becomes a dash, and it is cut to what fits.

    >>> sheet_name("bath 1/2 [old]")
    'bath 1-2 -old-'
    """
    return "".join("-" if c in NOT_IN_NAMES else c for c in text)[:NAME_LENGTH].strip("'") or "-"


def crew_page(letter: Letter, name: str, widths: tuple[float, ...], title: str) -> Page:
    """A page that says whose it is, where, and that it does not go to the customer."""
    speak, job = letter.speak, letter.quote.job
    page = Page(sheet_name(name), widths)
    letter.gas_first(page)
    page.line(speak("INTERNAL – for the crew, not for the customer"), "alarm")
    page.line(title, "title")
    page.line(f"{letter.number} · {job.customer.site} · {job.customer.name} {job.customer.phone}".strip(), "quiet")
    return page


def boxes_in_pairs(page: Page, texts: Sequence[str]) -> None:
    """Boxes to tick with their texts, two a row where the page has a second column of boxes as wide as its first, else one."""
    left = next((n for n, width in enumerate(page.widths) if n and width == page.widths[0]), 0)
    if not left:
        for text in texts:
            page.add(Cell("☐", "tick", open=True), Cell(text, "cell", page.columns - 1))
        return
    for one, other in zip_longest(texts[::2], texts[1::2], fillvalue=""):
        second = (Cell("☐", "tick", open=True), Cell(other, "cell", page.columns - left - 1)) if other else ()
        page.add(Cell("☐", "tick", open=True), Cell(one, "cell", left - 1), *second)


def blank(page: Page, label: str) -> None:
    """A label and a line to write on."""
    page.add(Cell(label, "label", 2), Cell("", "write", page.columns - 2, open=True), height_pt=_height(label))


def _height(label: str) -> float:
    return 21.0 if len(label) <= SHORT_LABEL else 33.0


Widths = tuple[float, ...]


def on_one_page(build: Callable[[Widths], Sheet], *widths: Widths) -> Sheet:
    """Return the sheet as it is with the first of the widths that takes one page, the narrowest and largest in print first; else with the last."""
    for each in widths:
        sheet = build(each)
        if pages_of(sheet) == 1:
            break
    return sheet


PRINT_SCALE = 88  # of the size on the screen; where that saves a page it is made smaller still


def close(letter: Letter, page: Page, repeat: tuple[int, int] | None = None) -> Sheet:
    footer = f"{letter.speak('INTERNAL')} {letter.number} {letter.quote.job.customer.site}"
    return page.sheet(footer=footer[:200], page_words=letter.page_words, repeat=repeat, scale=PRINT_SCALE, tab=RED)
