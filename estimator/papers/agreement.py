"""One option as a page to sign: total in figures and words, milestone amounts, notices, lines for names and days.

Of options whose price is not fixed: one page that says why there is nothing to sign yet.
"""

from collections.abc import Sequence

from estimator.model.offer import Option
from estimator.papers import add_ons, option_words
from estimator.papers.care_sheet import care_name
from estimator.papers.check_code import check_code
from estimator.papers.letter import Letter
from estimator.papers.page import Page
from estimator.sheets.book import Cell, Sheet
from estimator.wording.in_words import in_words
from estimator.wording.numbers import listed, long_date

MOST_WORKS = 4  # sentences in rows of their own; more are one text, so that all is signed on one page
WIDTHS = (24.0, 24.0, 24.0, 24.0)


def agreements(letter: Letter) -> tuple[Sheet, ...]:
    """A page to sign for each option whose price is fixed, and one page for all the others."""
    options = letter.quote.options
    waiting = [option for option in options if not option.fixed]
    signed = (agreement(letter, option) for option in options if option.fixed)
    return (*signed, *([not_yet(letter, waiting)] if waiting else []))


def agreement(letter: Letter, option: Option) -> Sheet:
    """The agreement of one option whose price is fixed."""
    speak, quote = letter.speak, letter.quote
    page = Page(speak("Agreement {letter}", letter=option.letter), WIDTHS)
    letter.head(page)
    page.line(speak("Agreement for option {letter}", letter=option.letter), "title")
    page.pair(speak("Option"), option_words.title(letter, option), "value bold")
    page.pair(speak("Quote"), f"{letter.number}, {long_date(quote.day, letter.language)}")
    page.pair(speak("Check code"), check_code(quote))
    page.pair(speak("House"), quote.job.customer.site)
    page.pair(speak("Owner"), quote.job.customer.name)
    works = letter.all(option.does)
    for text in works if len(works) <= MOST_WORKS else [" ".join(works)]:
        page.pair(speak("Work"), text)
    add_ons.chosen(letter, page, option)
    page.gap()
    _money(letter, page, option)
    page.listing(speak("Notices of your city and state"), letter.terms((*option.terms, *quote.notices), "notice"))
    page.line(option_words.check_the_place(letter), "quiet")
    page.line(
        speak(
            "The sheet of this option says what is in the price and what is not; the sheet “{care}” says what to mind. Both belong to this agreement.",
            care=care_name(letter),
        )
    )
    letter.which_counts(page)
    page.gap(14)
    _cancel(letter, page)
    signatures(letter, page)
    return letter.close(page)


def not_yet(letter: Letter, options: Sequence[Option]) -> Sheet:
    """No total, no payments and no lines for signatures, so that nobody signs what may change."""
    speak, quote = letter.speak, letter.quote
    page = Page(speak("Not to sign yet"), WIDTHS)
    letter.head(page)
    page.line(_cannot(letter, options), "title")
    page.pair(speak("Quote"), f"{letter.number}, {long_date(quote.day, letter.language)}")
    page.pair(speak("House"), quote.job.customer.site)
    page.gap()
    for option in options:
        page.line(option_words.title(letter, option), "bold", starts=True)
        page.line(option_words.at_most(letter, option), "box")
    page.line(
        speak("Once this is confirmed we write you a new quote with a fixed price, and with an agreement to sign.")
    )
    return letter.close(page)


def _cannot(letter: Letter, options: Sequence[Option]) -> str:
    if len(options) == 1:
        return letter.speak("Option {letter} cannot be signed yet", letter=options[0].letter)
    letters = listed([option.letter for option in options], letter.language)
    return letter.speak("Options {letters} cannot be signed yet", letters=letters)


def _money(letter: Letter, page: Page, option: Option) -> None:
    speak = letter.speak
    page.heading(speak("The price"))
    page.add(Cell(speak("Total"), "total words", 3), Cell(option.price.total, "total"))
    page.line(in_words(option.price.total, letter.language))
    page.line(option_words.at_most(letter, option), "bold")
    for payment in option.payments:
        page.add(Cell(letter.say(payment.text), "cell", 3), Cell(payment.amount, "money"))
    add_ons.not_in_total(letter, page, option)
    page.gap()


def _cancel(letter: Letter, page: Page) -> None:
    """Beside the signatures, bold (16 CFR 429.1). The days count from the day of signing, so the boxes stay blank until then."""
    speak, count = letter.speak, letter.quote.cancel_business_days
    if not count:
        return
    page.line(
        speak(
            "You, the buyer, may cancel this agreement at any time before midnight of business day {count} after the day you sign it. The notice of cancellation that we hand you, twice, explains this right.",
            count=count,
        ),
        "cancel",
        starts=True,
    )
    page.add(
        Cell(speak("Last day to cancel"), "label"),
        Cell("", "write", open=True),
        Cell(speak("Form received"), "label"),
        Cell("", "write", open=True),
    )


def signatures(letter: Letter, page: Page) -> None:
    """Lines for the owner and the firm: signature, name in print, day."""
    speak = letter.speak
    for who in (speak("Owner"), letter.quote.firm.name):
        page.add(
            Cell("", "write", 2, open=True),
            Cell("", "write", 1, open=True),
            Cell("", "write", 1, open=True),
            height_pt=30.0,
            keep=True,
        )
        page.add(
            Cell(who, "quiet", 2),
            Cell(speak("Name in print"), "quiet"),
            Cell(speak("Day"), "quiet"),
            keep=who == speak("Owner"),
        )
