"""The office's first sheet: options with price, cost and margin, where the money goes, what a person must still look at."""

from decimal import Decimal

from estimator.model.money import cents
from estimator.model.offer import Option, Quote
from estimator.papers.check_code import check_code
from estimator.papers.inside import close, inside_page, table
from estimator.papers.next_visit import for_the_office
from estimator.papers.page import Page
from estimator.pricing.likely_range import too_little
from estimator.sheets.book import Cell, Chart, Series, Sheet

WIDTHS = (30.0, 13.0, 13.0, 13.0, 10.0, 10.0, 13.0)
PARTS = ("labor", "overhead", "material", "small parts", "tax", "equipment", "sub", "fee")
CHECK_THE_PLACE = "Tax, deposit, days to cancel and code limits of the place: check with your accountant, lawyer or building department."
SHADES = ("1F5D57", "C07A2C", "6B7A8F", "A94A4A", "8A9A5B", "4F6D9A", "B59FC0", "444444")


def front(quote: Quote) -> Sheet:
    """Summary of all options."""
    page = inside_page("INTERNAL", WIDTHS, f"{quote.job.number} r{quote.revision}: {quote.job.customer.site}")
    for label, value in (
        ("Customer", quote.job.customer.name),
        ("Place", quote.place),
        ("Day, good until", f"{quote.day.isoformat()}, {quote.valid_until.isoformat()}"),
        ("Prices of", quote.price_day.isoformat()),
        ("Prepared by", quote.job.prepared_by),
        ("Check code", check_code(quote)),
        ("Price tables", quote.tables_fingerprint or "no fingerprint"),
    ):
        page.pair(label, value)
    if quote.invented:
        page.line("DEMO, no offer: " + "; ".join(map(str, quote.invented)) + ".", "box")
    page.line(CHECK_THE_PLACE, "quiet")
    page.gap()
    heads = ("Option", "Price", "Cost", "Left over", "Margin", "Crew days", "Left a crew-day")
    table(page, heads, (_option(option) for option in quote.options), 1)
    page.line(CREW_DAYS, "quiet")
    _where_it_goes(quote, page)
    _look_at(quote, page)
    return close(page, f"INTERNAL {quote.job.number}")


CREW_DAYS = (
    "Crew days: the days of every crew added up, set-up included, to the half day. Two crews on one day are two crew days; "
    "the days on site that the homeowner reads are days of the calendar on which anybody works. Left a crew-day: what is left "
    "over ÷ crew days. Where crews are what you are short of, it ranks jobs better than the margin does."
)


def cost_of(option: Option) -> Decimal:
    """All cost lines, passed on ones too, and what allowances and chosen add-ons cost beside them."""
    return sum((cost.amount for cost in option.price.costs), Decimal(0)) + option.price.cost_beside


def _option(option: Option) -> tuple[Cell, ...]:
    price, cost = option.price, cost_of(option)
    net = price.total - price.tax
    left = net - cost
    return (
        Cell(f"{option.letter}  {option.name or option.title}", "cell bold"),
        Cell(price.total, "money"),
        Cell(cost, "money"),
        Cell(left, "money"),
        Cell(left / net if net else Decimal(0), "percent"),
        Cell(price.days, "number"),
        Cell(cents(left / price.days) if price.days else "", "money"),
    )


def _where_it_goes(quote: Quote, page: Page) -> None:
    """Cost by part, and what is left over, an option a bar."""
    page.heading("Where the money goes")
    top = page.add(Cell("", "head"), *(Cell(o.letter, "head right") for o in quote.options[: len(WIDTHS) - 1]))
    shown = quote.options[: len(WIDTHS) - 1]
    rows = []
    for part in PARTS:
        sums = [sum((c.amount for c in o.price.costs if c.part == part), Decimal(0)) for o in shown]
        if any(sums):
            rows.append(page.add(Cell(part, "cell"), *(Cell(s, "money") for s in sums)))
    if any(o.price.cost_beside for o in shown):
        cells = (Cell(o.price.cost_beside, "money") for o in shown)
        rows.append(page.add(Cell("allowances, add-ons, commission, fees", "cell"), *cells))
    rows.append(
        page.add(Cell("left over", "cell"), *(Cell(o.price.total - o.price.tax - cost_of(o), "money") for o in shown))
    )
    page.gap()
    last = len(shown)
    series = tuple(
        Series(
            name=str(page.rows[row].cells[0].value),
            colour=SHADES[i % len(SHADES)],
            categories=(top, 1, top, last),
            values=(row, 1, row, last),
        )
        for i, row in enumerate(rows)
    )
    alt = "Bars, one an option, of what its price is made of: " + ", ".join(s.name for s in series)
    page.chart(
        Chart(
            kind="stacked bar",
            title="What each price is made of",
            alt=alt,
            series=series,
            row=0,
            height_px=240,
            width_px=620,
            number_format="$#,##0",
        )
    )


def _look_at(quote: Quote, page: Page) -> None:
    """What a person must look at before the quote is sent; what is missing from a price stands in red."""
    page.listing("Look at before sending", [*_missing(quote), *_too_little(quote)], style="red")
    missing = {str(w) for o in quote.options for w in o.price.warnings}
    others = [str(w) for w in quote.paper_warnings if str(w) not in missing]
    lifts = [f"{o.letter}: {w}" for o in quote.options for w in o.price.lifts]
    page.listing("Worth a look", [*others, *dict.fromkeys(lifts)])
    unfixed = [f"{o.letter}: {say}" for o in quote.options for say in o.not_fixed_because]
    page.listing("Not a fixed price, because", unfixed)
    page.listing("To find out on a return visit", list(map(str, for_the_office(quote.diagnosis.questions))))
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
    return [problem.wrong for problem in found if problem]


def _missing(quote: Quote) -> list[str]:
    """Each warning of the prices once, with the letters of the options it is about."""
    letters: dict[str, list[str]] = {}
    for option in quote.options:
        for warning in dict.fromkeys(map(str, option.price.warnings)):
            letters.setdefault(warning, []).append(option.letter)
    return [f"{', '.join(about)}: {warning}" for warning, about in letters.items()]
