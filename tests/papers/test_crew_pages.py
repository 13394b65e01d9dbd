"""The crew's book of every option of the demo and of the whole jobs: at most five printed pages, each caution once, a drawing.

Pages are counted as the file turns them: one a sheet and one more a break.
"""

from collections import Counter
from functools import cache
from itertools import product
from pathlib import Path

import pytest

from estimator.model.offer import Option, Quote
from estimator.papers.crew import crew
from estimator.papers.house_section import house_section
from estimator.papers.letter import Letter
from estimator.pipeline.costing import with_job_settings
from estimator.sheets.book import Book
from tests.made_up.stretch import demo_tables
from tests.papers.test_crew_cautions import JOBS, quote_of
from tests.printed_pages import printed_pages

MOST_PAGES = 5
LANGUAGES = ("en_US", "es_US")


@cache
def books(path: Path) -> tuple[tuple[Quote, Option, str, Book], ...]:
    quote = quote_of(path)
    if quote is None:
        return ()
    tables = with_job_settings(quote.job, demo_tables())
    kinds = product(quote.options, LANGUAGES)
    return tuple((quote, o, language, crew(quote, language, o.letter, tables=tables)) for o, language in kinds)


@pytest.mark.parametrize("path", JOBS, ids=lambda path: path.parent.name)
def test_no_crew_book_prints_more_than_five_pages_nor_says_a_caution_twice_nor_lacks_its_drawing(path: Path) -> None:
    for quote, option, language, book in books(path):
        name = f"{option.letter} {language}"
        pages = printed_pages(book)
        assert sum(pages.values()) <= MOST_PAGES, (name, pages)
        safety = [str(cell.value) for cell in (row.cells[-1] for row in book.sheets[0].rows if row.cells)]
        ticked = Counter(text for text in safety if text.startswith("☐"))
        assert not [text for text, times in ticked.items() if times > 1], name
        if house_section(Letter(quote, language), short=True):
            assert sum(len(sheet.pictures) for sheet in book.sheets if sheet.name.endswith(f" {option.letter}")) == 2, (
                name
            )


def test_the_books_counted_are_many_and_whole() -> None:
    found = [book for path in JOBS[:8] for *_, book in books(path)]
    whole = [book for book in found if len(book.sheets) > 1]
    assert len(whole) > 20 and {len(book.sheets) for book in whole} == {MOST_PAGES - 1, MOST_PAGES}
