"""The quote in, one drawing out: each line from the side with ground, floor, beams, pipe and findings, a bar an option below."""

from itertools import pairwise

from estimator.drawing.canvas import Canvas
from estimator.model.profile import Profile
from estimator.model.stretch import Stretch
from estimator.onsite.plan_picture import in_words
from estimator.papers.heights import height_at
from estimator.papers.house_plan import FOOT, draw_plan, frame_below, frame_beside, plan_sketch
from estimator.papers.letter import Letter
from estimator.papers.line_words import counted_from, title
from estimator.papers.section_bars import LEGEND_ROW, bar, legend, options_on, signs_of
from estimator.papers.section_view import (
    AMBER,
    BAR,
    CONCRETE,
    GRASS,
    GUESSED_DEPTH_FT,
    HARD,
    HEAD,
    INK,
    LEFT,
    MOST_SCALE,
    PIPE,
    QUIET,
    RED,
    RIGHT,
    SMALL,
    SOIL,
    TINY,
    USUAL_SLAB_FT,
    WIDTH,
    View,
    extent,
    view_of,
)  # fmt: skip
from estimator.wording.numbers import feet, number
from estimator.wording.places import OVER
from estimator.wording.plain import ROOMS, in_plain_words


def house_section(letter: Letter, *, short: bool = False) -> tuple[bytes, int, str] | None:
    """Return the PNG, its height on paper (points of 1/96 in) and its words for those who cannot see it; None without lines.

    `short`: the plan from above only where it fits beside a section.
    """
    lines = [line for line in letter.quote.job.lines if line.filmed or line.findings]
    if not lines:
        return None
    parts = [extent(letter, line) for line in lines]
    scale = min(MOST_SCALE, (WIDTH - LEFT - RIGHT) / max(part.length_ft for part in parts))
    views: list[View] = []
    ends = [0.0]
    for line, whole in zip(lines, parts, strict=True):
        view = view_of(letter, line, whole, scale, ends[-1])
        views.append(view)
        ends.append(view.bottom + BAR * len(options_on(letter, line)) + 8)
    signs, top = signs_of(letter, views), ends[-1]
    sketch = plan_sketch(letter)
    beside = frame_beside(sketch, views, ends[1:]) if sketch else None
    foot = top + 16 + LEGEND_ROW * len(signs)
    below = frame_below(sketch, foot) if sketch and beside is None and not short else None
    canvas = Canvas(WIDTH, foot if below is None else below.written[-1] + FOOT)
    for view in views:
        _draw(letter, canvas, view)
    legend(canvas, top + 4, signs)
    if sketch and (frame := beside or below):
        draw_plan(letter, canvas, sketch, frame)
    return canvas.png(), round(canvas.height), _in_words(letter, bool(beside or below))


def _draw(letter: Letter, canvas: Canvas, view: View) -> None:
    text = title(letter, view.line)
    canvas.text((0, view.top - HEAD + 1), text, 12.5, INK, bold=True)
    after = canvas.wide(text, 12.5, bold=True) + 10
    parts = _how_counted(letter, view, canvas, WIDTH - after)
    for row, part in enumerate(parts):
        canvas.text((after, view.top - HEAD + 3 - (len(parts) - 1) * 3 + row * (TINY + 1)), part, TINY, QUIET)
    _ground(letter, canvas, view)
    _beams(canvas, view)
    _pipe(canvas, view)
    _depths(letter, canvas, view)
    _letters(letter, canvas, view)
    _axis(letter, canvas, view)
    for row, option in enumerate(options_on(letter, view.line)):
        bar(letter, canvas, view, option, view.bottom + BAR * row)


def _how_counted(letter: Letter, view: View, canvas: Canvas, room: float) -> tuple[str, ...]:
    """Where feet are counted from and how heights are drawn: one line, two where one is too wide."""
    counted = counted_from(letter, view.line)
    if view.times == 1:
        return (counted,)
    times = letter.speak("Heights drawn {times} times as large.", times=view.times)
    together = f"{counted} {times}"
    return (together,) if canvas.wide(together, TINY) <= room else (counted, times)


def _ground(letter: Letter, canvas: Canvas, view: View) -> None:
    """Soil, floors and paving, and what lies above: rooms by name, else the yard, the driveway."""
    profile, floor = Profile(view.line), view.y(view.lowest_ft)
    for (x0, y0), (x1, y1) in pairwise(view.ground):
        if x1 > x0:
            canvas.shape(
                [(view.x(x0), view.y(y0)), (view.x(x1), view.y(y1)), (view.x(x1), floor), (view.x(x0), floor)], SOIL
            )
    thick = (letter.quote.job.house.slab_thickness_ft or USUAL_SLAB_FT) * view.scale * view.times
    named: list[tuple[Stretch, str]] = []
    for part, zone in profile.zones(view.whole):
        y = view.y(height_at(view.ground, part.middle_ft))
        if zone in HARD:
            canvas.box(view.x(part.from_ft), y, view.x(part.to_ft), y + max(2.5, thick), fill=CONCRETE)
        else:
            canvas.line([(view.x(part.from_ft), y), (view.x(part.to_ft), y)], GRASS, 2.0)
        rooms = _rooms(letter, profile, part) if zone in ("slab", "crawl", "basement") else []
        named += rooms or ([(part, letter.say(OVER[zone]))] if zone in OVER else [])
    for part, name in named:
        _over(canvas, view, part, name)


