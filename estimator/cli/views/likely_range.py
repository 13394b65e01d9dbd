"""A quote with the ranges of its options in, the office's lines about them out. Nothing of it is for the homeowner."""

from estimator.cli.views.layout import Layout
from estimator.cli.views.words import Words
from estimator.model.likely_range import LikelyRange
from estimator.model.money import cents
from estimator.model.offer import Option, Quote
from estimator.papers.office_sums import cost_of

MOST_DRIVERS = 5


def write_ranges(out: Layout, quote: Quote) -> None:
    """A block an option: percentiles, what drives them, what the contingency should be."""
    out.line()
    out.paragraph(
        out.speak("FOR THE OFFICE: never send this. How far our own cost and the crew days may run."), look="bad"
    )
    for option in quote.options:
        if option.likely_range:
            _option(out, option, option.likely_range)


def _option(out: Layout, option: Option, found: LikelyRange) -> None:
    speak, days = out.speak, out.number(option.price.days)
    out.heading(speak("Option {letter}: {days} crew days in the price", letter=option.letter, days=days))
    heads = (speak("stays within"), speak("in 10 of 100"), speak("in 50"), speak("in 80"), speak("in 90"))
    body = [
        (speak("our cost"), *(out.dollars(cents(amount), True) for amount in found.cost.values())),
        (speak("crew days"), *map(out.number, found.days.values())),
    ]
    out.table(heads, body, right=(1, 2, 3, 4))
    out.paragraph(priced_on(option, out), by=2)
    out.paragraph(_contingency(found, out), by=2)
    if moving := [(name, share) for name, share in found.drivers[:MOST_DRIVERS] if share >= 1]:
        shares = ", ".join(f"{out.term(name)} {out.number(share, 0)}%" for name, share in moving)
        out.paragraph(speak("What moves it: {shares}.", shares=shares), by=2)


def priced_on(option: Option, words: Words) -> str:
    """The cost that the range is about, and what the price costs besides, which is left out of it."""
    own, others = option.price.direct, cost_of(option) - option.price.direct
    if not others:
        return words.speak("Priced on a cost of {amount}, all of it our own work.", amount=words.dollars(own, True))
    return words.speak(
        "Priced on a cost of {amount} for our own work. Subs, fees and allowances cost {others} more; they are not in these figures.",
        amount=words.dollars(own, True), others=words.dollars(others, True),
    )  # fmt: skip


def _contingency(found: LikelyRange, words: Words) -> str:
    """What the firm's confidence would need against what the table gives."""
    said = {
        "wanted": words.number(found.contingency_needed_percent),
        "sure": words.number(found.confidence_percent),
        "given": words.number(found.contingency_percent),
        "held": words.number(found.held_chance_percent, 0),
    }
    if found.short_percent:
        return words.speak(
            "A contingency of {wanted}% would hold in {sure} of 100 such jobs; the tables give {given}%, {short} points too "
            "little, which holds in {held}.",
            **said, short=words.number(found.short_percent),
        )  # fmt: skip
    return words.speak(
        "A contingency of {wanted}% would hold in {sure} of 100 such jobs; the tables give {given}%, enough, which holds in "
        "{held}.",
        **said,
    )
