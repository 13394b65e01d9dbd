"""A Quote in, a letter with two round figures out, for when a fixed price is not yet honest. Not an offer; nothing to sign."""

from decimal import ROUND_FLOOR, Decimal

from estimator.model.money import up_to
from estimator.model.offer import Quote
from estimator.papers.letter import Letter
from estimator.papers.next_visit import for_the_homeowner
from estimator.papers.page import Page
from estimator.quote.recommend import compared
from estimator.sheets.book import Book, Cell
from estimator.wording.numbers import long_date, money

WIDTHS = (26.0, 68.0)
STEP = Decimal(500)  # dollars; a figure finer than this would look like a price


def figures(quote: Quote) -> tuple[Decimal, Decimal]:
    """The cheapest option down to the step, and the dearest with all its extras up to it.

    Errors: ValueError for a quote without options.
    """
    if not quote.options:
        raise ValueError("no option to name a figure for")
    low = min(o.price.total for o in compared(quote))
    return (low / STEP).quantize(Decimal(1), ROUND_FLOOR) * STEP, up_to(max(o.most for o in quote.options), STEP)


def budget_letter(quote: Quote, language: str) -> Book:
    """From about this to about that, what would move it, and what settles it."""
    letter = Letter(quote, language)
    speak = letter.speak
    low, high = figures(quote)
    page = Page(speak("Budget"), WIDTHS)
    letter.head(page)
    page.line(speak("Not an offer: a first idea of the cost"), "title")
    page.pair(speak("For"), quote.job.customer.name)
    page.pair(speak("House"), quote.job.customer.site)
    page.pair(speak("Date"), long_date(quote.day, language))
    page.gap()
    text = speak("From about {low} to about {high}.", low=money(low, language), high=money(high, language))
    page.add(Cell(text, "title", 2))
    page.listing(speak("What we found so far"), letter.all(f.text for f in quote.found))
    questions = quote.diagnosis.questions
    unsure = dict.fromkeys(s for o in quote.options for s in o.not_fixed_because)
    page.listing(speak("What would move these figures"), letter.all([*unsure, *quote.not_seen]))
    page.listing(speak("What the next visit settles"), letter.all(for_the_homeowner(questions)))
    page.gap()
    page.line(
        speak(
            "This is not an offer and cannot be accepted. A price you can rely on follows when the open points are settled."
        ),
        "box",
    )
    return Book(
        title=f"{page.name} {letter.number}", day=quote.day, accent=quote.firm.accent, sheets=(letter.close(page),)
    )
