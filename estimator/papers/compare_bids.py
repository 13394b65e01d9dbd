"""A page to compare other bids with ours: questions, our answers filled in, two empty columns."""

from estimator.model.offer import Option
from estimator.model.work import Takeoff
from estimator.papers import option_words
from estimator.papers.competent_person import digs
from estimator.papers.letter import Letter
from estimator.papers.page import Page
from estimator.quote.recommend import recommended
from estimator.sheets.book import Cell, Sheet
from estimator.wording.numbers import money, number

MOST_NAMED = 8  # works in one answer; more are a list, which has a tab
WIDTHS = (24.0, 41.0, 14.0, 14.0)


def compare_bids(letter: Letter) -> Sheet:
    """Questions for other bidders, with our answers for the option we recommend, else the first."""
    speak = letter.speak
    option = recommended(letter.quote) or letter.quote.options[0]
    page = Page(speak("Compare bids"), WIDTHS)
    letter.small_head(page)
    page.line(speak("Compare other bids with ours"), "title")
    page.line(speak("Ask each bidder these questions and write the answers in the empty boxes."), "quiet")
    page.gap(4)
    page.add(
        Cell(speak("Ask each bidder"), "head"),
        Cell(option_words.title(letter, option), "option"),
        Cell(speak("Bid 2"), "head centre", open=True),
        Cell(speak("Bid 3"), "head centre", open=True),
    )
    for question, answer in questions(letter, option):
        boxes = (Cell("", "empty box", open=True), Cell("", "empty box", open=True))
        page.table_row(Cell(question, "label"), Cell(answer, "value"), *boxes)
    return letter.close(page)


def questions(letter: Letter, option: Option) -> list[tuple[str, str]]:
    """What to ask, and what we answer; what has no answer here is left out."""
    speak, firm = letter.speak, letter.quote.firm
    price = money(option.price.total, letter.language)
    asked = [
        (speak("Price, and the most it can come to?"), f"{price}. {option_words.at_most(letter, option)}"),
        (speak("How many feet of pipe, from where to where?"), " ".join(letter.all(option.does))),
        (speak("What existing pipe remains?"), " ".join(letter.all(option.stays_old)) or speak("none known")),
        (speak("Who protects the crew? Is there an engineer's letter?"), crew_safety(letter, option)),
        (speak("How many branch drains are reconnected?"), side_drains(letter, option.takeoffs)),
        (speak("What is water-tested after the work?"), letter.say(option.water_test_text)),
        (speak("Permit and inspection: who gets them, who pays?"), permit(letter, option)),
        (speak("What is restored, and how?"), put_back(letter, option)),
        (speak("Unit prices if more is found?"), more(letter, option)),
        (speak("Warranty: on what, how long, transferable?"), option_words.warranty(letter, option)),
        (speak("Days without drains?"), option_words.in_days(letter, option.days_without_drains)),
        (speak("License and insurance numbers?"), " · ".join(part for part in (firm.licence, firm.insurance) if part)),
    ]  # fmt: skip
    return [(question, answer) for question, answer in asked if answer]


def crew_safety(letter: Letter, option: Option) -> str:
    """What is so: a person is promised only where one is named, and only where there is something to answer for."""
    speak, named = letter.speak, letter.quote.job.site.competent_person.strip()
    engineer = sum(t.value("engineer_letters") for t in option.takeoffs)
    if not digs(option):
        who = speak("We do. This option has no excavation.")
    elif named:
        who = speak("We do. Our competent person is {name}, who inspects the excavation every day.", name=named)
    else:
        who = speak("We do. We name the competent person before work starts.")
    return f"{who} {speak('An engineer’s letter is in the price.')}" if engineer else who


def side_drains(letter: Letter, takeoffs: tuple[Takeoff, ...]) -> str:
    count = sum(t.value(name) for t in takeoffs for name in ("branches", "branches_tunnel", "reinstatements"))
    return number(count, letter.language, 0) if count else ""


def permit(letter: Letter, option: Option) -> str:
    fees = [line for line in option.price.lines if line.price_class == "pass-through"]
    if not fees:
        return ""
    return "; ".join(f"{letter.text(line)}: {money(line.amount, letter.language)}" for line in fees)


def put_back(letter: Letter, option: Option) -> str:
    """What puts back what was opened, allowances left out; a long list ends on the option's sheet; of a way that opens nothing that."""
    speak = letter.speak
    back = [line for line in option.price.lines if line.work_class == "put back" and line.price_class != "allowance"]
    texts = list(dict.fromkeys(map(letter.text, back)))
    if texts:
        return "; ".join([*texts[:MOST_NAMED], *([speak("see this option's tab")] if texts[MOST_NAMED:] else [])])
    if digs(option) or option.floor_sf:
        return speak("see this option's tab")
    return speak("This option opens nothing, so there is nothing to restore.")


def more(letter: Letter, option: Option) -> str:
    if not option.extras:
        return letter.speak("We add nothing without a signed change order.")
    least = min(option.extras, key=lambda extra: extra.price)
    return letter.speak(
        "On the tab of this option, from {price}, each with a limit.", price=money(least.price, letter.language)
    )
