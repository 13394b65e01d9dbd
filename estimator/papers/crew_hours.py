"""Notes of the job, tests to show, and the table of actual hours and quantities by line of the estimate, read back later."""

from estimator.model.frozen import Frozen
from estimator.model.languages import LANGUAGES
from estimator.model.offer import Option
from estimator.model.price import TaskHours
from estimator.model.say import Say
from estimator.papers.crew_limits import job_notes, tests_and_pictures
from estimator.papers.crew_page import close, crew_page
from estimator.papers.letter import Letter
from estimator.pricing.actuals import CAUSES
from estimator.sheets.book import Cell, Sheet
from estimator.wording.plain import UNITS, in_plain_words
from estimator.wording.say import say, spoken

WIDTHS = (20.0, 22.0, 13.0, 8.0, 8.0, 7.0, 7.0, 12.0, 11.0)
ROW_PT = 13.0
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


class Planned(Frozen):
    """One row: a task of a work item, all pipes together."""

    work_item: str
    task: str
    crew: str
    unit: str
    quantity: float
    hours: float


def planned(tasks: tuple[TaskHours, ...]) -> list[Planned]:
    """Return each task of each work item once."""
    sums: dict[tuple[str, str, str, str], tuple[float, float]] = {}
    for task in tasks:
        key = (task.work_item, task.task, task.crew, task.unit)
        quantity, hours = sums.get(key, (0.0, 0.0))
        sums[key] = quantity + task.quantity, hours + task.hours
    return [Planned(*key, quantity, hours) for key, (quantity, hours) in sums.items()]


def hours_sheet(letter: Letter, option: Option) -> Sheet:
    """Return the table to fill in."""
    speak, language = letter.speak, letter.language
    page = crew_page(letter, speak("Hours {letter}", letter=option.letter), WIDTHS, speak("Job notes, tests, hours"))
    job_notes(letter, page, option)
    tests_and_pictures(letter, page, option)
    page.heading(speak("Actual hours: write each day"))
    causes = ", ".join(spoken(cause, language) for cause in CAUSES if cause)
    page.line(speak("Cause of more hours: {causes}", causes=causes), "quiet")
    row = page.add(*(Cell(text, "head") for text in (*heads(language), speak("planned hours"))))
    for one in planned(option.all_tasks):
        page.add(
            Cell(spoken(one.work_item, language), "cell quiet"), Cell(spoken(one.task, language), "cell"), Cell(spoken(one.crew, language), "cell quiet"),
            Cell(letter.say(in_plain_words(UNITS, one.unit)), "cell quiet"), Cell(round(one.quantity, 2), "number"),
            Cell(None, "input", open=True), Cell(None, "input", open=True), Cell("", "write", open=True), Cell(round(one.hours, 1), "number"), height_pt=ROW_PT,
        )  # fmt: skip
    return close(letter, page, (row, row))
