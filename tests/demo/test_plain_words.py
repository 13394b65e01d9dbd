"""Every sentence the demo's homeowner is shown, in both languages: short, and in the words of the trade.

The demo's tables and notes make papers with four ways of repair, a foundation lift, failed tests and an insurer.
"""

from collections import Counter
from dataclasses import replace
from pathlib import Path
from statistics import mean

import pytest

from estimator import demo
from estimator.cli.priced_job import priced
from estimator.model.offer import Quote
from estimator.papers import option_words
from estimator.papers.budget_letter import budget_letter
from estimator.papers.homeowner import homeowner
from estimator.papers.insurer_page import insurer_page
from estimator.papers.letter import Letter
from estimator.papers.reports import inspection_report, water_test_report
from estimator.papers.stop_notice import stop_notice
from estimator.sheets.book import Book, Sheet
from tests.wording.plain_english import LONGEST, MEAN, NEVER, NEVER_IN_SPANISH, sentences, words

MAKES = (homeowner, inspection_report, water_test_report, insurer_page, budget_letter, stop_notice)
PHRASE = 4
"""Fewer words than this are a label, not a sentence."""
LONG = 60
"""Characters; a longer sentence is read once."""


@pytest.fixture(scope="module", name="quote")
def _quote() -> Quote:
    quote = priced(Path(demo.__file__).parent / "job.toml", None).quote
    customer = replace(quote.job.customer, insurer="Fernbrook Mutual (invented)", policy="HO-3318")
    return replace(quote, job=replace(quote.job, customer=customer))


def shown(quote: Quote, language: str) -> dict[str, str]:
    """Return each sentence with the paper it stands on; what the law says is quoted and not counted."""
    found: dict[str, str] = {}
    for make in MAKES:
        for text in texts(make(quote, language)):
            found |= {one: make.__name__ for part in text.split("\n") for one in sentences(part)}
    return found


def texts(book: Book) -> list[str]:
    ours = [sheet for sheet in book.sheets if "I HEREBY CANCEL" not in whole(sheet) and "CANCELO" not in whole(sheet)]
    cells = [cell for sheet in ours for row in sheet.rows for cell in row.cells]
    return [cell.value for cell in cells if isinstance(cell.value, str) and cell.style != "cancel"]


def whole(sheet: Sheet) -> str:
    return "\n".join(str(cell.value) for row in sheet.rows for cell in row.cells)


@pytest.mark.parametrize("language", ["en_US", "es_US"])
def test_sentences_are_short(quote: Quote, language: str) -> None:
    counts = {one: words(one) for one in shown(quote, language)}
    assert len(counts) > 300
    longest = LONGEST if language == "en_US" else LONGEST + 8
    assert {one: count for one, count in counts.items() if count > longest} == {}
    assert mean(count for count in counts.values() if count >= PHRASE) <= MEAN


def test_no_word_of_no_contractor(quote: Quote) -> None:
    assert {one: hit[0] for one in shown(quote, "en_US") if (hit := NEVER.search(one))} == {}


def test_one_spanish_word_for_one_thing(quote: Quote) -> None:
    assert {one: hit[0] for one in shown(quote, "es_US") if (hit := NEVER_IN_SPANISH.search(one))} == {}


@pytest.mark.parametrize("language", ["en_US", "es_US"])
def test_no_long_sentence_stands_twice(quote: Quote, language: str) -> None:
    """Figures apart: the same feet may be the scope of two options, and a title names its option wherever it stands."""
    letter = Letter(quote, language)
    titles = {option_words.title(letter, option) for option in quote.options}
    said = Counter(one for text in texts(homeowner(quote, language)) if text not in titles for one in sentences(text))
    without_figures = (one for one, count in said.items() if count > 1 and not any(c.isdigit() for c in one))
    assert [one for one in without_figures if len(one) > LONG] == []
