"""A Quote in, the page of facts an insurer asks for out: what failed, feet, the price by class for each way. No word on coverage."""

from decimal import Decimal

from estimator.model.offer import Option, Quote
from estimator.papers import option_words
from estimator.papers.letter import Letter
from estimator.papers.page import Page, at, sum_of
from estimator.sheets.book import Book, Cell
from estimator.wording.numbers import long_date
from estimator.wording.plain import CLASSES

LABEL_WIDTH, ALL_WIDTH, MOST = 34.0, 94.0, 4


def insurer_page(quote: Quote, language: str) -> Book:
    """Facts first, then every way of reaching the same pipe by class."""
    letter = Letter(quote, language)
    speak, customer = letter.speak, quote.job.customer
    options = quote.options[:MOST]
    width = round((ALL_WIDTH - LABEL_WIDTH) / max(1, len(options)), 1)
    page = Page(speak("For the insurer"), (LABEL_WIDTH, *(width for _ in options or (0,))))
    letter.head(page)
    page.line(speak("Facts for the insurer"), "title")
    for label, value in (
        (speak("House"), customer.site), (speak("Owner"), customer.name), (speak("Insurer"), customer.insurer),
        (speak("Policy"), customer.policy), (speak("Claim"), customer.claim), (speak("Date"), long_date(quote.day, language)),
        (speak("Filmed and found by"), f"{quote.job.prepared_by}, {quote.firm.name}"),
    ):  # fmt: skip
        page.pair(label, value or speak("not given"))
    page.listing(speak("What was tested and filmed"), letter.all((*quote.seen, *quote.tests)))
    page.listing(speak("What failed, and where"), letter.all(f.text for f in quote.found))
    if options:
        _by_class(letter, page, options)
    page.line(speak("Facts only. Whether any of it is paid is for the policy and the insurer."), "quiet")
    return Book(
        title=f"{page.name} {letter.number}", day=quote.day, accent=quote.firm.accent, sheets=(letter.close(page),)
    )


def _by_class(letter: Letter, page: Page, options: tuple[Option, ...]) -> None:
    speak = letter.speak
    page.heading(speak("The price by class, for each way of reaching the pipe"))
    page.add(Cell("", "head"), *(Cell(option_words.title(letter, o), "option") for o in options))
    page.add(Cell(speak("What is done"), "label"), *(Cell("\n".join(letter.all(o.does)), "value") for o in options))
    rows = [
        page.add(Cell(letter.say(text), "cell"), *(Cell(class_price(o, name), "money") for o in options))
        for name, text in CLASSES.items()
    ]
    more = [o.price.added for o in options]
    if any(more):
        cells = (Cell(amount, "money") for amount in more)
        rows.append(page.add(Cell(speak("Added by the homeowner, beside the repair"), "cell"), *cells))
    whole = (sum((class_price(o, name) for name in CLASSES), o.price.added) for o in options)
    rest = [o.price.total - amount for o, amount in zip(options, whole, strict=True)]
    if any(rest):
        rows.append(page.add(Cell(speak("Discounts and sales tax"), "cell"), *(Cell(r, "money") for r in rest)))
    totals = (sum_of([f"{at(i, rows[0])}:{at(i, rows[-1])}"], o.price.total) for i, o in enumerate(options, start=1))
    page.add(Cell(speak("Total"), "total words"), *(Cell(total, "total") for total in totals))
    page.add(
        Cell(speak("To others, about"), "label"), *(Cell(option_words.to_others(letter, o), "value") for o in options)
    )
    page.gap()


def class_price(option: Option, name: str) -> Decimal:
    """What of the repair itself belongs to a class; what the homeowner added stands apart."""
    lines = (line for line in option.price.lines if not line.is_added)
    return sum((line.amount for line in lines if line.work_class == name), Decimal(0))
