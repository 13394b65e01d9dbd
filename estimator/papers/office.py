"""Step 7: a Quote in, the office's two books out: a few pages to print, and the workings behind every figure."""

from estimator.model.offer import Quote
from estimator.papers.office_front import front
from estimator.papers.office_money import insurer, money
from estimator.papers.office_option import cost_sheet, hours_sheet
from estimator.papers.office_page import option_page
from estimator.papers.office_quantities import quantities
from estimator.papers.office_range import range_sheet
from estimator.papers.office_rules import rules
from estimator.papers.office_ways import ways_sheet
from estimator.sheets.book import Book, Sheet
from estimator.tables.tables import Tables


def office(quote: Quote, tables: Tables | None = None) -> Book:
    """Return what the office prints: a page that answers, then one an option. With the tables it says who sells what."""
    return _book(quote, front(quote, tables), *(option_page(quote, option, tables) for option in quote.options))


def workings(quote: Quote, tables: Tables | None = None) -> Book:
    """Return everything behind the figures, to look up and to try; with the tables the build-up recalculates to the same cent."""
    return _book(
        quote,
        *(cost_sheet(quote, option, tables) for option in quote.options),
        *(hours_sheet(quote, option) for option in quote.options),
        range_sheet(quote),
        *([ways_sheet(quote.ways, quote.job)] if quote.ways else []),
        quantities(quote),
        rules(quote),
        insurer(quote),
        money(quote),
    )


def _book(quote: Quote, *sheets: Sheet) -> Book:
    return Book(
        title=f"INTERNAL {quote.job.number} r{quote.revision}", day=quote.day, accent=quote.firm.accent, sheets=sheets
    )
