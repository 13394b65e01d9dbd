"""A Quote in, a short message out to send with the file: prices, until when, whom to ask; or nothing to repair."""

from estimator.model.gas import gas_smelled
from estimator.model.offer import Option, Quote
from estimator.papers.letter import not_real
from estimator.papers.stop_notice import lines_in_the_bore
from estimator.wording.numbers import long_date, money
from estimator.wording.say import speaker

LONGEST = 300  # characters, so that it goes as one text message on most phones


def message(quote: Quote, language: str) -> str:
    """Under 300 characters; with many options only the cheapest and the dearest price.

    Errors: ValueError where even the short form is too long.
    """
    if gas_smelled(quote.job):
        return speaker(language)(
            "GAS SMELL: leave the house now, touch no switch, call 911 and the gas company from outside. No drain work before they say it is safe. What we found is attached. Questions: {phone}",
            phone=quote.firm.phone,
        )
    if not quote.options:
        return _report(quote, language)
    text = _text(quote, language, " · ".join(_price(option, language) for option in quote.options))
    if len(text) >= LONGEST:
        text = _text(quote, language, _from_to(quote, language))
    if len(text) >= LONGEST:
        raise ValueError(f"the message is {len(text)} characters long")
    return text


def _price(option: Option, language: str) -> str:
    """`A $16,525`; with a word where something has to be confirmed before it holds."""
    price = money(option.price.total, language)
    if option.fixed:
        return f"{option.letter} {price}"
    return speaker(language)("{letter} about {price}, not firm", letter=option.letter, price=price)


def _from_to(quote: Quote, language: str) -> str:
    totals = sorted(option.price.total for option in quote.options)
    low, high = (money(total, language) for total in (totals[0], totals[-1]))
    if all(option.fixed for option in quote.options):
        return f"{low} – {high}"
    return speaker(language)("{low} – {high} (not all firm)", low=low, high=high)


def _report(quote: Quote, language: str) -> str:
    """Where nothing is offered: the stop first, else what is attached."""
    speak, phone = speaker(language), quote.firm.phone
    if lines_in_the_bore(quote):
        return speak(
            "STOP: do not use your drain and do not let anyone clean it. A line runs through it, perhaps gas. Smell gas? Leave, call 911 from outside. Read the attached notice. Questions: {phone}",
            phone=phone,
        )
    if quote.diagnosis.needs:
        return speak("Our report on your drain is attached; no price can be given yet. Questions: {phone}", phone=phone)
    return speak(
        "We found nothing to repair in the drain we saw. Our inspection report is attached. Questions: {phone}",
        phone=phone,
    )


def _text(quote: Quote, language: str, prices: str) -> str:
    speak = speaker(language)
    if warned := not_real(quote, language):
        phone = quote.firm.phone
        return speak("{warned} Attached: {prices}. Questions: {phone}", warned=warned, prices=prices, phone=phone)
    until = long_date(quote.valid_until, language)
    return speak(
        "Your drain quote is attached. {prices}. The first page answers. Good until {day}. Questions: {phone}",
        prices=prices,
        day=until,
        phone=quote.firm.phone,
    )
