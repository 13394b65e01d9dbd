"""An option's schedule in; bars by crew and day for a terminal out, what happens on which day under them, and what may move it."""

from collections.abc import Iterator
from math import ceil

from estimator.cli.views.layout import Layout
from estimator.cli.views.words import Words
from estimator.model.half_days import HALF_DAY
from estimator.model.schedule import DaySpan, Schedule
from estimator.wording.numbers import days as in_days

WORKS, OFF, FREE = "█", "▒", "·"
"""A half day a crew is there; a half day no drain may be used; a half day without."""


def write_schedule(out: Layout, schedule: Schedule) -> None:
    """Two letters a day for each crew, the drains under them, then the days in words. Nothing without tasks."""
    if not schedule.tasks:
        return
    days = ceil(schedule.days_on_site)
    bars = [(out.speak("day"), "".join(f"{day:<2}" if day < 100 else "  " for day in range(1, days + 1)))]
    bars += [(out.term(crew), _bar(days, schedule.half_days_of(crew), WORKS)) for crew in schedule.crews]
    bars.append((out.speak("no drains"), _bar(days, schedule.half_days_off, OFF)))
    wide = max(len(label) for label, _ in bars) + 2
    out.heading(out.speak("Who works when"))
    out.lines(f"{label:<{wide}}{bar}".rstrip() for label, bar in bars if len(bar) + wide <= out.columns)
    out.pairs([(_when(span, out), out.sentence(span.text)) for span in schedule.calendar])
    for text in _moves(schedule, out):
        out.paragraph(text, hanging=2)


def _bar(days: int, halves: tuple[int, ...], mark: str) -> str:
    """Two letters a day, so that bars stand under their days in letters of one width."""
    return "".join(mark if n in halves else FREE for n in range(2 * days))


def _when(span: DaySpan, words: Words) -> str:
    start, end = int(span.start) + 1, ceil(span.start + span.length)
    first, last = words.number(start), words.number(end)
    if start != end:
        days = words.speak("days {first} to {last}", first=first, last=last)
    elif span.length != HALF_DAY:
        days = words.speak("day {first}", first=first)
    elif span.start == int(span.start):
        days = words.speak("day {first}, morning", first=first)
    else:
        days = words.speak("day {first}, afternoon", first=first)
    return f"{days} ({words.speak('no drains')})" if span.no_drains else days


def _moves(schedule: Schedule, words: Words) -> Iterator[str]:
    for crew in schedule.crews:
        if later := schedule.later_days_of(crew):
            said = {"crew": words.term(crew), "days": in_days(later, words.language)}
            yield words.speak("Second visit, on another day: {crew}, {days}.", **said)
    if asked := schedule.half_days_asked:
        on = ", ".join(map(words.number, sorted({half // 2 + 1 for half in asked})))
        yield words.speak("Ask before you run water: days {days}.", days=on)
    if schedule.leads:
        leads = ", ".join(f"{words.say(lead.what)} {lead.working_days}" for lead in schedule.leads)
        yield words.speak("Before the first day, working days: {leads}.", leads=leads)
    if schedule.risks:
        risks = ", ".join(f"{words.say(risk.what)} +{words.number(risk.days)}" for risk in schedule.risks)
        yield words.speak("May move the end, days: {risks}.", risks=risks)
