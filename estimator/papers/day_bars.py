"""An option's schedule in, a picture of it out: a bar a crew by half day, days without drains below, dates where they are known."""

from math import ceil

from estimator.drawing.canvas import Canvas, text_wide
from estimator.model.schedule import Schedule
from estimator.papers.letter import Letter
from estimator.wording.plain import CREWS, in_plain_words
from estimator.wording.say import capital

WIDTH, MARGIN, AFTER, BAR, HEAD = 660.0, 3.0, 12.0, 15.0, 18.0
MOST_DAY, LONG_DAY, SHORT_DAY, SIZE = 64.0, 40.0, 22.0, 11.0
INK, QUIET, OFF, GRID = "#222B33", "#5B6770", "#E3A79B", "#D5DBDF"


def day_bars(letter: Letter, schedule: Schedule) -> tuple[bytes, int, str] | None:
    """Return the PNG, its height on paper (points of 1/96 in) and its words; None without tasks."""
    if not schedule.tasks:
        return None
    speak = letter.speak
    days = max(1, ceil(schedule.days_on_site))
    accent = f"#{letter.quote.firm.accent.lstrip('#')}"
    bars = [(crew_at_work(letter, schedule, crew), schedule.half_days_of(crew), accent) for crew in schedule.crews]
    bars.append((speak("drains out of service"), schedule.half_days_off, OFF))
    left = max(text_wide(capital(name), SIZE) for name, *_ in bars) + MARGIN + AFTER
    day = min(MOST_DAY, (WIDTH - left) / days)
    canvas = Canvas(WIDTH, HEAD + len(bars) * BAR + 4)
    for number in range(days + 1):
        x = left + number * day
        canvas.line([(x, HEAD - 4), (x, HEAD + len(bars) * BAR)], GRID, 0.8)
        if number < days and (day >= SHORT_DAY or number == 0 or (number + 1) % 5 == 0):
            words = speak("day {first}", first=number + 1) if day >= LONG_DAY else str(number + 1)
            canvas.text((x + day / 2, HEAD / 2), words, 10, QUIET, anchor="mm")
    for row, (name, halves, color) in enumerate(bars):
        top = HEAD + row * BAR
        canvas.text((MARGIN, top + BAR / 2), capital(name), SIZE, INK, anchor="lm")
        for half in halves:
            canvas.box(
                left + half * day / 2 + 0.5, top + 3, left + (half + 1) * day / 2 - 0.5, top + BAR - 3, fill=color
            )
    return canvas.png(), round(canvas.height), speak("Who works on which day, and when the drains are out of service.")


def crew_at_work(letter: Letter, schedule: Schedule, crew: str) -> str:
    """Return the crew's name, and how many of it work side by side where there is more than one."""
    name, count = letter.say(in_plain_words(CREWS, crew)), schedule.gangs_of(crew)
    return name if count == 1 else letter.speak("{crew}, {count} side by side", crew=name, count=count)
