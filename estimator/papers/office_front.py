"""The office's first page: options with price, cost and gross profit, what to look at, then what is needed of one of them."""

from estimator.model.offer import Option, Quote
from estimator.papers.check_code import check_code
from estimator.papers.crew import worked_on
from estimator.papers.inside import close, inside_page, table
from estimator.papers.letter import Letter
from estimator.papers.next_visit import for_the_office
from estimator.papers.office_page import due, what_to_buy, who_works_when
from estimator.papers.office_sums import sums_of
from estimator.papers.option_words import title
from estimator.papers.page import Page
from estimator.pricing.likely_range import too_little
from estimator.sheets.book import Cell, Sheet
from estimator.tables.tables import Tables
from estimator.wording.say import say

ENGLISH = "en_US"
WIDTHS = (32.0, 11.0, 11.0, 11.0, 11.0, 11.0, 9.0, 11.0)
CHECK_THE_PLACE = "Tax, deposit, days to cancel and code limits of the place: check with your accountant, lawyer or building department."


def front(quote: Quote, tables: Tables | None = None) -> Sheet:
    """Return the page that answers."""
    page = inside_page(
        "INTERNAL", WIDTHS, f"{quote.job.number} r{quote.revision}: {quote.job.customer.site}", job=quote.job
    )
    for label, value in (
        ("Customer · prepared by", f"{quote.job.customer.name} · {quote.job.prepared_by}"),
        ("Date · valid through · prices of", f"{quote.day.isoformat()} · {quote.valid_until.isoformat()} · {quote.price_day.isoformat()}"),
        ("Place · document ID · price-table version", f"{quote.place} · {check_code(quote)} · {quote.tables_fingerprint[:12] or 'none'}"),
    ):  # fmt: skip
        page.pair(label, value)
    if quote.invented:
        page.line("DEMO, no offer: " + "; ".join(say(one, ENGLISH) for one in quote.invented) + ".", "box")
    page.gap()
    _options(quote, page)
    _look_at(quote, page)
    if quote.options:
        _one(quote, page, tables)
    return close(page, f"INTERNAL {quote.job.number}")


def _options(quote: Quote, page: Page) -> None:
    """A row an option; the middle and the confidence are empty where no range was drawn."""
    drawn = next((o.likely_range for o in quote.options if o.likely_range), None)
    sure = f"Bad case, {drawn.confidence_percent:g}% stay under" if drawn else "Bad case"
    heads = ("Option", "Price", "Cost priced", "Likely cost", sure, "Gross profit", "Gross margin", "Per crew-day")
    table(page, heads, (_option(Letter(quote, ENGLISH), option) for option in quote.options), 1)
    page.line("Gross profit: price without tax less the likely cost, or the cost priced where there is none.", "quiet")


def _option(letter: Letter, option: Option) -> tuple[Cell, ...]:
    sums = sums_of(option)
    return (
        Cell(title(letter, option), "cell bold"),
        Cell(sums.price, "money"),
        Cell(sums.cost, "money"),
        Cell(sums.middle, "money"),
        Cell(sums.sure, "money"),
        Cell(sums.profit, "money"),
        Cell(sums.share, "percent"),
        Cell(sums.per_day, "money"),
    )


def _one(quote: Quote, page: Page, tables: Tables | None) -> None:
    """What to buy, who works and what falls due for the option recommended, else the first; the others have pages of their own."""
    option, letter = worked_on(quote), Letter(quote, ENGLISH)
    what_to_buy(letter, page, option, tables)
    who_works_when(letter, page, option)
    due(page, option)


def _look_at(quote: Quote, page: Page) -> None:
    """What a person must look at before the quote is sent; what is missing from a price stands in red."""
    page.listing("Look at before sending", [*_missing(quote), *_too_little(quote), CHECK_THE_PLACE], style="red")
    missing = {say(w, ENGLISH) for o in quote.options for w in o.price.warnings}
    others = [said for w in quote.paper_warnings if (said := say(w, ENGLISH)) not in missing]
    minimum = [f"{o.letter}: {say(w, ENGLISH)}" for o in quote.options for w in o.price.minimum_charges]
    page.listing("Worth a look", [*others, *dict.fromkeys(minimum)])
    unfixed = [f"{o.letter}: {say(why, ENGLISH)}" for o in quote.options for why in o.not_fixed_because]
    page.listing("Not a fixed price, because", unfixed)
    page.listing(
        "To find out on a return visit", [say(asked, ENGLISH) for asked in for_the_office(quote.diagnosis.questions)]
    )
    overruled = [
        f"{o.letter}: {x.what} {x.shown(x.ours)} → {x.shown(x.mine)}: {x.reason}"
        for o in quote.options
        for x in o.price.overruled
    ]
    page.listing("Set by hand: ours → mine, why", overruled)
    page.listing("Set by hand before this changed: look at it again", list(quote.own_numbers), style="red")


def _too_little(quote: Quote) -> list[str]:
    """Options whose contingency falls short of the firm's own confidence."""
    found = (too_little(o.letter, o.likely_range) for o in quote.options if o.likely_range)
    return [str(problem.wrong) for problem in found if problem]


def _missing(quote: Quote) -> list[str]:
    """Each warning of the prices once, with the letters of the options it is about."""
    letters: dict[str, list[str]] = {}
    for option in quote.options:
        for warning in dict.fromkeys(say(w, ENGLISH) for w in option.price.warnings):
            letters.setdefault(warning, []).append(option.letter)
    return [f"{', '.join(about)}: {warning}" for warning, about in letters.items()]
