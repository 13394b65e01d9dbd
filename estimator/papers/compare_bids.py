"""Other bids beside ours: questions, our answers filled in, two empty columns."""

from decimal import Decimal

from estimator.model.offer import Option
from estimator.model.stretch import Stretch, joined
from estimator.papers import option_words
from estimator.papers.competent_person import digs
from estimator.papers.letter import Letter
from estimator.papers.lift import comes_back
from estimator.papers.line_items import short
from estimator.papers.page import Page
from estimator.quote import where
from estimator.quote.recommend import recommended
from estimator.sheets.book import Cell
from estimator.wording.numbers import feet, money
from estimator.wording.plain import LINES, in_plain_words
from estimator.wording.say import capital

MOST_NAMED = 4  # works in one answer; more are a list on the option's page
OURS, THEIRS = 6, 3
"""Of the narrow columns of the page."""


def compare_bids(letter: Letter, page: Page) -> None:
    """Questions for other bidders, with our answers for the option we recommend, else the first."""
    speak = letter.speak
    option = recommended(letter.quote) or letter.quote.options[0]
    page.gap(6)
    page.add(
        Cell(speak("Ask other bidders"), "head"),
        Cell(speak("Option {letter}", letter=option.letter), "head", OURS),
        Cell(speak("Bid 2"), "head centre", THEIRS, open=True),
        Cell(speak("Bid 3"), "head centre", THEIRS, open=True),
        starts=True,
    )
    for question, answer in questions(letter, option):
        boxes = (Cell("", "empty box", THEIRS, open=True), Cell("", "empty box", THEIRS, open=True))
        page.table_row(Cell(question, "label"), Cell(answer, "value", OURS), *boxes)


def questions(letter: Letter, option: Option) -> list[tuple[str, str]]:
    """What to ask, and what we answer; what has no answer here is left out."""
    speak = letter.speak
    price = money(option.price.total, letter.language)
    asked = [
        (speak("Price and maximum?"), f"{price}. {option_words.not_over(letter, option)}" if option.fixed else price),
        (speak("How many feet of pipe?"), feet_by_line(letter, option)),
        (speak("What existing pipe remains?"), option_words.old_pipe(letter, option)),
        (speak("Who keeps the crew safe?"), crew_safety(letter, option)),
        (speak("What is water-tested?"), water_tested(letter, option)),
        (speak("Permit fees?"), permit(letter, option)),
        (speak("What is restored?"), put_back(letter, option)),
        (speak("Unit prices?"), more(letter, option)),
        (speak("Warranty?"), option_words.warranty(letter, option).split(". ")[0]),
        (speak("Days without drains?"), option_words.in_days(letter, option.days_without_drains)),
    ]  # fmt: skip
    return [(question, answer) for question, answer in asked if answer]


def water_tested(letter: Letter, option: Option) -> str:
    """What the test of the work covers, and the test at the visit after a lift."""
    tested = option_words.tested(letter, option)
    return letter.speak("{part}; after the lift, all", part=tested) if comes_back(option) else tested


def feet_by_line(letter: Letter, option: Option) -> str:
    """How many feet of each line are renewed, or cleaned where none are: "Kitchen line 12 ft 8 in, main line 23 ft"; else nothing.

    A foot on which two repairs work is one foot.
    """
    renewed, cleaned = dict[str, list[Stretch]](), dict[str, list[Stretch]]()
    for takeoff in option.takeoffs:
        repair, works = takeoff.repair, takeoff.works
        if repair.line and (works.new_pipe or works.lined or works.cleans):
            kind = renewed if works.new_pipe or works.lined else cleaned
            kind.setdefault(repair.line, []).append(where.worked_on(letter.quote.job.line(repair.line), repair))
    out = []
    for name, parts in (cleaned | renewed).items():
        length = sum(where.on_paper(letter.quote.job.line(name), part.length_ft) for part in joined(parts))
        out.append(f"{letter.say(in_plain_words(LINES, name))} {feet(length, letter.language)}")
    return capital(", ".join(out))


def crew_safety(letter: Letter, option: Option) -> str:
    """What is so: a person is promised only where one is named, and only where there is something to answer for."""
    speak, named = letter.speak, letter.quote.job.site.competent_person.strip()
    engineer = sum(t.value("engineer_letters") for t in option.takeoffs)
    if not digs(option):
        shown = any(o.kind == "pothole" for o in option.works.openings)
        who = speak("No one enters the hole.") if shown else speak("No excavation.")
    elif named:
        who = speak("Competent person: {name}.", name=named)
    else:
        who = speak("We name the competent person before work starts.")
    return f"{who} {speak('An engineer’s letter is in the price.')}" if engineer else who


def permit(letter: Letter, option: Option) -> str:
    fees = [line for line in option.price.lines if line.price_class == "pass-through"]
    if not fees:
        return ""
    total = sum((line.amount for line in fees), Decimal(0))
    return letter.speak("{amount}, in our price", amount=money(total, letter.language))


def put_back(letter: Letter, option: Option) -> str:
    """What puts back what was opened, allowances left out; a long list ends on the option's sheet; of a way that opens nothing that."""
    speak = letter.speak
    back = [line for line in option.price.lines if line.work_class == "put back" and line.price_class != "allowance"]
    texts = list(dict.fromkeys(short(letter.text(line)) for line in back))
    if texts:
        return "; ".join([*texts[:MOST_NAMED], *([speak("see this option's tab")] if texts[MOST_NAMED:] else [])])
    if option.works.openings:
        return speak("see this option's tab")
    return speak("Nothing is opened.")


def more(letter: Letter, option: Option) -> str:
    if not option.extras:
        return letter.speak("We add nothing without a signed change order.")
    least = min(option.extras, key=lambda extra: extra.price)
    return letter.speak("From {price}, each with a limit.", price=money(least.price, letter.language))
