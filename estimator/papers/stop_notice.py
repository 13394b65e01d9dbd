"""A quote or report with another utility's line in the drain in, a notice in red out: what nobody may do until it is clear."""

from estimator.model.line import Finding, Line
from estimator.model.offer import Quote
from estimator.model.say import Say
from estimator.papers.letter import Letter
from estimator.papers.line_words import as_counted
from estimator.papers.page import Page
from estimator.sheets.book import Book, Cell
from estimator.wording.numbers import long_date
from estimator.wording.plain import LINES, in_plain_words
from estimator.wording.say import capital

WIDTHS = (22.0, 72.0)
IN_THE_BORE = "utility"
RULES: tuple[Say, ...] = (
    Say.of("Treat that pipe or cable as gas until the utility identifies it in writing."),
    Say.of("If you smell gas or rotten eggs, leave the house right away with everyone and the pets. Do not touch switches, light anything or use a phone indoors."),
    Say.of("Call 911 and the gas company from outside, far from the house. Do not go back in until they tell you."),
    Say.of("Do not use the drain. Do not let anyone put a cutter, jetter, snake or camera into it. Do not let anyone dig over it with a machine."),
    Say.of("Keep this notice by the door. Show it to anyone who comes to clear the drain."),
    Say.of("The utility must clear the line in writing. After that we inspect again and can offer a repair."),
)  # fmt: skip
"""Common practice for gas lines bored through drains."""


def lines_in_the_bore(quote: Quote) -> list[tuple[Line, Finding]]:
    """Every place where something that is not a drain was seen in a drain, sure or not."""
    return [(line, f) for line in quote.job.lines for f in line.findings if f.kind == IN_THE_BORE]


def stop_notice(quote: Quote, language: str) -> Book:
    """One page in red, to be left in the house at once. No price on it."""
    letter = Letter(quote, language)
    speak = letter.speak
    page = Page(speak("STOP"), WIDTHS)
    page.line(speak("STOP: do not use or clean this drain"), "alarm")
    page.line(speak("A gas or other utility line runs through your drain."), "alarm")
    page.gap()
    letter.head(page)
    page.pair(speak("House"), quote.job.customer.site)
    page.pair(speak("For"), quote.job.customer.name)
    page.pair(speak("Number"), letter.number)
    page.pair(speak("Date"), long_date(quote.day, language))
    for line, found in lines_in_the_bore(quote):
        name = letter.say(in_plain_words(LINES, line.name))
        at = as_counted(letter, line, found.stretch.from_ft)
        page.pair(speak("Where we saw it"), f"{capital(name)}: {at}")
    page.gap()
    for number, text in enumerate(letter.all(RULES), start=1):
        page.line(f"{number}. {text}", "red" if number <= 3 else "body")
    page.gap()
    page.line(speak("Questions: {phone}", phone=quote.firm.phone), "bold")
    page.gap(14)
    page.add(Cell("", "write", open=True), Cell("", "write", open=True), height_pt=28.0)
    page.add(Cell(speak("Day and hour"), "quiet"), Cell(speak("Notice given to (sign)"), "quiet"))
    return Book(
        title=f"{page.name} {letter.number}",
        day=quote.day,
        accent=quote.firm.accent,
        sheets=(letter.close(page),),
    )
