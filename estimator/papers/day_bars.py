"""An option's schedule in, a picture of it out: a bar a crew by half day, days without drains below, dates where they are known."""

from math import ceil

from estimator.drawing.canvas import Canvas, text_wide
from estimator.model.frozen import Frozen
from estimator.model.schedule import Schedule
from estimator.papers.letter import Letter
from estimator.wording.plain import CREWS, in_plain_words
from estimator.wording.say import capital

WIDTH, MARGIN, AFTER, BAR, HEAD = 660.0, 3.0, 12.0, 15.0, 18.0
MOST_DAY, LONG_DAY, SHORT_DAY, SIZE = 64.0, 40.0, 22.0, 11.0
INK, QUIET, OFF, ASK, GRID = "#222B33", "#5B6770", "#E3A79B", "#F0CFA0", "#D5DBDF"


def day_bars(letter: Letter, schedule: Schedule) -> tuple[bytes, int, str] | None:
    """Return the PNG, its height on paper (points of 1/96 in) and its words; None without tasks.

    A second visit, after a foundation lift, stands behind a gap that names the lift.
    """
    if not schedule.tasks:
        return None
    speak, accent = letter.speak, f"#{letter.quote.firm.accent.lstrip('#')}"
    days, later = max(1, ceil(schedule.days_on_site)), ceil(schedule.days_later)
    visits = {crew: int(2 * schedule.later_days_of(crew)) for crew in schedule.crews}
    bars = [
        (crew_at_work(letter, schedule, crew), (*schedule.half_days_of(crew), *_later(days, visits[crew])), accent)
        for crew in schedule.crews
    ]
    bars.append((speak("drains out of service"), schedule.half_days_off, OFF))
    if asked := schedule.half_days_asked:
        bars.append((speak("ask before you run water"), asked, ASK))
    left = max(text_wide(capital(name), SIZE) for name, *_ in bars) + MARGIN + AFTER
    gap = text_wide(speak("foundation lift"), 10) + AFTER if later else 0.0
    scale = _Scale(left, min(MOST_DAY, (WIDTH - left - gap) / (days + later)), days, gap)
    canvas = Canvas(WIDTH, HEAD + len(bars) * BAR + 4)
    _days(letter, canvas, scale, later, len(bars))
    for row, (name, halves, color) in enumerate(bars):
        top = HEAD + row * BAR
        canvas.text((MARGIN, top + BAR / 2), capital(name), SIZE, INK, anchor="lm")
        for half in halves:
            x = scale.x(half // 2) + half % 2 * scale.day / 2
            canvas.box(x + 0.5, top + 3, x + scale.day / 2 - 0.5, top + BAR - 3, fill=color)
    return canvas.png(), round(canvas.height), speak("Who works on which day, and when the drains are out of service.")


class _Scale(Frozen):
    """Where days lie on the picture: from `left`, `day` points each; after so many `days` there is a gap."""

    left: float
    day: float
    days: int
    gap: float

    def x(self, number: int) -> float:
        return self.left + number * self.day + (self.gap if number >= self.days else 0.0)


def _later(days: int, halves: int) -> range:
    return range(2 * days, 2 * days + halves)


def _days(letter: Letter, canvas: Canvas, scale: _Scale, later: int, rows: int) -> None:
    """The days with their numbers, a line before each and after the last; the lift, then the days of the second visit."""
    speak, foot = letter.speak, HEAD + rows * BAR
    starts = [scale.x(number) for number in range(scale.days + later)]
    for x in (*starts, scale.left + scale.days * scale.day, scale.x(scale.days + later)):
        canvas.line([(x, HEAD - 4), (x, foot)], GRID, 0.8)
    for number, x in enumerate(starts):
        words = _named(letter, scale, number)
        if words:
            canvas.text((x + scale.day / 2, HEAD / 2), words, 10, QUIET, anchor="mm")
    if later:
        canvas.text((starts[scale.days] - scale.gap / 2, HEAD / 2), speak("foundation lift"), 10, QUIET, anchor="mm")


def _named(letter: Letter, scale: _Scale, number: int) -> str:
    if scale.day >= LONG_DAY:
        return letter.speak("day {first}", first=number + 1)
    named = scale.day >= SHORT_DAY or number == 0 or (number + 1) % 5 == 0
    return str(number + 1) if named else ""


def crew_at_work(letter: Letter, schedule: Schedule, crew: str) -> str:
    """Return the crew's name, and how many of it work side by side where there is more than one."""
    name, count = letter.say(in_plain_words(CREWS, crew)), schedule.gangs_of(crew)
    return name if count == 1 else letter.speak("{crew}, {count} side by side", crew=name, count=count)
