"""An option's schedule in; bars by crew and day for a terminal out, what happens on which day under them, and what may move it."""

from math import ceil

from estimator.cli.views.screen import Row
from estimator.cli.views.table import indented, table
from estimator.cli.views.vocabulary import term
from estimator.cli.views.words import ENGLISH, number, sentence
from estimator.model.half_days import HALF_DAY
from estimator.model.schedule import DaySpan, Schedule
from estimator.wording.numbers import days as in_days
from estimator.wording.say import say, speaker

WORKS, OFF, FREE = "█", "▒", "·"
"""A half day a crew is there; a half day no drain may be used; a half day without."""


def rows(schedule: Schedule, columns: int, language: str = ENGLISH) -> list[Row]:
    """Return two letters a day for each crew, the drains under them, then the days in words. Nothing without tasks."""
    if not schedule.tasks:
        return []
    speak = speaker(language)
    days = ceil(schedule.days_on_site)
    lines = [(speak("day"), "".join(f"{day:<2}" if day < 100 else "  " for day in range(1, days + 1)))]
    lines += [(term(crew, language), _bar(days, schedule.half_days_of(crew), WORKS)) for crew in schedule.crews]
    lines.append((speak("no drains"), _bar(days, schedule.half_days_off, OFF)))
    wide = max(len(label) for label, _ in lines) + 2
    out = [Row(""), Row(speak("Who works when"), "head")]
    out += [Row(f"{label:<{wide}}{bar}".rstrip()) for label, bar in lines if len(bar) + wide <= columns]
    cells = [(_when(span, language), sentence(span.text, language)) for span in schedule.calendar]
    out += [Row(line) for line in table(("", ""), cells, columns)]
    return out + [Row(line) for text in _moves(schedule, language) for line in indented(text, columns, by=0, hanging=2)]


def _bar(days: int, halves: tuple[int, ...], mark: str) -> str:
    """Two letters a day, so that bars stand under their days in letters of one width."""
    return "".join(mark if n in halves else FREE for n in range(2 * days))


def _when(span: DaySpan, language: str) -> str:
    speak = speaker(language)
    first, last = int(span.start) + 1, ceil(span.start + span.length)
    if first == last and span.length == HALF_DAY:
        morning = span.start == int(span.start)
        days = (
            speak("day {first}, morning", first=number(first))
            if morning
            else speak("day {first}, afternoon", first=number(first))
        )
    elif first == last:
        days = speak("day {first}", first=number(first))
    else:
        days = speak("days {first} to {last}", first=number(first), last=number(last))
    return f"{days} ({speak('no drains')})" if span.no_drains else days


def _moves(schedule: Schedule, language: str) -> list[str]:
    speak = speaker(language)
    later = [(crew, schedule.later_days_of(crew)) for crew in schedule.crews]
    out = [
        speak("Second visit, on another day: {crew}, {days}.", crew=term(crew, language), days=in_days(count, language))
        for crew, count in later
        if count
    ]
    if asked := schedule.half_days_asked:
        on = ", ".join(number(day) for day in sorted({half // 2 + 1 for half in asked}))
        out.append(speak("Ask before you run water: days {days}.", days=on))
    if schedule.leads:
        said = ", ".join(f"{say(lead.what, language)} {lead.working_days}" for lead in schedule.leads)
        out.append(speak("Before the first day, working days: {leads}.", leads=said))
    if schedule.risks:
        said = ", ".join(f"{say(risk.what, language)} +{number(risk.days)}" for risk in schedule.risks)
        out.append(speak("May move the end, days: {risks}.", risks=said))
    return out
