"""Step 7: a Quote in, the office's book out: hours, costs, build-up with inputs to try, rules, questions, money."""

from estimator.model.offer import Quote
from estimator.papers.office_front import front
from estimator.papers.office_money import insurer, money
from estimator.papers.office_option import cost_sheet, hours_sheet
from estimator.papers.office_quantities import quantities
from estimator.papers.office_range import range_sheet
from estimator.papers.office_rules import rules
from estimator.papers.office_ways import ways_sheet
from estimator.sheets.book import Book
from estimator.tables.tables import Tables


def office(quote: Quote, tables: Tables | None = None) -> Book:
    """Everything the program knows of the quote. With the tables the build-up recalculates by itself to the same cent.

    >>> from estimator.papers.example import example_quote
    >>> [sheet.name for sheet in office(example_quote()).sheets][:3]
    ['INTERNAL', 'Costs A', 'Costs B']
    """
    return Book(
        title=f"INTERNAL {quote.job.number} r{quote.revision}",
        day=quote.day,
        accent=quote.firm.accent,
        sheets=(
            front(quote),
            *(cost_sheet(quote, option, tables) for option in quote.options),
            *(hours_sheet(quote, option) for option in quote.options),
            range_sheet(quote),
            *([ways_sheet(quote.ways, quote.job.number)] if quote.ways else []),
            quantities(quote),
            rules(quote),
            insurer(quote),
            money(quote),
        ),
    )
