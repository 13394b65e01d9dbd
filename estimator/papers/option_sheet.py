"""One option on a page: scope, line items, total, unit prices with limits, days, what is included and not. Three columns."""

from decimal import Decimal

from estimator.model.offer import Option
from estimator.model.say import Say
from estimator.papers import option_words
from estimator.papers.day_bars import day_bars
from estimator.papers.letter import Letter
from estimator.papers.lift import days_apart
from estimator.papers.line_items import by_class, how_much
from estimator.papers.option_terms import own_terms
from estimator.papers.page import Page, at, run_in, sum_of
from estimator.quote.recommend import is_visit
from estimator.sheets.book import Cell, Sheet
from estimator.sheets.write import pages_of

WIDTHS = (61.0, 20.0, 13.0)
AMOUNT = 2
LONG_TABLE = 40
"""Line items; a longer table has its head on every page."""


def option_name(letter: Letter, *options: Option) -> str:
    """The tab's name."""
    return letter.speak("Option {letter}", letter=", ".join(option.letter for option in options))


def option_sheets(letter: Letter) -> tuple[Sheet, ...]:
    """A page for each option, in the order of the letters; a visit stands beside an option whose price it makes firm, where both fit one page."""
    options = letter.quote.options
    pages = {option.letter: _sheet(letter, (option,)) for option in options}
    for visit in options:
        waiting = [option for option in options if option.firm_after == visit.letter]
        nearest = sorted(waiting, key=lambda option: (option.letter > visit.letter, -ord(option.letter[0])))
        for host in nearest:
            both = _sheet(letter, tuple(sorted((host, visit), key=lambda option: option.letter)))
            if host.letter in pages and pages_of(both) == 1:
                del pages[host.letter], pages[visit.letter]
                pages[min(host.letter, visit.letter)] = both
                break
    return tuple(pages[name] for name in sorted(pages))


def _sheet(letter: Letter, options: tuple[Option, ...]) -> Sheet:
    """The page of one option, with the visits that come before it."""
    page = Page(option_name(letter, *options), WIDTHS)
    letter.not_an_offer(page)
    repeats = [_option(letter, page, option) for option in options]
    return letter.close(page, repeat=next(filter(None, repeats), None))


def _option(letter: Letter, page: Page, option: Option) -> tuple[int, int] | None:
    """The option from its title to its terms; return the row of the table's head where a long table repeats it."""
    if page.rows:
        page.gap()
    page.line(option_words.title(letter, option), "option", starts=True)
    _scope(letter, page, option)
    if not option.fixed:
        page.line(option_words.not_firm(letter, option), "box")
    head = len(page.rows) + 1
    total = _work(letter, page, option)
    long = len(page.rows) - head > LONG_TABLE
    own = own_terms(letter, option)
    _extras(letter, page, option, total, own.pop(letter.speak("Unit prices")))
    _days(letter, page, option)
    _terms(letter, page, option, own)
    return (head, head) if long else None


def _scope(letter: Letter, page: Page, option: Option) -> None:
    """A row for each repair: what it does to which line, and from where to where; then the floors."""
    for does in option.does:
        parts = dict(does.words)
        match parts.get("work"), parts.get("ends"):
            case Say() as work, Say() as ends:
                page.table_row(Cell(letter.all([work])[0], "small"), Cell(letter.say(ends), "small", 2))
            case _:
                page.line(letter.all([does])[0], "small")
    if option_words.cuts_floor(option):
        run_in(page, letter.speak("Floors cut"), [option_words.floors(letter, option)])
    elif option.works.openings:
        page.line(letter.speak("No floor is cut."), "small")


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


def _extras(letter: Letter, page: Page, option: Option, total: str, own: list[str]) -> None:
    """The unit prices of this option alone with the limit of each, and the most the price can come to."""
    speak = letter.speak
    if not option.extras:
        page.line(speak("We add nothing without a signed change order."))
        return
    run_in(page, speak("Unit prices"), own)
    if option.fixed:
        caps = sum((extra.cap_amount for extra in option.extras), option.extras_tax)
        words = speak("All unit prices at their limits")
        taxed = f"{words} ({speak('with sales tax')})" if option.extras_tax else words
        row = page.add(Cell(taxed, "cell", 2), Cell(caps, "money"))
        most = speak("Not to exceed without a signed change order")
        page.add(Cell(most, "total words", 2), Cell(sum_of([total, at(AMOUNT, row)], option.most), "total"))


def _days(letter: Letter, page: Page, option: Option) -> None:
    """The schedule as a picture where it is longer than a day, else in words; what comes before the first day."""
    if not option.schedule.tasks:
        return
    drawn, speak = day_bars(letter, option.schedule) if option.days_on_site > 1 else None, letter.speak
    length, before = option_words.length_of_work(letter, option), option.schedule.lead_days
    heap = max((t.value("pile_sf") for t in option.takeoffs), default=0.0)
    start = speak("Earliest start: {count} working days after you sign.", count=before) if before else ""
    pile = speak("Dirt pile on a tarp: about {area}.", area=option_words.area(letter, heap)) if heap else ""
    apart = days_apart(letter, option) if len(letter.quote.options) == 1 else ""
    texts = list(filter(None, (start, pile, apart)))
    if drawn is None:
        run_in(page, speak("Schedule"), [length, *texts])
        return
    page.heading(f"{speak('Schedule')}: {length}", starts=True)
    if texts:
        page.line(" ".join(texts))
    data, height, alt = drawn
    page.drawing(data, alt, height)


def _terms(letter: Letter, page: Page, option: Option, own: dict[str, list[str]]) -> None:
    """What holds for this option alone; what several options have in common stands once, in the agreement."""
    speak = letter.speak
    own[speak("Warranty")].insert(0, option_words.warranty(letter, option))
    if len(letter.quote.options) == 1:
        page.heading(speak("Terms"), starts=True)
        own |= {label: [answer] for label, answer in option_words.rows_alone(letter, option)}
    elif not is_visit(option):
        page.heading(speak("Terms (also: {tab})", tab=speak("Agreement")), starts=True)
    for label, texts in own.items():
        run_in(page, label, texts)
