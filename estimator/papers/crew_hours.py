"""When the crew stops and calls, and the table of actual hours and quantities by line of the estimate, read back later."""

from dataclasses import dataclass

from estimator.model.offer import Option
from estimator.model.price import TaskHours
from estimator.model.say import Say
from estimator.papers.crew_limits import stop_and_call, tests_and_pictures
from estimator.papers.crew_page import close, crew_page
from estimator.papers.letter import Letter
from estimator.pricing.actuals import CAUSES
from estimator.sheets.book import Cell, Sheet
from estimator.wording.plain import UNITS, in_plain_words
from estimator.wording.say import LANGUAGES, say, spoken

WIDTHS = (22.0, 20.0, 12.0, 9.0, 10.0, 10.0, 10.0, 16.0)
ROW_PT = 14.5
COLUMNS = ("work_item", "task", "crew", "unit", "planned", "actual", "hours", "cause")
HEADS: dict[str, Say] = {
    "work_item": Say.of("work"), "task": Say.of("task"), "crew": Say.of("crew"), "unit": Say.of("unit"),
    "planned": Say.of("planned"), "actual": Say.of("actual"), "hours": Say.of("hours"), "cause": Say.of("cause"),
}  # fmt: skip


def heads(language: str) -> tuple[str, ...]:
    """The columns' heads by which the sheet is found again."""
    return tuple(say(HEADS[column], language) for column in COLUMNS)


def written(word: str) -> frozenset[str]:
    """Return every way in which the sheet writes a word of the tables, small letters."""
    return frozenset({word.lower(), *(spoken(word, language).lower() for language in LANGUAGES)})


@dataclass(frozen=True, slots=True)
class Planned:
    """One row: a task of a work item, all pipes together."""

    work_item: str
    task: str
    crew: str
    unit: str
    quantity: float


def planned(tasks: tuple[TaskHours, ...]) -> list[Planned]:
    """Return each task of each work item once."""
    sums: dict[tuple[str, str, str, str], float] = {}
    for task in tasks:
        key = (task.work_item, task.task, task.crew, task.unit)
        sums[key] = sums.get(key, 0.0) + task.quantity
    return [Planned(*key, quantity) for key, quantity in sums.items()]


def hours_sheet(letter: Letter, option: Option) -> Sheet:
    """Return the table to fill in."""
    speak, language = letter.speak, letter.language
    page = crew_page(
        letter, speak("Hours {letter}", letter=option.letter), WIDTHS, speak("Stop and call, tests, hours")
    )
    stop_and_call(letter, page, option)
    tests_and_pictures(letter, page, option)
    page.heading(speak("Actual hours: write each day"))
    causes = ", ".join(spoken(cause, language) for cause in CAUSES if cause)
    page.line(speak("Cause of more hours: {causes}", causes=causes), "quiet")
    row = page.add(*(Cell(text, "head") for text in heads(language)))
    for one in planned(option.all_tasks):
        page.add(
            Cell(spoken(one.work_item, language), "cell quiet"), Cell(spoken(one.task, language), "cell"), Cell(spoken(one.crew, language), "cell quiet"),
            Cell(letter.say(in_plain_words(UNITS, one.unit)), "cell quiet"), Cell(round(one.quantity, 2), "number"),
            Cell(None, "input", open=True), Cell(None, "input", open=True), Cell("", "write", open=True), height_pt=ROW_PT,
        )  # fmt: skip
    return close(letter, page, (row, row))
