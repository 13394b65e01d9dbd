"""A site sheet and whose job it is in, a workbook of one sheet out: fits a phone's width and one printed page wide."""

from datetime import date

from estimator.model.job import Job
from estimator.onsite.sheet import Block, SiteSheet
from estimator.papers.page import Page
from estimator.sheets.book import Book, Cell
from estimator.wording.say import capital, in_language, say, speaker

WIDTH, ACCENT = 90.0, "1F4E79"
LONGEST = 34
Drawing = tuple[bytes, int, str]
"""A PNG, its height on paper in points of 1/96 in, and its words."""


def site_book(sheet: SiteSheet, job: Job | None, language: str, day: date, picture: Drawing | None = None) -> Book:
    """Return the workbook for the person who needs the sheet, with a picture on top where there is one; a sheet over many jobs has no job."""
    speak = speaker(language)
    page = Page(sheet.name, _widths(sheet, language))
    for first in sheet.first:
        page.line(say(first, language), "alarm")
    page.line(say(sheet.title, language), "title")
    whose = f"{job.number} · {job.customer.site}" if job else ""
    if whose:
        page.line(whose, "quiet")
    page.line(say(sheet.answer, language), "bold")
    if picture is not None:
        data, height, words = picture
        page.picture(data, words, height)
    for block in sheet.blocks:
        _block(page, block, language)
    footer = f"{speak('INTERNAL')} {whose}".strip()[:200]
    made = page.sheet(footer=footer, page_words=(speak("Page"), speak("of")))
    return Book(title=say(sheet.title, language), day=day, accent=ACCENT, sheets=(made,))


def _widths(sheet: SiteSheet, language: str) -> tuple[float, ...]:
    """Columns as wide as their longest words, together as wide as a page."""
    tables = [b for b in sheet.blocks if b.rows]
    columns = max((len(b.heads) for b in tables), default=1)
    wanted = [8.0] * columns
    for block in tables:
        for row in (block.heads, *block.rows):
            for n, word in enumerate(row):
                wanted[n] = max(wanted[n], min(LONGEST, len(in_language(word, language)) + 2.0))
    factor = max(1.0, WIDTH / sum(wanted))
    return tuple(w * factor for w in wanted)


def _block(page: Page, block: Block, language: str) -> None:
    page.heading(capital(say(block.heading, language)), starts=True)
    for line in block.lines:
        page.line(f"• {capital(say(line, language))}")
    if not block.rows:
        return
    last = page.columns - len(block.heads) + 1
    page.add(
        *(Cell(say(h, language), "head", last if n == len(block.heads) - 1 else 1) for n, h in enumerate(block.heads)),
        keep=True,
    )
    for row in block.rows:
        page.table_row(
            *(Cell(in_language(w, language), "cell", last if n == len(row) - 1 else 1) for n, w in enumerate(row))
        )
