"""An option in, the rows people compare it by out: a label and an answer in the reader's language, most important first."""

import math
from decimal import Decimal

from estimator.model.money import to_step
from estimator.model.offer import Option, ToOthers
from estimator.model.schedule import DaySpan
from estimator.papers import add_ons
from estimator.papers.letter import Letter
from estimator.papers.lift import days_apart, warranty_begins
from estimator.wording.numbers import days, money, number
from estimator.wording.plain import ROOMS, in_plain_words
from estimator.wording.say import pick


def rows(letter: Letter, option: Option) -> list[tuple[str, str]]:
    """Label and answer of everything but the price itself; the same labels in the same order for every option."""
    return [*rows_on_a_phone(letter, option), papers_needed(letter, option)]


def rows_on_a_phone(letter: Letter, option: Option) -> list[tuple[str, str]]:
    """What can be decided by; the papers needed stand on the sheets to print."""
    speak = letter.speak
    return [
        (speak("At most"), at_most(letter, option)),
        (speak("We work here"), days(option.days_on_site, letter.language)),
        (speak("You cannot flush"), no_flush(letter, option)),
        (speak("Floors opened"), floors(letter, option)),
        (speak("Yard dug up"), area(letter, option.yard_sf)),
        (speak("Stays old"), " ".join(letter.all(option.stays_old)) or speak("nothing that we know of")),
        (speak("Water test after"), letter.say(option.water_test_text)),
        (speak("To others, about"), to_others(letter, option)),
        (speak("All in, about"), all_in(letter, option)),
        *(
            [(speak("You may add"), add_ons.in_short(letter, option))]
            if any(o.add_ons for o in letter.quote.options)
            else []
        ),
        (speak("Usually lasts"), life(letter, option)),
        (speak("Warranty"), warranty(letter, option)),
        (speak("Main risk"), letter.say(option.main_risk)),
    ]


def papers_needed(letter: Letter, option: Option) -> tuple[str, str]:
    speak = letter.speak
    return speak("Papers needed"), " ".join(letter.all(option.needs_papers)) or speak("ask us before work starts")


def warranty(letter: Letter, option: Option) -> str:
    """What the methods warrant, and from when where a lift comes first."""
    return f"{pick(letter.language, option.warranty_en, option.warranty_es)} {warranty_begins(letter)}".strip()


def at_most(letter: Letter, option: Option) -> str:
    speak = letter.speak
    if not option.fixed:
        return " ".join([speak("Not a fixed price yet."), *letter.all(option.not_fixed_because)])
    return speak("It cannot go above {most} unless you sign a change.", most=money(option.most, letter.language))


def no_flush(letter: Letter, option: Option) -> str:
    if not option.days_without_drains:
        return letter.speak("only while we connect, some hours")
    return days(option.days_without_drains, letter.language)


def floors(letter: Letter, option: Option) -> str:
    speak = letter.speak
    if not option.floors_opened and not option.floor_sf:
        return speak("no floor is cut")
    named = [letter.say(in_plain_words(ROOMS, room)) for room in option.floors_opened]
    rooms = ", ".join(named) or speak("see the sheet of this option")
    if not option.floor_sf:
        return rooms
    return speak("{rooms}: about {area}", rooms=rooms, area=area(letter, option.floor_sf))


def area(letter: Letter, square_ft: float) -> str:
    speak = letter.speak
    if square_ft <= 0:
        return speak("no lawn is dug")
    return speak("{number} sq ft", number=number(square_ft, letter.language, 0))


def life(letter: Letter, option: Option) -> str:
    speak = letter.speak
    if not option.life_high:
        return speak("not said: ask us")
    return speak("{low} to {high} years, typical", low=option.life_low, high=option.life_high)


def cost_a_year(letter: Letter, option: Option) -> str:
    """What the price comes to a year over the life that is stated, to the dollar."""
    speak = letter.speak
    if option.cost_a_year is None:
        return speak("not said: no life is stated")
    least, most = (money(to_step(amount, Decimal(1)), letter.language) for amount in option.cost_a_year)
    return (
        speak("{amount} a year", amount=least)
        if least == most
        else speak("{least} to {most} a year", least=least, most=most)
    )


def check_the_place(letter: Letter) -> str:
    """What stands beside everything that comes from the place's row of the tables."""
    return letter.speak(
        "Taxes, deposits, days to cancel, permits and inspections follow the rules of your city and state; if you are unsure, ask its building department, a tax adviser or a lawyer."
    )


def one_to_others(letter: Letter, other: ToOthers) -> str:
    """One thing that is not ours, with who does it and about how much."""
    speak = letter.speak
    text = pick(letter.language, other.text_en, other.text_es)
    who = {"we do": speak("we do this"), "you do": speak("you arrange this"), "allowance": speak("allowance")}[
        other.who
    ]
    about = (
        speak("about {amount}", amount=money(other.amount, letter.language))
        if other.amount is not None
        else speak("ask for a price")
    )
    return f"{text} ({who}): {about}"


def to_others(letter: Letter, option: Option) -> str:
    """What others do and about how much, in short; the sheet of the option says who does what."""
    speak = letter.speak
    if not option.to_others:
        return speak("nothing that we know of")
    parts = [_short(letter, other) for other in option.to_others]
    if any(other.amount is None for other in option.to_others):
        parts.append(speak("ask for prices"))
    return "; ".join(parts)


def _short(letter: Letter, other: ToOthers) -> str:
    text = pick(letter.language, other.text_en, other.text_es)
    return text if other.amount is None else f"{text}: {money(other.amount, letter.language)}"


def all_in(letter: Letter, option: Option) -> str:
    speak = letter.speak
    amount = money(option.all_in, letter.language)
    if any(other.amount is None for other in option.to_others):
        return speak("{amount} and what has no price above", amount=amount)
    return amount


def title(letter: Letter, option: Option) -> str:
    """The estimator's own name for it in the language of the notes; in another the title, with that name in quotes."""
    name = letter.typed(option.name)
    if not name or name == option.name:
        return f"{option.letter}  {name or letter.say(option.title)}"
    return f"{option.letter}  {letter.say(option.title)} ({name})"


def day_texts(letter: Letter, option: Option) -> list[str]:
    """The strip of days: from which day to which, to the half day, what is done, and whether drains work."""
    speak = letter.speak
    out = []
    for span in option.day_spans:
        drains = speak("DO NOT USE ANY DRAIN while we work") if span.no_drains else speak("drains work")
        out.append(f"{_when(letter, span)}: {letter.say(span.text)} ({drains})")
    return [*out, *filter(None, [days_apart(letter)])] if out else []


def _when(letter: Letter, span: DaySpan) -> str:
    """Days are counted from 1; a span that begins or ends in the middle of one says so."""
    speak, end = letter.speak, span.start + span.length
    first, last = math.floor(span.start) + 1, max(math.floor(span.start) + 1, math.ceil(end))
    days = (
        speak("Day {first}", first=first) if first == last else speak("Days {first} to {last}", first=first, last=last)
    )
    from_midday, until_midday = span.start % 1 != 0, end % 1 != 0
    if from_midday and until_midday:
        return speak("{days}, midday to midday", days=days)
    if from_midday:
        return speak("{days}, from midday", days=days)
    return speak("{days}, until midday", days=days) if until_midday else days
