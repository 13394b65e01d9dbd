"""An option in, the rows people compare it by out: a label and an answer in the reader's language, most important first."""

from decimal import Decimal

from estimator.model.money import to_step
from estimator.model.offer import Option, ToOthers
from estimator.model.say import Say
from estimator.model.work import all_repairs
from estimator.papers.letter import Letter
from estimator.papers.line_items import short
from estimator.quote import where
from estimator.quote.recommend import is_visit, only_prepares
from estimator.sheets.book import Cell
from estimator.wording.numbers import days, family, feet, halves, money, number
from estimator.wording.plain import ROOMS, in_plain_words
from estimator.wording.say import NOTES_LANGUAGE, capital, pick

LEAST_FT = 1.0


def rows(letter: Letter, option: Option) -> list[tuple[str, str]]:
    """Label and short answer of what options are compared by, beside price and defects; the same order for every option."""
    speak = letter.speak
    lasts = [(speak("Usually lasts"), life(letter, option))] if any(o.life_high for o in letter.quote.options) else []
    costs = any(o.cost_a_year for o in letter.quote.options)
    years = [(speak("Price per year of life, with interest"), cost_a_year(letter, option))] if costs else []
    return [
        (speak("Not to exceed"), not_to_exceed(letter, option)),
        (speak("Days on site"), on_site(option)),
        (speak("Days without drains"), without_drains(letter, option)),
        (speak("Floors cut"), floors(letter, option)),
        (speak("Yard dug"), area(letter, option.yard_sf)),
        (speak("Existing pipe to remain"), old_pipe(letter, option)),
        (speak("Water test after"), tested(letter, option)),
        (speak("Other costs, not in our price"), to_others(letter, option)),
        *lasts,
        *years,
        (speak("Main risk"), letter.say(option.main_risk)),
    ]


def reach(letter: Letter, option: Option) -> str:
    """Which pipe the work is on, from where to where: "Kitchen line: 2 ft to 14 ft 6 in. Yard line: 18 ft to 22 ft"."""
    job = letter.quote.job
    stretches = (
        letter.speak("{line} by another route", line=where.line_name(line))
        if r.reroute
        else letter.speak("{line}: {ends}", line=where.line_name(line), ends=where.ends(line, where.worked_on(line, r)))
        for r in all_repairs(option.scope.repairs)
        for line in job.lines
        if line.name == r.line
    )
    return ". ".join(map(capital, dict.fromkeys(stretches)))


def rows_alone(letter: Letter, option: Option) -> list[tuple[str, str]]:
    """What a quote with one option says on the option's page, since nothing is compared."""
    speak = letter.speak
    return [
        (speak("Existing pipe to remain"), " ".join(letter.all(option.stays_old)) or speak("none known")),
        *([] if only_prepares(option) else [(speak("Water test after"), letter.say(option.water_test_text))]),
        (speak("Main risk"), letter.say(option.main_risk)),
    ]


def old_pipe(letter: Letter, option: Option) -> str:
    """How many feet of old pipe stay in use."""
    return (
        feet(option.old_pipe_left_ft, letter.language)
        if option.old_pipe_left_ft >= LEAST_FT
        else letter.speak("none known")
    )


def tested(letter: Letter, option: Option) -> str:
    """What the water test after the work covers, in a word or two."""
    speak = letter.speak
    if option.water_test == "not promised" and any(t.value("isolation_tests") for t in option.takeoffs):
        return speak("each section of the old pipe")
    return {"yes": speak("all of it"), "only this part": speak("the new part only"), "not promised": speak("none")}[
        option.water_test
    ]


def in_days(letter: Letter, count: Decimal) -> str:
    return days(count, letter.language) if count else letter.speak("a few hours")


def without_drains(letter: Letter, option: Option) -> str:
    """How many days the drains are out of service, without their word."""
    off = option.days_without_drains
    return halves(off) if off else in_days(letter, off)


def length_of_work(letter: Letter, option: Option) -> str:
    """`4 days on site, 3½ without drains`."""
    days, off = in_days(letter, option.days_on_site), without_drains(letter, option)
    if option.schedule.days_later:
        return letter.speak("{days} days on site, {off} without drains", days=on_site(option), off=off)
    return letter.speak("{days} on site, {off} without drains", days=days, off=off)


def price_cell(letter: Letter, option: Option, firm: str = "whole money left", loose: str = "value") -> Cell:
    """The price as a number; in words where it is not firm, so that nobody takes it for an offer."""
    if option.fixed:
        return Cell(option.price.total, firm)
    return Cell(letter.speak("about {price}, not firm", price=money(option.price.total, letter.language)), loose)


def not_to_exceed(letter: Letter, option: Option) -> str:
    return money(option.most, letter.language) if option.fixed else letter.speak("no firm price yet")


