"""One option on a page: scope, line items, total, unit prices with limits, days, what is included and not. Three columns."""

from decimal import Decimal

from estimator.model.offer import Option
from estimator.model.say import Say
from estimator.papers import option_words
from estimator.papers.day_bars import day_bars
from estimator.papers.letter import Letter
from estimator.papers.lift import days_apart
from estimator.papers.line_items import by_class, how_much
from estimator.papers.option_terms import common_prices, shared, terms_of, unit_prices
from estimator.papers.page import Page, at, run_in, sum_of
from estimator.quote.recommend import only_prepares
from estimator.sheets.book import Cell, Sheet
from estimator.wording.say import capital

WIDTHS = (61.0, 20.0, 13.0)
AMOUNT = 2
LONG_TABLE = 40
"""Line items; a longer table has its head on every page."""


def option_name(letter: Letter, option: Option) -> str:
    """The tab's name."""
    return letter.speak("Option {letter}", letter=option.letter)


def option_sheet(letter: Letter, option: Option) -> Sheet:
    """The page of one option."""
    page = Page(option_name(letter, option), WIDTHS)
    letter.not_an_offer(page)
    page.line(option_words.title(letter, option), "option")
    _scope(letter, page, option)
    if not option.fixed:
        page.line(option_words.at_most(letter, option), "box")
    head = len(page.rows) + 1
    total = _work(letter, page, option)
    long = len(page.rows) - head > LONG_TABLE
    _extras(letter, page, option, total)
    _days(letter, page, option)
    _terms(letter, page, option)
    return letter.close(page, repeat=(head, head) if long else None)


def _scope(letter: Letter, page: Page, option: Option) -> None:
    """A row for each repair: what it does to which line, and from where to where; then the floors."""
    for does in option.does:
        parts = dict(does.words)
        match parts.get("work"), parts.get("ends"):
            case Say() as work, Say() as ends:
                page.table_row(Cell(letter.all([work])[0], "small"), Cell(letter.say(ends), "small", 2))
            case _:
                page.line(letter.all([does])[0], "small")
    if floors := _floors(letter, option):
        page.line(capital(floors), "small")


def _floors(letter: Letter, option: Option) -> str:
    """Which floors the works cut, in a sentence; nothing of an option that only looks."""
    if only_prepares(option):
        return ""
    said = option_words.floors(letter, option)
    return letter.speak("Floors cut: {floors}.", floors=said) if option_words.cuts_floor(option) else f"{said}."


def _work(letter: Letter, page: Page, option: Option) -> str:
    """The line items in the order of the work; the address of the total. A price that is not firm is rounded in no cell and called so."""
    speak = letter.speak
    page.gap(2)
    page.add(Cell(speak("Work"), "head"), Cell(speak("Quantity"), "head"), Cell(speak("Amount"), "head right"))
    first = len(page.rows)
    for items in by_class(letter, option):
        for line, text in items:
            page.add(Cell(text, "cell"), Cell(how_much(letter, line), "cell"), Cell(line.amount, "money"))
    return _totals(letter, page, option, f"{at(AMOUNT, first)}:{at(AMOUNT, len(page.rows) - 1)}")


def _totals(letter: Letter, page: Page, option: Option, cells: str) -> str:
    speak, price = letter.speak, option.price
    words = speak("Total") if option.fixed else speak("Estimate, not firm")
    if not price.tax:
        return at(AMOUNT, page.add(Cell(words, "total words", 2), Cell(sum_of([cells], price.total), "total")))
    lines = sum((line.amount for line in price.lines), Decimal(0))
    subtotal = page.add(Cell(speak("Subtotal"), "sum words", 2), Cell(sum_of([cells], lines), "sum"))
    says = "; ".join(map(letter.say, price.tax_says)) or speak("Sales tax")
    tax = page.add(Cell(says, "cell", 2), Cell(price.tax, "money"))
    both = [at(AMOUNT, subtotal), at(AMOUNT, tax)]
    return at(AMOUNT, page.add(Cell(words, "total words", 2), Cell(sum_of(both, price.total), "total")))


def _extras(letter: Letter, page: Page, option: Option, total: str) -> None:
    """Unit prices with the limit of each, and the most the price can come to."""
    speak = letter.speak
    if not option.extras:
        page.line(speak("We add nothing without a signed change order."))
        return
    common = common_prices(letter)
    run_in(page, speak("Unit prices"), [text for text in unit_prices(letter, option) if text not in common])
    if option.fixed:
        caps = sum((extra.cap_amount for extra in option.extras), option.extras_tax)
        words = (
            speak("All unit prices at their limits, with sales tax")
            if option.extras_tax
            else speak("All unit prices at their limits")
        )
        row = page.add(Cell(words, "cell", 2), Cell(caps, "money"))
        most = speak("Not to exceed without a signed change order")
        page.add(Cell(most, "total words", 2), Cell(sum_of([total, at(AMOUNT, row)], option.most), "total"))


def _days(letter: Letter, page: Page, option: Option) -> None:
    """The schedule as a picture where there is one, else in words; what comes before the first day."""
    drawn, speak = day_bars(letter, option.schedule), letter.speak
    texts = option_words.day_texts(letter, option)
    if not drawn and not texts:
        return
    days, off = (option_words.in_days(letter, d) for d in (option.days_on_site, option.days_without_drains))
    page.heading(speak("Schedule: {days}, {off} without drains", days=days, off=off), starts=True)
    before, words = option.schedule.lead_days, []
    if before:
        words.append(speak("Earliest start: {count} working days after you sign.", count=before))
    if heap := max((t.value("pile_sf") for t in option.takeoffs), default=0.0):
        words.append(speak("Dirt pile on a tarp: about {area}.", area=option_words.area(letter, heap)))
    if len(letter.quote.options) == 1 and days_apart(letter):
        words.append(days_apart(letter))
    if words:
        page.line(" ".join(words))
    if drawn:
        data, height, alt = drawn
        page.drawing(data, alt, height)
    else:
        for text in texts:
            page.line(text)


def _terms(letter: Letter, page: Page, option: Option) -> None:
    """What holds for this option alone; what several options have in common stands once, in the agreement."""
    speak, quote = letter.speak, letter.quote
    common = {label: {text for text, _ in texts} for label, texts in shared(letter).items()}
    heading = (
        speak("Terms, with those on the page {tab}", tab=speak("Agreement")) if any(common.values()) else speak("Terms")
    )
    page.heading(heading, starts=True)
    own = {
        label: [t for t in texts if t not in common.get(label, ())] for label, texts in terms_of(letter, option).items()
    }
    own[speak("Warranty")].insert(0, option_words.warranty(letter, option))
    if len(quote.options) == 1:
        own |= {label: [answer] for label, answer in option_words.rows_alone(letter, option)}
    for label, texts in own.items():
        run_in(page, label, texts)
