"""One option for the crew: the day plan, the work in order with boxes, what others do."""

from collections.abc import Callable

from estimator.model.offer import Option
from estimator.model.price import LineItem
from estimator.model.work import all_repairs
from estimator.papers import option_words
from estimator.papers.crew_limits import stop_and_call
from estimator.papers.crew_page import close, crew_page
from estimator.papers.crew_plan import crews_and_days, plan
from estimator.papers.crew_words import BY_OTHERS, crew_words
from estimator.papers.letter import Letter
from estimator.papers.page import Page
from estimator.sheets.book import Cell, Sheet
from estimator.wording.numbers import number
from estimator.wording.plain import CLASSES, ONE, UNITS, in_plain_words
from estimator.wording.say import spoken

WIDTHS = (4.0, 20.0, 34.0, 22.0, 17.0, 11.0)


def work_sheet(letter: Letter, option: Option, sold: str, below: Callable[[Page], None] = lambda _: None) -> Sheet:
    """Return what to do, when and in which order; `sold` says whether the option was accepted, `below` writes under it."""
    speak = letter.speak
    page = crew_page(letter, speak("Work {letter}", letter=option.letter), WIDTHS, option_words.title(letter, option))
    page.line(sold, "quiet")
    plan(letter, page, option.schedule)
    page.heading(speak("Work, in this order"))
    heads = (speak("Work"), speak("How much"), speak("Crew"), speak("Days"))
    page.add(Cell("", "head"), *(Cell(text, "head", span) for text, span in zip(heads, (2, 1, 1, 1), strict=True)))
    own = [line for line in option.price.lines if line.price_class not in BY_OTHERS and line.work_class in CLASSES]
    for work_class, text in CLASSES.items():
        _tasks(letter, page, option, letter.say(text), [line for line in own if line.work_class == work_class])
    others = by_task(letter, [line for line in option.price.lines if line.price_class in BY_OTHERS])
    if others:
        page.line(speak("By others (office schedules): {what}", what="; ".join(others)), "bold")
    stop_and_call(letter, page, option)
    below(page)
    return close(letter, page)


def _tasks(letter: Letter, page: Page, option: Option, head: str, lines: list[LineItem]) -> None:
    """Each task once, with how much of it on which pipe, who does it and when."""
    tasks = by_task(letter, lines)
    if tasks:
        page.line(head, "bold")
    for said, mine in tasks.items():
        crews, days = crews_and_days(letter, option, mine)
        amounts = "; ".join(_amounts(letter, option, mine))
        page.add(
            Cell("☐", "tick", open=True), Cell(said, "cell", 2), Cell(amounts, "cell"), Cell(crews, "cell quiet"), Cell(days, "cell")
        )  # fmt: skip


def by_task(letter: Letter, lines: list[LineItem]) -> dict[str, list[LineItem]]:
    """The lines of each task, by what the crew reads."""
    out: dict[str, list[LineItem]] = {}
    for line in lines:
        out.setdefault(crew_words(letter, line), []).append(line)
    return out


def _amounts(letter: Letter, option: Option, lines: list[LineItem]) -> list[str]:
    """How much of one task; the pipe is named where there is more than one of them."""
    pipes = {r.id: spoken(r.line, letter.language) for r in all_repairs(option.scope.repairs)}
    amounts = [(how_much_work(letter, line), pipes.get(line.repair, "") if len(lines) > 1 else "") for line in lines]
    return [f"{amount} {pipe}".strip() for amount, pipe in amounts if amount or pipe]


def how_much_work(letter: Letter, line: LineItem) -> str:
    """`12.7 ft`, `2 each`; nothing for what is done once."""
    if line.size_unit in ("job", "") or (line.size_unit == "each" and line.size == 1):
        return ""
    units = {**UNITS, **ONE} if line.size == 1 else UNITS
    return f"{number(line.size, letter.language, 1)} {letter.say(in_plain_words(units, line.size_unit))}"
