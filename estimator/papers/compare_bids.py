"""A sheet to lay other bids beside ours: fourteen questions, our answers filled in, two empty columns."""

from estimator.model.offer import Option
from estimator.model.work import Takeoff
from estimator.papers import option_words
from estimator.papers.competent_person import digs
from estimator.papers.letter import Letter
from estimator.papers.page import Page
from estimator.sheets.book import Cell, Sheet
from estimator.wording.numbers import money, number
from estimator.wording.plain import UNITS, in_plain_words

MOST_NAMED = 8  # works in one answer; more are a list, which has a sheet
WIDTHS = (23.0, 37.0, 18.0, 18.0)


def compare_bids(letter: Letter) -> Sheet:
    """A block of questions for each option."""
    speak = letter.speak
    page = Page(speak("Compare bids"), WIDTHS)
    page.line(speak("Lay the other bids beside ours"), "title")
    page.line(
        f"{letter.quote.firm.name} · {speak('Quote {number} for {site}', number=letter.number, site=letter.quote.job.customer.site)}",
        "quiet",
    )
    page.line(speak("Write the others' answers in the empty boxes."), "quiet")
    page.line(speak("Ask the others these. An empty box is an answer too."), "bold")
    page.gap()
    for option in letter.quote.options:
        page.add(
            Cell(speak("Ask each of them"), "head"),
            Cell(option_words.title(letter, option), "option"),
            Cell(speak("Bid 2"), "head centre", open=True),
            Cell(speak("Bid 3"), "head centre", open=True),
            starts=True,
        )
        for question, answer in questions(letter, option):
            page.table_row(
                Cell(question, "label"),
                Cell(answer, "value"),
                Cell("", "empty box", open=True),
                Cell("", "empty box", open=True),
            )
        page.gap()
    return letter.close(page)


def questions(letter: Letter, option: Option) -> list[tuple[str, str]]:
    """What to ask, and what we answer."""
    speak, firm = letter.speak, letter.quote.firm
    not_said = speak("see the sheet of this option")
    return [
        (speak("Price"), money(option.price.total, letter.language)),
        (speak("How many feet of pipe, from where to where?"), " ".join(letter.all(option.does)) or not_said),
        (speak("What old pipe stays?"), " ".join(letter.all(option.stays_old)) or speak("nothing that we know of")),
        (speak("How do you get to the pipe?"), letter.say(option.under_title)),
        (speak("Who protects the crew? Is there an engineer's letter?"), crew_safety(letter, option)),
        (speak("How many side drains are joined again?"), side_drains(letter, option.takeoffs)),
        (speak("Is there a water test after, and of what?"), letter.say(option.water_test_text)),
        (speak("City permit and inspection: who gets them, who pays?"), permit(letter, option)),
        (speak("What is the hole filled with? Floor and yard put back to what?"), put_back(letter, option)),
        (speak("What if you find more: price, and the most?"), more(letter, option)),
        (speak("Warranty: on which feet, how long, does it go with the house?"), option_words.warranty(letter, option)),
        (speak("How many days without drains?"), option_words.no_flush(letter, option)),
        (speak("Deposit and payments"), payments(letter, option) or not_said),
        (speak("License and insurance numbers"), " · ".join(part for part in (firm.licence, firm.insurance) if part)),
    ]  # fmt: skip


def crew_safety(letter: Letter, option: Option) -> str:
    """What is so: a person is promised only where one is named, and only where there is something to answer for."""
    speak, named = letter.speak, letter.quote.job.site.competent_person.strip()
    engineer = sum(t.value("engineer_letters") for t in option.takeoffs)
    if not digs(option):
        who = speak("We do. Nobody goes into a dig in this option.")
    elif named:
        who = speak("We do. {name} answers for the dig and looks at it every day.", name=named)
    else:
        who = speak("We do. We name the person who answers for the dig before anyone starts.")
    return f"{who} {speak('An engineer’s letter is in the price.')}" if engineer else who


def side_drains(letter: Letter, takeoffs: tuple[Takeoff, ...]) -> str:
    count = sum(t.value(name) for t in takeoffs for name in ("branches", "branches_tunnel", "reinstatements"))
    return number(count, letter.language, 0) if count else letter.speak("the work meets no side drain that we know of")


def permit(letter: Letter, option: Option) -> str:
    speak = letter.speak
    fees = [line for line in option.price.lines if line.price_class == "pass-through"]
    if not fees:
        return speak("ask us before work starts")
    return "; ".join(f"{letter.text(line)}: {money(line.amount, letter.language)}" for line in fees)


def put_back(letter: Letter, option: Option) -> str:
    """What puts back what was opened, allowances left out; a long list ends on the option's sheet; of a way that opens nothing that."""
    speak = letter.speak
    back = [line for line in option.price.lines if line.work_class == "put back" and line.price_class != "allowance"]
    texts = list(dict.fromkeys(map(letter.text, back)))
    if texts:
        return "; ".join(
            [*texts[:MOST_NAMED], *([speak("see the sheet of this option")] if texts[MOST_NAMED:] else [])]
        )
    if digs(option) or option.floor_sf:
        return speak("see the sheet of this option")
    return speak("Nothing is dug or opened in this option, so nothing is filled or put back.")


def more(letter: Letter, option: Option) -> str:
    if not option.extras:
        return letter.speak("Nothing is added without a change that you sign.")
    least = min(option.extras, key=lambda extra: extra.price)
    unit = letter.say(in_plain_words(UNITS, least.unit))
    price = letter.speak(
        "From {price} per {unit}, all agreed beforehand.", price=money(least.price, letter.language), unit=unit
    )
    return f"{price} {option_words.at_most(letter, option)}"


def payments(letter: Letter, option: Option) -> str:
    return "; ".join(f"{letter.say(p.text)}: {money(p.amount, letter.language)}" for p in option.payments)
