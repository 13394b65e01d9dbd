"""A quote with the ranges of its options in, the office's lines about them out. Nothing of it is for the homeowner."""

from estimator.cli.views.screen import Row
from estimator.cli.views.table import indented, table
from estimator.cli.views.vocabulary import term
from estimator.cli.views.words import ENGLISH, dollars, number
from estimator.model.likely_range import LikelyRange
from estimator.model.money import cents
from estimator.model.offer import Option, Quote
from estimator.papers.office_sums import cost_of
from estimator.wording.say import speaker

MOST_DRIVERS = 5


def rows(quote: Quote, columns: int, language: str = ENGLISH) -> list[Row]:
    """A block an option: percentiles, what drives them, what the contingency should be."""
    never = speaker(language)("FOR THE OFFICE: never send this. How far our own cost and the crew days may run.")
    blocks = [row for o in quote.options if o.likely_range for row in _option(o, o.likely_range, columns, language)]
    return [Row(""), *(Row(text, "bad") for text in indented(never, columns, by=0)), *blocks]


def _option(option: Option, found: LikelyRange, columns: int, language: str) -> list[Row]:
    speak = speaker(language)
    heads = (speak("stays within"), speak("in 10 of 100"), speak("in 50"), speak("in 80"), speak("in 90"))
    body = [
        (speak("our cost"), *(dollars(cents(amount), True, language) for amount in found.cost.values())),
        (speak("crew days"), *(number(days, language=language) for days in found.days.values())),
    ]
    told = [priced(option, language), contingency(found, language), drivers(found, language)]
    words = [Row(line) for text in told if text for line in indented(text, columns)]
    days = number(option.price.days, language=language)
    head = Row(speak("Option {letter}: {days} crew days in the price", letter=option.letter, days=days), "head")
    return [Row(""), head, *(Row(text) for text in table(heads, body, columns, right=(1, 2, 3, 4))), *words]


def priced(option: Option, language: str = ENGLISH) -> str:
    """The cost that the range is about, and what the price costs besides, which is left out of it."""
    speak, own, others = speaker(language), option.price.direct, cost_of(option) - option.price.direct
    amount = dollars(own, True, language)
    if not others:
        return speak("Priced on a cost of {amount}, all of it our own work.", amount=amount)
    return speak(
        "Priced on a cost of {amount} for our own work. Subs, fees and allowances cost {others} more; they are not in these figures.",
        amount=amount, others=dollars(others, True, language),
    )  # fmt: skip


def contingency(found: LikelyRange, language: str = ENGLISH) -> str:
    """What the firm's confidence would need against what the table gives."""
    speak = speaker(language)
    wanted, sure, given, held, short = (
        number(value, places, language)
        for value, places in (
            (found.contingency_needed_percent, 1),
            (found.confidence_percent, 1),
            (found.contingency_percent, 1),
            (found.held_chance_percent, 0),
            (found.short_percent, 1),
        )
    )
    if found.short_percent:
        return speak(
            "A contingency of {wanted}% would hold in {sure} of 100 such jobs; the tables give {given}%, {short} points too "
            "little, which holds in {held}.",
            wanted=wanted, sure=sure, given=given, short=short, held=held,
        )  # fmt: skip
    return speak(
        "A contingency of {wanted}% would hold in {sure} of 100 such jobs; the tables give {given}%, enough, which holds in "
        "{held}.",
        wanted=wanted, sure=sure, given=given, held=held,
    )  # fmt: skip


def drivers(found: LikelyRange, language: str = ENGLISH) -> str:
    """The few things that move the cost most."""
    shares = [
        f"{term(name, language)} {number(share, 0, language)}%"
        for name, share in found.drivers[:MOST_DRIVERS]
        if share >= 1
    ]
    return speaker(language)("What moves it: {shares}.", shares=", ".join(shares)) if shares else ""
