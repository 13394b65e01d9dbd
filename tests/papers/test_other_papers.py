"""The other papers of a job: reports without a price, a budget letter that is no offer, the insurer's facts, the message."""

import io
from dataclasses import replace
from datetime import date
from decimal import Decimal

import pytest
from openpyxl import load_workbook

from estimator.model.job import WaterTest
from estimator.model.offer import Quote
from estimator.model.say import Say
from estimator.papers.budget_letter import budget_letter, figures
from estimator.papers.insurer_page import insurer_page
from estimator.papers.message import LONGEST, message
from estimator.papers.reports import inspection_report, water_test_report
from estimator.sheets.book import Book
from estimator.sheets.write import write
from tests.made_up.quote import example_quote

LANGUAGES = ("en_US", "es_US")


def text(book: Book) -> str:
    read = load_workbook(io.BytesIO(write(book)), data_only=True)
    return "\n".join(str(c.value) for sheet in read for row in sheet.iter_rows() for c in row if c.value is not None)


def with_a_test() -> Quote:
    quote = example_quote()
    test = WaterTest(section="under slab", covers=("main",), not_in_test=("kitchen",), date=date(2026, 11, 18), plug="front cleanout",
                     readings=((0.0, 0.0), (5.0, 0.375), (20.0, 1.5)), held_at_in=9.0, witness="B. Lift Company")  # fmt: skip
    return replace(quote, job=replace(quote.job, water_tests=(test,)))


@pytest.mark.parametrize("language", LANGUAGES)
def test_the_reports_carry_no_price(language: str) -> None:
    for book in (water_test_report(with_a_test(), language), inspection_report(with_a_test(), language)):
        assert "$" not in text(book) and "16525" not in text(book)


def test_the_test_report_says_readings_and_what_was_not_in_the_test() -> None:
    shown = text(water_test_report(with_a_test(), "en_US"))
    for words in ("1½ in", "⅜ in", "kitchen", "Not in the test", "9 in below slab top", "front cleanout"):
        assert words in shown, words


def test_without_a_test_there_is_no_test_report() -> None:
    with pytest.raises(ValueError, match="no water test"):
        water_test_report(example_quote(), "en_US")


def test_a_clean_house_gets_a_report_that_says_so_and_what_was_not_seen() -> None:
    clean = replace(example_quote(), found=(), options=())
    shown = text(inspection_report(clean, "en_US"))
    assert "We found no damage in the pipe we inspected." in shown
    assert "The last 5 ft of the main were not seen." in shown


@pytest.mark.parametrize(("total", "low"), [("9999.99", "9500"), ("10000", "10000"), ("10499", "10000")])
def test_the_budget_s_low_figure_is_rounded_down_to_the_step(total: str, low: str) -> None:
    quote = example_quote()
    option = replace(quote.options[1], price=replace(quote.options[1].price, total=Decimal(total)))
    assert figures(replace(quote, options=(option,)))[0] == Decimal(low)


def test_the_budget_letter_is_no_offer_and_has_nothing_to_sign() -> None:
    quote = example_quote()
    loose = replace(
        quote.options[0], fixed=False, not_fixed_because=(Say.of("Roots beyond the dip are suspected, not seen."),)
    )
    shown = text(budget_letter(replace(quote, options=(loose, quote.options[1])), "en_US"))
    assert "Not an offer" in shown and "From about $9,500 to about $18,500." in shown
    assert "Name in print" not in shown
    assert "$16,525" not in shown


def test_the_insurer_reads_classes_that_sum_to_the_price_and_no_word_on_coverage() -> None:
    book = insurer_page(example_quote(), "en_US")
    shown = text(book)
    assert "Access and excavation" in shown and "9460" in shown and "16525" in shown
    assert "covered by" not in shown


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("count", [1, 2, 26])
def test_the_message_fits_one_text_message(language: str, count: int) -> None:
    quote = example_quote()
    options = tuple(replace(quote.options[i % 2], letter=chr(65 + i)) for i in range(count))
    said = message(replace(quote, options=options), language)
    assert len(said) < LONGEST
    assert "$9,875" in said or count == 1


def test_the_test_report_says_how_high_it_was_filled_only_where_the_notes_do() -> None:
    quote = with_a_test()
    silent = replace(quote.job.water_tests[0], level="")
    shown = text(water_test_report(replace(quote, job=replace(quote.job, water_tests=(silent,))), "en_US"))
    assert "Filled to" not in shown and "slab top" not in shown
    assert "9 in below the level filled" in shown
