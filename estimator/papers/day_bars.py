"""An option's schedule in, a picture of it out: a bar a crew by half day, days without drains below, dates where they are known."""

from math import ceil

from estimator.drawing.canvas import Canvas
from estimator.model.schedule import Schedule
from estimator.papers.letter import Letter
from estimator.wording.plain import CREWS, in_plain_words
from estimator.wording.say import capital

WIDTH, LEFT, BAR, HEAD = 660.0, 150.0, 15.0, 18.0
MOST_DAY = 64.0
INK, QUIET, OFF, GRID = "#222B33", "#5B6770", "#E3A79B", "#D5DBDF"


def day_bars(letter: Letter, schedule: Schedule) -> tuple[bytes, int, str] | None:
    """Return the PNG, its height on paper (points of 1/96 in) and its words; None without tasks."""
    if not schedule.tasks:
        return None
    speak = letter.speak
    days = max(1, ceil(schedule.days_on_site))
    day = min(MOST_DAY, (WIDTH - LEFT) / days)
    rows = len(schedule.crews) + 1
    canvas = Canvas(WIDTH, HEAD + rows * BAR + 4)
    for number in range(days + 1):
        x = LEFT + number * day
        canvas.line([(x, HEAD - 4), (x, HEAD + rows * BAR)], GRID, 0.8)
        step = 1 if day >= 22 else 5
        if number < days and (number + 1 == 1 or (number + 1) % step == 0):
            canvas.text(
                (x + day / 2, HEAD / 2),
                speak("day {first}", first=number + 1) if day >= 40 else str(number + 1),
                10,
                QUIET,
                anchor="mm",
            )
    accent = f"#{letter.quote.firm.accent.lstrip('#')}"
    for row, crew in enumerate(schedule.crews):
        _row(canvas, letter.say(in_plain_words(CREWS, crew)), row, schedule.half_days_of(crew), day, accent)
    _row(canvas, speak("drains out of service"), rows - 1, schedule.half_days_off, day, OFF)
    return canvas.png(), round(canvas.height), speak("Who works on which day, and when the drains are out of service.")


def _row(canvas: Canvas, name: str, row: int, halves: tuple[int, ...], day: float, color: str) -> None:
    top = HEAD + row * BAR
    canvas.text((0, top + BAR / 2), capital(name), 11, INK, anchor="lm")
    for half in halves:
        canvas.box(LEFT + half * day / 2 + 0.5, top + 3, LEFT + (half + 1) * day / 2 - 0.5, top + BAR - 3, fill=color)
