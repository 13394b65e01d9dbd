"""The sheet a homeowner sees first, on a phone: two columns, forty characters wide, options as blocks one under another."""

from dataclasses import replace

from estimator.model.offer import Option
from estimator.papers import option_words
from estimator.papers.letter import Letter
from estimator.papers.lift import lift_steps
from estimator.papers.page import Page
from estimator.sheets.book import Cell, Sheet
from estimator.wording.numbers import long_date

WIDTHS = (15.0, 25.0)
PRINT_SCALE = 80  # of the size on the screen: an option fits on a page
LONG = 60  # a longer answer stands below its label, over both columns: fewer lines to scroll past


def first_sheet(letter: Letter) -> Sheet:
    """What is broken, is it urgent, the options, what we would do, what is not offered, what to do next."""
    page = Page(letter.speak("Start here"), WIDTHS)
    letter.head(page)
    _who(letter, page)
    _wrong(letter, page)
    for option in letter.quote.options:
        _block(letter, page, option)
    _own_word(letter, page)
    lift_steps(letter, page)
    _not_offered(letter, page)
    _seen(letter, page)
    _next(letter, page)
    return letter.close(page, scale=PRINT_SCALE)


def _who(letter: Letter, page: Page) -> None:
    speak, quote = letter.speak, letter.quote
    page.line(speak("Quote for your drain"), "title")
    page.pair(speak("For"), quote.job.customer.name)
    page.pair(speak("House"), quote.job.customer.site)
    page.pair(speak("Number"), letter.number)
    page.pair(speak("Date"), long_date(quote.day, letter.language))
    page.pair(speak("Good until"), long_date(quote.valid_until, letter.language))
    page.gap()


def _wrong(letter: Letter, page: Page) -> None:
    speak, quote = letter.speak, letter.quote
    page.heading(speak("What is broken"))
    for text in letter.all(quote.found) or [speak("We found no damage in the pipe we inspected.")]:
        page.line(text)
    if quote.urgency:
        _answer(page, speak("Is it urgent?"), letter.say(quote.urgency))
    if quote.if_nothing:
        _answer(page, speak("If you do nothing"), letter.say(quote.if_nothing))
    if quote.if_cleaned:
        _answer(page, speak("If you only clean it"), letter.say(quote.if_cleaned))
    page.gap()


def _block(letter: Letter, page: Page, option: Option) -> None:
    speak = letter.speak
    page.line(option_words.title(letter, option), "option", starts=True)
    page.line(letter.say(option.under_title), "under")
    page.add(Cell(speak("Price"), "label"), Cell(option.price.total, "price"))
    for text in letter.all(option.does):
        page.line(text)
    for label, answer in option_words.rows_on_a_phone(letter, option):
        _answer(page, label, answer)
    for text in option_words.day_texts(letter, option):
        page.line(text, "quiet")
    page.gap(12)


def _answer(page: Page, label: str, answer: str) -> None:
    if len(answer) <= LONG:
        page.pair(label, answer)
        return
    row = page.line(label, "label over")
    page.rows[row] = replace(page.rows[row], keep=True)
    page.line(answer, "value")


def _own_word(letter: Letter, page: Page) -> None:
    speak, wishes = letter.speak, letter.quote.job.wishes
    if not wishes.recommend:
        return
    page.heading(speak("What I would do if it were my house, and why"), starts=True)
    page.line(f"{wishes.recommend}: {wishes.because}")
    page.line(wishes.by or letter.quote.job.prepared_by, "quiet")
    page.gap()


def _not_offered(letter: Letter, page: Page) -> None:
    if not letter.quote.blocked:
        return
    page.heading(letter.speak("What we do not offer, and why"), starts=True)
    for group in letter.quote.not_offered:
        page.line(letter.say(group.text))
    page.gap()


def _seen(letter: Letter, page: Page) -> None:
    speak, quote = letter.speak, letter.quote
    page.heading(speak("What we looked at"), starts=True)
    for text in letter.all((*quote.seen, *quote.tests)):
        page.line(text)
    if quote.not_seen:
        page.line(speak("What nobody has seen"), "bold")
        for text in letter.all(quote.not_seen):
            page.line(text)
    page.gap()


def _next(letter: Letter, page: Page) -> None:
    speak, quote = letter.speak, letter.quote
    page.heading(speak("What to do next"), starts=True)
    page.line(
        speak(
            "1. Read the sheet of the letter you like, and the one that says what to mind. 2. Lay other bids beside ours on the sheet made for it. 3. Sign the agreement of one letter, or call us."
        )
    )
    letter.which_counts(page)
    page.line(speak("Questions: {phone}", phone=quote.firm.phone), "bold")
    page.line(
        speak(
            "If you smell gas or rotten eggs indoors: no flame, no switch, go outside, then call 911. Keep children and pets away from sewage and open digs."
        ),
        "box",
    )