def warranty(letter: Letter, option: Option) -> str:
    """What the methods warrant."""
    return pick(letter.language, option.warranty_en, option.warranty_es)


def not_firm(letter: Letter, option: Option) -> str:
    """Why a price is not firm, and what makes it firm."""
    why = letter.all(option.not_fixed_because)
    return " ".join([letter.speak("This price is not firm yet."), *why, *firm_after(letter, option)])


def firm_after(letter: Letter, option: Option) -> list[str]:
    """Which visit makes the price firm, and what it costs; nothing where none is offered for it."""
    return [
        letter.speak(
            "Start with Option {letter} ({price}).",
            letter=visit.letter,
            price=money(visit.price.total, letter.language),
        )
        for visit in letter.quote.options
        if visit.letter == option.firm_after
    ]


def not_over(letter: Letter, option: Option) -> str:
    """The most, in three words, where the whole sentence stands nearby."""
    return letter.speak("Not to exceed {most}.", most=money(option.most, letter.language))


def cuts_floor(option: Option) -> bool:
    return bool(option.floors_opened or option.floor_sf)


def on_site(option: Option) -> str:
    """Days without their word, those of a second visit after a plus."""
    later = option.schedule.days_later
    return f"{halves(option.days_on_site)} + {halves(later)}" if later else halves(option.days_on_site)


def floors(letter: Letter, option: Option) -> str:
    speak = letter.speak
    if not cuts_floor(option):
        return speak("none")
    named = [letter.say(in_plain_words(ROOMS, room)) for room in option.floors_opened]
    rooms = ", ".join(named)
    if not option.floor_sf:
        return rooms
    size = area(letter, option.floor_sf)
    return speak("{rooms}: about {area}", rooms=rooms, area=size) if rooms else speak("about {area}", area=size)


def area(letter: Letter, square_ft: float) -> str:
    if square_ft <= 0:
        return letter.speak("none")
    return letter.speak("{number} sq ft", number=number(square_ft, letter.language, 0))


def _no_life(letter: Letter, option: Option) -> str:
    return letter.speak("no repair") if is_visit(option) else letter.speak("not stated")


def life(letter: Letter, option: Option) -> str:
    if not option.life_high:
        return _no_life(letter, option)
    return letter.speak("{low}–{high} years", low=option.life_low, high=option.life_high)


def cost_a_year(letter: Letter, option: Option) -> str:
    """What the price comes to a year over the life that is stated, to the dollar."""
    if option.cost_a_year is None:
        return _no_life(letter, option)
    least, most = (money(to_step(amount, Decimal(1)), letter.language) for amount in option.cost_a_year)
    return least if least == most else f"{least}–{most}"


def check_the_place(letter: Letter) -> str:
    """What stands beside everything that comes from the place's row of the tables."""
    return letter.speak("Local rules on taxes, deposits, permits and cancellation come first.")


def others(letter: Letter, option: Option) -> list[str]:
    """What others do: each with about how much, then what has no price yet, by who arranges it."""
    speak, out = letter.speak, []
    for who, words in ARRANGES.items():
        mine = [o for o in option.to_others if o.who == who]
        said = dict.fromkeys(_with_amount(letter, o) for o in mine if o.amount is not None)
        asked = dict.fromkeys(short(pick(letter.language, o.text_en, o.text_es)) for o in mine if o.amount is None)
        if said:
            out.append(speak("{who}: {items}", who=words, items="; ".join(said)))
        if asked:
            out.append(speak("{who}, no price yet: {items}", who=words, items="; ".join(asked)))
    return out


ARRANGES: dict[str, Say] = {
    "we do": Say.of("We arrange"),
    "you do": Say.of("You arrange"),
    "allowance": Say.of("Allowance"),
}
"""Who does what is not in our price."""


def _with_amount(letter: Letter, other: ToOthers) -> str:
    text, amount = (
        pick(letter.language, other.text_en, other.text_es),
        money(other.amount or Decimal(0), letter.language),
    )
    return letter.speak("{what}, about {amount}", what=short(text), amount=amount)


def to_others(letter: Letter, option: Option) -> str:
    """About how much others cost, and how many items have no price yet; the option's page names them."""
    speak = letter.speak
    known = sum((o.amount for o in option.to_others if o.amount is not None), Decimal(0))
    open_ = sum(1 for o in option.to_others if o.amount is None)
    if not option.to_others:
        return speak("none known")
    about = speak("about {amount}", amount=money(known, letter.language)) if known else ""
    asked = speak("{count} without a price yet", count=open_) if open_ else ""
    return speak("{about}, and {asked}", about=about, asked=asked) if about and asked else about or asked


def title(letter: Letter, option: Option) -> str:
    """Letter and title; the estimator's own name for it in the language it was typed in."""
    name = option.name if family(letter.language) == NOTES_LANGUAGE else ""
    return f"{option.letter}  {name or letter.say(option.title)}"
