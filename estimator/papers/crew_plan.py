"""An option's schedule in, the day plan for the crew out: a bar a crew, half day by half day, and the days of each work item."""

from collections.abc import Iterable
from dataclasses import replace
from math import ceil

from estimator.model.offer import Option
from estimator.model.price import LineItem
from estimator.model.schedule import DaySpan, Schedule, Task
from estimator.model.steps import LATER
from estimator.papers import option_words
from estimator.papers.day_bars import day_bars
from estimator.papers.letter import Letter
from estimator.papers.page import Page
from estimator.wording.plain import CREWS, in_plain_words


def plan(letter: Letter, page: Page, schedule: Schedule) -> None:
    """The bars of the crews and of the drains, then the drains and a second visit in words."""
    speak = letter.speak
    if not (drawn := day_bars(letter, schedule)):
        return
    data, height, alt = drawn
    page.heading(speak("Day plan"))
    page.drawing(data, alt, height)
    if off := [when(letter, span) for span in without_drains(schedule.calendar)]:
        page.line(speak("Drains out of service: {days}.", days=", ".join(off)), "bold")
    for crew in schedule.crews:
        if later := schedule.later_days_of(crew):
            name, days = letter.say(in_plain_words(CREWS, crew)), option_words.in_days(letter, later)
            page.line(speak("Second visit, on another day: {crew}, {days}.", crew=name, days=days))


def crews_and_days(letter: Letter, option: Option, lines: Iterable[LineItem]) -> tuple[str, str]:
    """Return who does these lines of work and on which days, `2–4, 6`; nothing for what stands in no schedule."""
    tasks = [t for line in lines for t in tasks_of(option, line)]
    crews = dict.fromkeys(letter.say(in_plain_words(CREWS, t.crew)) for t in tasks)
    days = sorted({day for t in tasks if t.step != LATER for day in _days(option.schedule, t)})
    later = letter.speak("later visit") if any(t.step == LATER for t in tasks) else ""
    return ", ".join(crews), ", ".join(part for part in (_in_short(days), later) if part)


def tasks_of(option: Option, line: LineItem) -> list[Task]:
    """The tasks on the schedule in which the line's own are done: those that share most with it."""
    mine = {t.task for t in option.all_tasks if (t.repair, t.work_item) == (line.repair, line.work_item)}
    shares = [
        (len(mine & set(t.items)) / len(mine | set(t.items)), t)
        for t in option.schedule.tasks
        if t.repair == line.repair and t.items
    ]
    most = max((share for share, _ in shares), default=0.0)
    return [t for share, t in shares if share == most > 0]


def _days(schedule: Schedule, task: Task) -> range:
    first = int((task.start + SHORT_H) // schedule.day_hours) + 1
    last = ceil((task.end - SHORT_H) / schedule.day_hours)
    return range(first, max(first, last) + 1)


SHORT_H = 0.25
"""Hours that make no day."""


def _in_short(days: list[int]) -> str:
    """The days with those on end drawn together."""
    spans: list[list[int]] = []
    for day in days:
        if spans and spans[-1][1] == day - 1:
            spans[-1][1] = day
        else:
            spans.append([day, day])
    return ", ".join(str(low) if low == high else f"{low}–{high}" for low, high in spans)


def without_drains(calendar: Iterable[DaySpan]) -> list[DaySpan]:
    """The spans without drains, those on end as one."""
    out: list[DaySpan] = []
    for span in (span for span in calendar if span.no_drains):
        last = out[-1] if out else None
        if last and last.start + last.length == span.start:
            out[-1] = replace(last, length=last.length + span.length)
        else:
            out.append(span)
    return out


def when(letter: Letter, span: DaySpan) -> str:
    """From which half day to which, in words."""
    end = span.start + span.length
    first, last = int(span.start) + 1, ceil(end)
    if first == last and span.length == 1:
        return letter.speak("day {first}", first=first)
    starts, ends = _half(letter, first, span.start != int(span.start)), _half(letter, last, end == int(end))
    return starts if starts == ends else letter.speak("from {start} to {end}", start=starts, end=ends)


def _half(letter: Letter, day: int, afternoon: bool) -> str:
    if afternoon:
        return letter.speak("day {first}, afternoon", first=day)
    return letter.speak("day {first}, morning", first=day)
