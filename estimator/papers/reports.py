"""A Quote (options or not) in, reports of at most two pages without any price out: the water tests, and the inspection."""

from collections.abc import Mapping

from estimator.model.job import WaterTest
from estimator.model.offer import Quote
from estimator.model.say import Inches, Say
from estimator.model.test_read import TestRead
from estimator.papers.letter import Letter
from estimator.papers.lift import for_the_foundation_company, steps
from estimator.papers.page import Page
from estimator.papers.still_pairs import still_pairs
from estimator.sheets.book import Book, Cell, Sheet
from estimator.wording.numbers import long_date, number
from estimator.wording.plain import LINES, PIPES, in_plain_words
from estimator.wording.say import capital, shown

WIDTHS = (26.0, 34.0, 34.0)
WHEN: dict[str, Say] = {
    "before lift": Say.of("before the foundation lift"),
    "after lift": Say.of("after the foundation lift"),
    "after repair": Say.of("after the repair"),
}
"""When a test was made, where it was not a routine one."""


def water_test_report(quote: Quote, language: str) -> Book:
    """Each test with its verdict, its readings, and what was not in it. Errors: ValueError for a job without a test."""
    letter = Letter(quote, language)
    if not quote.job.water_tests:
        raise ValueError("the job has no water test")
    page = _page(letter, letter.speak("Water test"), letter.speak("Water test report"))
    reads = quote.diagnosis.tests or tuple(TestRead(t, "inconclusive", None) for t in quote.job.water_tests)
    said = letter.all(quote.tests)
    for place, read in enumerate(reads):
        _test(letter, page, read, said[place] if place < len(said) else "")
    page.listing(letter.speak("Tests compared"), letter.all(quote.tests_compared))
    if quote.lift_steps:
        page.heading(letter.speak("Tests and repairs around the foundation lift"), starts=True)
        for text in steps(letter):
            page.line(text)
        for_the_foundation_company(letter, page)
    page.gap()
    page.line(
        letter.speak(
            "A water test shows how the drains held, up to the level filled. It does not cover parts outside the test."
        ),
        "box",
    )
    _sign(letter, page)
    return _book(letter, page.name, letter.close(page))


def inspection_report(quote: Quote, language: str, pictures: Mapping[str, bytes] | None = None) -> Book:
    """What was found, what was inspected and what was not, with stills; also for a house with nothing to repair."""
    letter = Letter(quote, language, pictures or {})
    speak = letter.speak
    page = _page(letter, speak("Inspection"), speak("Inspection report"))
    page.heading(speak("What we found"))
    for found in quote.found:
        page.line(f"{found.letter}  {letter.all([found.text])[0]}")
    if not quote.found:
        page.line(speak("We found no damage in the pipe we inspected."))
    if quote.found and quote.urgency:
        soon = [quote.urgency, *([quote.if_nothing] if quote.if_nothing else [])]
        page.pair(speak("How soon"), " ".join(map(letter.say, soon)))
    page.heading(speak("What we inspected"))
    page.pair(speak("Inspected on"), long_date(quote.job.inspected_on or quote.job.day, language))
    page.pair(speak("Inspected by"), f"{quote.job.prepared_by}, {quote.firm.name}")
    for line in quote.job.lines:
        pipe = Say.of("{size} {pipe}", size=Inches(line.size_in), pipe=in_plain_words(PIPES, line.pipe))
        page.pair(capital(letter.say(in_plain_words(LINES, line.name))), letter.say(pipe))
    for text in letter.all((*quote.seen, *quote.tests)) or [speak("We did not inspect any pipe with the camera.")]:
        page.line(text)
    page.listing(speak("Not seen"), letter.all(quote.not_seen))
    still_pairs(letter, page, quote.found)
    page.line(
        speak("This report shows what the camera showed. It covers no pipe that we did not inspect."),
        "box",
    )
    _sign(letter, page)
    return _book(letter, page.name, letter.close(page))


def _page(letter: Letter, name: str, title: str) -> Page:
    speak, quote = letter.speak, letter.quote
    page = Page(name, WIDTHS)
    letter.head(page)
    page.line(title, "title")
    for label, value in (
        (speak("Owner"), quote.job.customer.name),
        (speak("House"), quote.job.customer.site),
        (speak("Number"), letter.number),
        (speak("Report date"), long_date(quote.day, letter.language)),
        (speak("Foundation company"), quote.job.foundation.company),
    ):
        if value:
            page.pair(label, value)
    return page


def _test(letter: Letter, page: Page, read: TestRead, words: str) -> None:
    speak, test = letter.speak, read.test
    page.heading(words, starts=True)
    for label, value in (
        (speak("Date"), _when(letter, test)),
        (speak("Section tested"), letter.typed(test.section)),
        (speak("Test plug set at"), letter.typed(test.plug)),
        (speak("Filled to"), letter.typed(test.level)),
        (speak("Open risers"), _risers(letter, test)),
        (speak("Included in the test"), letter.typed(", ".join(test.covers))),
        (speak("Not in the test"), letter.typed(", ".join(test.not_in_test))),
        (speak("Drop from start"), " · ".join(_reading(letter, *reading) for reading in test.readings)),
        (speak("The water stopped at"), _held(letter, test)),
        (speak("Water came up at"), letter.typed(test.rose_at)),
        (speak("Witness"), test.witness),
        (speak("Please note"), "\n".join(f"{text}." for text in letter.all(read.doubts))),
    ):
        if value:
            page.pair(label, value)


def _when(letter: Letter, test: WaterTest) -> str:
    """`December 3, 2026, before the foundation lift`; a date is never guessed."""
    day = long_date(test.date, letter.language) if test.date else letter.speak("not given")
    return ", ".join([day, *([letter.say(WHEN[test.when])] if test.when in WHEN else [])])


def _risers(letter: Letter, test: WaterTest) -> str:
    """How many were open, and how wide: what the water dropped in."""
    if not test.open_risers_in:
        return letter.speak("not given")
    sizes = ", ".join(shown(Inches(size), letter.language) for size in test.open_risers_in)
    return f"{len(test.open_risers_in)} ({sizes})"


def _reading(letter: Letter, minutes: float, drop_in: float) -> str:
    at, drop = number(minutes, letter.language), shown(Inches(drop_in), letter.language)
    return letter.speak("{drop} at {minutes} min", drop=drop, minutes=at)


def _held(letter: Letter, test: WaterTest) -> str:
    """Below what it was filled to, where the notes say what that was."""
    if test.held_at_in is None:
        return ""
    level = letter.typed(test.level) or letter.speak("the level filled")
    return letter.speak("{height} below {level}", height=Inches(test.held_at_in), level=level)


def _sign(letter: Letter, page: Page) -> None:
    page.gap(14)
    page.add(Cell("", "write", 2, open=True), Cell("", "write", open=True), height_pt=28.0)
    page.add(
        Cell(f"{letter.quote.job.prepared_by}, {letter.quote.firm.name}", "quiet", 2),
        Cell(letter.speak("Date"), "quiet"),
    )


def _book(letter: Letter, title: str, sheet: Sheet) -> Book:
    quote = letter.quote
    return Book(title=f"{title} {letter.number}", day=quote.day, accent=quote.firm.accent, sheets=(sheet,))
