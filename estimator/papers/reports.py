"""A Quote (options or not) in, one-page reports without any price out: the water tests, and the inspection."""

from estimator.model.job import WaterTest
from estimator.model.offer import Quote
from estimator.model.say import Inches, Say
from estimator.papers.letter import Letter
from estimator.papers.lift import list_steps
from estimator.papers.page import Page
from estimator.sheets.book import Book, Cell, Sheet
from estimator.wording.numbers import long_date, number
from estimator.wording.say import shown

WIDTHS = (26.0, 34.0, 34.0)
_WHEN: dict[str, Say] = {
    "before lift": Say.of("before the house is lifted"),
    "after lift": Say.of("after the house was lifted"),
    "after repair": Say.of("after the repair"),
    "routine": Say.of("on its own"),
}


def water_test_report(quote: Quote, language: str) -> Book:
    """Each test with its readings, its verdict, and what was not in it. Errors: ValueError for a job without a test."""
    letter = Letter(quote, language)
    if not quote.job.water_tests:
        raise ValueError("the job has no water test")
    page = _page(letter, letter.speak("Water test"), letter.speak("Water test report"))
    for test, words in zip(quote.job.water_tests, letter.all(quote.tests), strict=True):
        _test(letter, page, test, words)
    page.listing(letter.speak("Before and after"), letter.all(quote.tests_compared))
    if quote.lift_steps:
        page.heading(letter.speak("The house is lifted: tests and repairs in their order"), starts=True)
        list_steps(letter, page)
    page.gap()
    page.line(
        letter.speak(
            "A test tells what the drains did on the day, up to the level they were filled to. Parts that were not in it are not in this report."
        ),
        "box",
    )
    _sign(letter, page)
    return _book(letter, page.name, letter.close(page))


def inspection_report(quote: Quote, language: str) -> Book:
    """What was looked at, what was found, what nobody saw; also for a house with nothing to repair."""
    letter = Letter(quote, language)
    speak = letter.speak
    page = _page(letter, speak("Inspection"), speak("Inspection report"))
    page.heading(speak("What we found"))
    for text in letter.all(f.text for f in quote.found) or [speak("Nothing to repair in the pipe that we saw.")]:
        page.line(text)
    if quote.found and quote.urgency:
        page.pair(speak("Is it urgent?"), letter.say(quote.urgency))
    page.heading(speak("What we looked at"))
    for text in letter.all((*quote.seen, *quote.tests)) or [speak("Nothing was filmed.")]:
        page.line(text)
    page.listing(speak("What nobody has seen"), letter.all(quote.not_seen))
    page.line(
        speak(
            "This report says what could be seen on the day. It carries no price and promises nothing for pipe that was not seen."
        ),
        "box",
    )
    _sign(letter, page)
    return _book(letter, page.name, letter.close(page))


def _page(letter: Letter, name: str, title: str) -> Page:
    speak, quote = letter.speak, letter.quote
    page = Page(name, WIDTHS)
    letter.head(page)
    page.line(title, "title")
    page.pair(speak("For"), quote.job.customer.name)
    page.pair(speak("House"), quote.job.customer.site)
    page.pair(speak("Number"), letter.number)
    page.pair(speak("Date"), long_date(quote.day, letter.language))
    if quote.job.foundation.company:
        page.pair(speak("Foundation company"), quote.job.foundation.company)
    page.gap()
    return page


def _test(letter: Letter, page: Page, test: WaterTest, words: str) -> None:
    speak = letter.speak
    page.heading(speak("Tested: {section}", section=letter.typed(test.section)), starts=True)
    page.line(words, "bold")
    for label, value in (
        (
            speak("When"),
            long_date(test.date, letter.language) if test.date else letter.say(_WHEN.get(test.when, _WHEN["routine"])),
        ),
        (speak("Test plug set at"), letter.typed(test.plug)),
        (speak("Filled to"), letter.typed(test.level)),
        (speak("In the test"), letter.typed(", ".join(test.covers))),
        (speak("Not in the test"), letter.typed(", ".join(test.not_in_test))),
        (speak("Water came up at"), letter.typed(test.rose_at)),
        (speak("Witness"), test.witness),
    ):
        if value:
            page.pair(label, value)
    if test.held_at_in is not None:
        page.pair(
            speak("The level stopped at"),
            f"{shown(Inches(test.held_at_in), letter.language)} {speak('below')} {_level(letter, test)}",
        )
    if test.readings:
        page.pair(speak("Level fell by"), " · ".join(_reading(letter, *reading) for reading in test.readings))


def _reading(letter: Letter, minutes: float, drop_in: float) -> str:
    at, drop = number(minutes, letter.language), shown(Inches(drop_in), letter.language)
    return letter.speak("{drop} after {minutes} min", drop=drop, minutes=at)


def _level(letter: Letter, test: WaterTest) -> str:
    """What heights are counted from: nobody's guess where the notes do not say."""
    return letter.typed(test.level) if test.level else letter.speak("where it was filled to")


def _sign(letter: Letter, page: Page) -> None:
    page.gap(14)
    page.add(Cell("", "write", 2, open=True), Cell("", "write", open=True), height_pt=28.0)
    page.add(
        Cell(f"{letter.quote.job.prepared_by}, {letter.quote.firm.name}", "quiet", 2),
        Cell(letter.speak("Day"), "quiet"),
    )


def _book(letter: Letter, title: str, sheet: Sheet) -> Book:
    quote = letter.quote
    return Book(title=f"{title} {letter.number}", day=quote.day, accent=quote.firm.accent, sheets=(sheet,))
