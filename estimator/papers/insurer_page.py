"""A Quote in, the summary an insurer asks for out: what failed, tests with dates, price by phase of work. No word on coverage."""

from collections.abc import Mapping
from decimal import Decimal

from estimator.model.found import Found
from estimator.model.offer import Option, Quote
from estimator.papers import option_words
from estimator.papers.letter import Letter
from estimator.papers.page import Page, at, sum_of
from estimator.papers.still_pairs import still_pairs
from estimator.sheets.book import Book, Cell
from estimator.wording.numbers import long_date
from estimator.wording.plain import CLASSES
from estimator.wording.say import capital

LABEL_WIDTH, ALL_WIDTH, MOST = 26.0, 94.0, 4


def insurer_page(quote: Quote, language: str, pictures: Mapping[str, bytes] | None = None) -> Book:
    """Facts first, then each option by phase of work, then the stills. What was not seen for certain stands apart."""
    letter = Letter(quote, language, pictures or {})
    speak, customer = letter.speak, quote.job.customer
    options = quote.options[:MOST]
    width = round((ALL_WIDTH - LABEL_WIDTH) / max(1, len(options)), 1)
    page = Page(speak("For the insurer"), (LABEL_WIDTH, *(width for _ in options or (0,))))
    letter.head(page)
    page.line(speak("Insurance summary"), "title")
    for label, value in (
        (speak("House"), customer.site), (speak("Owner"), customer.name), (speak("Insurer"), customer.insurer),
        (speak("Policy"), customer.policy), (speak("Claim number"), customer.claim or speak("not yet given")), (speak("Adjuster"), customer.adjuster or speak("not yet given")), (speak("Report date"), long_date(quote.day, language)),
        (speak("Inspected on"), long_date(quote.job.inspected_on or quote.job.day, language)), (speak("Inspected by"), f"{quote.job.prepared_by}, {quote.firm.name}"),
    ):  # fmt: skip
        page.pair(label, value or speak("not given"))
    page.listing(speak("What we inspected and tested"), [*letter.all(quote.seen), *_tests(letter)])
    failed = [found for found in quote.found if _seen(found) and found.act == "now"]
    for heading, those in (
        (speak("What failed, and where"), failed),
        (speak("Seen, not failed"), [f for f in quote.found if _seen(f) and f.act != "now"]),
        (speak("Possible, not confirmed"), [f for f in quote.found if not _seen(f)]),
    ):
        page.listing(heading, [f"{found.letter}  {capital(letter.say(found.text))}" for found in those], mark="")
    page.listing(speak("Not seen"), letter.all(quote.not_seen))
    page.pair(speak("Cause"), speak("not determined by us"))
    if options:
        _by_class(letter, page, options)
    page.line(speak("The letters are those of the quote. We do not say what the policy pays."), "quiet")
    still_pairs(letter, page, failed)
    return Book(
        title=f"{page.name} {letter.number}", day=quote.day, accent=quote.firm.accent, sheets=(letter.close(page),)
    )


def _by_class(letter: Letter, page: Page, options: tuple[Option, ...]) -> None:
    speak = letter.speak
    page.heading(speak("Price of each option by phase of work"))
    page.add(Cell("", "head"), *(Cell(option_words.title(letter, o), "option") for o in options))
    page.add(Cell(speak("Scope of work"), "label"), *(Cell("\n".join(letter.all(o.does)), "value") for o in options))
    rows = [
        page.add(Cell(letter.say(text), "cell"), *(Cell(class_price(o, name), "money") for o in options))
        for name, text in CLASSES.items()
    ]
    more = [o.price.added for o in options]
    if any(more):
        cells = (Cell(amount, "money") for amount in more)
        rows.append(page.add(Cell(speak("Optional add-ons"), "cell"), *cells))
    whole = (sum((class_price(o, name) for name in CLASSES), o.price.added) for o in options)
    rest = [o.price.total - amount for o, amount in zip(options, whole, strict=True)]
    if any(rest):
        rows.append(page.add(Cell(speak("Discounts and sales tax"), "cell"), *(Cell(r, "money") for r in rest)))
    totals = (sum_of([f"{at(i, rows[0])}:{at(i, rows[-1])}"], o.price.total) for i, o in enumerate(options, start=1))
    page.add(Cell(speak("Total"), "total words"), *(Cell(total, "total") for total in totals))
    if not all(o.fixed for o in options):
        firm = {True: speak("fixed price"), False: speak("estimate, not a fixed price")}
        page.add(Cell("", "label"), *(Cell(firm[o.fixed], "value") for o in options))
    page.add(
        Cell(speak("Other costs not in our price"), "label"),
        *(Cell(option_words.to_others(letter, o), "value") for o in options),
    )
    page.gap()


def _seen(found: Found) -> bool:
    """The camera saw it for certain, or a water test failed: no more than that has failed."""
    return not found.findings or any(finding.grade == "seen" for finding in found.findings)


def _tests(letter: Letter) -> list[str]:
    """Each test in words, with its date."""
    tests = letter.quote.job.water_tests
    days = [long_date(t.date, letter.language) if t.date else letter.speak("date not given") for t in tests]
    return [f"{text} ({day})" for text, day in zip(letter.all(letter.quote.tests), days, strict=False)]


def class_price(option: Option, name: str) -> Decimal:
    """What of the repair itself belongs to a class; what the homeowner added stands apart."""
    lines = (line for line in option.price.lines if not line.is_added)
    return sum((line.amount for line in lines if line.work_class == name), Decimal(0))