def _rooms(letter: Letter, profile: Profile, part: Stretch) -> list[tuple[Stretch, str]]:
    """Each room over the part with the stations it takes."""
    marks = sorted(m.stretch.from_ft for m in profile.marks("room"))
    cuts = [part.from_ft, *(at for at in marks if part.from_ft < at < part.to_ft), part.to_ft]
    found = [(Stretch(a, b), profile.room((a + b) / 2)) for a, b in pairwise(cuts) if b > a]
    return [(piece, letter.say(in_plain_words(ROOMS, room))) for piece, room in found if room]


def _over(canvas: Canvas, view: View, part: Stretch, name: str) -> None:
    left, right, y = view.x(part.from_ft), view.x(part.to_ft), view.top - HEAD + 26
    if canvas.wide(name, TINY) < right - left - 2:
        canvas.text(((left + right) / 2, y), name, TINY, QUIET, anchor="mm")
    canvas.line([(left, y - 5), (left, y + 5)], "#C3CBD0", 0.7)
    canvas.line([(right, y - 5), (right, y + 5)], "#C3CBD0", 0.7)


def _beams(canvas: Canvas, view: View) -> None:
    for beam in Profile(view.line).beams:
        part = beam.stretch if beam.stretch.length_ft else beam.stretch.padded(0.4, 0.4)
        top = height_at(view.ground, part.middle_ft)
        canvas.box(
            view.x(part.from_ft),
            view.y(top),
            view.x(part.to_ft),
            view.y(top - beam.bottom_below_slab_ft),
            fill=CONCRETE,
        )


def _pipe(canvas: Canvas, view: View) -> None:
    """As thick as it is; dashed where the camera did not see it or no depth was read."""
    profile = Profile(view.line)
    known = view.known or tuple((x, view.highest_ft - GUESSED_DEPTH_FT) for x in (view.whole.from_ft, view.whole.to_ft))
    whole = profile.extent
    width = max(2.6, view.line.size_in / 12 * view.scale * view.times)
    cuts = sorted(
        {whole.from_ft, whole.to_ft, *(x for x, _ in known), *(e for s in profile.filmed for e in (s.from_ft, s.to_ft))}
    )
    for a, b in pairwise(cuts):
        seen = bool(view.known) and any(s.from_ft <= (a + b) / 2 <= s.to_ft for s in profile.filmed)
        ends = [(view.x(at), view.y(height_at(known, at))) for at in (a, b)]
        if seen:
            canvas.line(ends, PIPE, width)
        else:
            canvas.line(ends, QUIET, 1.4, dash=5)


def _depths(letter: Letter, canvas: Canvas, view: View) -> None:
    """Feet below the ground outside, at the left."""
    if not view.known:
        over = view.y(view.highest_ft - GUESSED_DEPTH_FT) - 4
        canvas.text((LEFT + 4, over), letter.speak("depth unknown"), TINY, QUIET, anchor="ls")
        return
    least = 12.0
    step = next((s for s in (1, 2, 5, 10) if s * view.scale * view.times >= least), 20)
    depth = 0
    while -depth >= view.lowest_ft:
        y = view.y(-depth)
        canvas.line([(LEFT - 8, y), (LEFT - 4, y)], QUIET, 0.8)
        name = letter.speak("ground") if depth == 0 else feet(depth, letter.language)
        canvas.text((LEFT - 11, y), name, TINY, QUIET, anchor="rm")
        depth += step


def _letters(letter: Letter, canvas: Canvas, view: View) -> None:
    """A disc a finding above the ground, side by side where they would touch, with a stroke down to its place."""
    found = [(f, s) for f in letter.quote.found if f.line == view.line.name for s in f.places[:1]]
    y, last = view.top - HEAD + 42, LEFT - 20
    for entry, stretch in sorted(found, key=lambda pair: pair[1].middle_ft):
        color = RED if entry.act == "now" else AMBER
        x = max(last + 17, view.x(stretch.middle_ft))
        last = x
        at = (view.x(stretch.middle_ft), view.y(view.pipe_ft(stretch.middle_ft)))
        canvas.line([(x, y), at], color, 1.0)
        if stretch.length_ft > 0.5:
            ends = [(view.x(s), view.y(view.pipe_ft(s))) for s in (stretch.from_ft, stretch.middle_ft, stretch.to_ft)]
            canvas.line(ends, color, 3.2)
        else:
            canvas.disc(at, 3.2, color)
        canvas.disc((x, y), 7.5, color)
        canvas.text((x, y), entry.letter, SMALL, "#FFFFFF", bold=True, anchor="mm")


def _axis(letter: Letter, canvas: Canvas, view: View) -> None:
    y = view.y(view.lowest_ft) + 1
    step = next((s for s in (5, 10, 20, 50) if s * view.scale >= 34), 100)
    first = -(-int(view.whole.from_ft) // step) * step
    for at in range(first, int(view.whole.to_ft) + 1, step):
        words = feet(at, letter.language)
        canvas.line([(view.x(at), y), (view.x(at), y + 3)], QUIET, 0.8)
        middle = min(view.x(at), WIDTH - canvas.wide(words, TINY) / 2)
        canvas.text((middle, y + 4), words, TINY, QUIET, anchor="mt")


def _in_words(letter: Letter, plan: bool) -> str:
    """What the drawing shows, for those who cannot see it."""
    count = number(len(letter.quote.found), letter.language, 0)
    sides = letter.speak(
        "Your pipes from the side, drawn to scale, with {count} findings by letter and a bar for each option.",
        count=count,
    )
    return f"{sides} {letter.say(in_words(letter.quote.job))}" if plan else sides
