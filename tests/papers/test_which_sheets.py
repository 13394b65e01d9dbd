"""Which sheets each paper of a plain quote has, in their order, and what its short papers say."""

from decimal import Decimal

from estimator.papers.budget_letter import figures
from estimator.papers.crew import crew
from estimator.papers.homeowner import homeowner
from estimator.papers.message import message
from estimator.papers.office import office, workings
from estimator.sheets.book import Book
from tests.made_up.quote import example_quote

QUOTE = example_quote()


def names(book: Book) -> list[str]:
    return [sheet.name for sheet in book.sheets]


def test_the_homeowner_starts_with_the_answer_the_pipe_and_the_options_side_by_side() -> None:
    assert names(homeowner(QUOTE, "en_US"))[:3] == ["Start here", "Your pipe", "Compare options"]


def test_the_office_has_a_page_that_answers_and_one_an_option_and_the_figures_behind_them_apart() -> None:
    assert names(office(QUOTE)) == ["INTERNAL", "Option A", "Option B"]
    assert names(workings(QUOTE))[:3] == ["Costs A", "Costs B", "Hours A"]


def test_the_crew_has_four_sheets_of_an_option_whose_load_list_fits_under_its_work() -> None:
    assert names(crew(QUOTE, letter="A")) == ["Safety", "Work A", "Drawing A", "Hours A"]


def test_the_message_says_what_is_attached_and_whom_to_ask() -> None:
    said = "Example only. The house and the prices are invented. Attached: A $16,525 · B $9,875. Questions: 555-0100"
    assert message(QUOTE, "en_US") == said


def test_the_budget_letter_runs_from_below_the_cheapest_to_above_the_dearest_price() -> None:
    assert figures(QUOTE) == (Decimal(9500), Decimal(18500))
