"""The quote in, one drawing out: each line from the side with ground, floor, beams, pipe and findings, a bar an option below."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from estimator.drawing.canvas import Canvas, text_wide
from estimator.model.line import Line
from estimator.model.offer import Option
from estimator.model.profile import Profile
from estimator.model.stretch import Stretch
from estimator.model.works import Opening
from estimator.papers.heights import Points, height_at, pipe, surface
from estimator.papers.letter import Letter
from estimator.papers.line_words import counted_from, title
from estimator.wording.numbers import number
from estimator.wording.plain import OVER, ROOMS, in_plain_words

WIDTH, LEFT, RIGHT = 640.0, 62.0, 14.0
MOST_SCALE = 26.0  # points a foot: a short line is not blown up further
LEAST_SECTION = 38.0  # points: a section lower than this is drawn with its heights enlarged
MOST_TIMES = 4
BAR, SMALL, TINY = 12.0, 10.5, 9.5
INK, QUIET, RED, AMBER = "#222B33", "#5B6770", "#B3261E", "#B7791F"
SOIL, CONCRETE, PIPE, GRASS = "#EFE7DA", "#B9BEC2", "#2F3E48", "#6B7A4B"
DIG, CUT = "#D9B88A", "#E3A79B"
Sign = tuple[str, str, str]
"""A mark of the legend: its shape, its color and its words."""
LEGEND_ROW = 14.0
GUESSED_DEPTH_FT, USUAL_SLAB_FT = 3.0, 4 / 12
HARD = ("slab", "basement", "drive", "walk", "street")


@dataclass(frozen=True)
class View:
    """How a line's stations and heights fall on the sheet."""

    line: Line
    known: Points
    ground: Points
    whole: Stretch
    scale: float
    times: int
    top: float
    highest_ft: float

    def x(self, at_ft: float) -> float:
        return LEFT + (at_ft - self.whole.from_ft) * self.scale

    def y(self, height_ft: float) -> float:
        return self.top + (self.highest_ft - height_ft) * self.scale * self.times


def house_section(letter: Letter) -> tuple[bytes, int, str] | None:
    """Return the PNG, its height on paper (points of 1/96 in) and its words for those who cannot see it; None without lines."""
    lines = [line for line in letter.quote.job.lines if line.filmed or line.findings]
    if not lines:
        return None
    parts = [_extent(letter, line) for line in lines]
    scale = min(MOST_SCALE, (WIDTH - LEFT - RIGHT) / max(part.length_ft for part in parts))
    views: list[View] = []
    top = 0.0
    for line, whole in zip(lines, parts, strict=True):
        view = _view(letter, line, whole, scale, top)
        views.append(view)
        top = _bottom(view) + BAR * len(_options(letter, line)) + 8
    signs = _signs(letter, views)
    canvas = Canvas(WIDTH, top + 16 + LEGEND_ROW * len(signs))
    for view in views:
        _draw(letter, canvas, view)
    _legend(canvas, top + 4, signs)
    return canvas.png(), round(canvas.height), _in_words(letter)


def _options(letter: Letter, line: Line) -> list[Option]:
    return [o for o in letter.quote.options if _touches(o, line)]


def _touches(option: Option, line: Line) -> bool:
    works = option.works
    parts = (*works.openings, *works.laid, *works.lined, *works.burst, *works.left)
    return any(part.line == line.name for part in parts)


def _extent(letter: Letter, line: Line) -> Stretch:
    whole = Profile(line).extent
    for option in letter.quote.options:
        for opening in option.works.openings:
            if opening.line == line.name:
                whole = whole.union(opening.at_top)
    return whole if whole.length_ft >= 1 else whole.padded(0.5, 0.5)


HEAD = 58.0
"""Points above the section: the line's name, rooms, letters."""


def _view(letter: Letter, line: Line, whole: Stretch, scale: float, top: float) -> View:
    profile, floor_ft = Profile(line), letter.quote.job.house.slab_above_grade_ft or 0.0
    known = pipe(profile, floor_ft)
    ground = _to_the_ends(surface(profile, floor_ft) or ((whole.from_ft, 0.0), (whole.to_ft, 0.0)), whole)
    highest = max(height for _, height in ground)
    lowest = min([height for _, height in known] or [highest - GUESSED_DEPTH_FT]) - 0.7
    high = (highest - lowest) * scale
    times = next((t for t in range(1, MOST_TIMES) if high * t >= LEAST_SECTION), MOST_TIMES)
    return View(line, known, ground, whole, scale, times, top + HEAD, highest)


def _to_the_ends(ground: Points, whole: Stretch) -> Points:
    """The ground as far as the drawing goes, level beyond what was noted."""
    (first, low), (last, high) = ground[0], ground[-1]
    before: Points = ((whole.from_ft, low),) if whole.from_ft < first else ()
    after: Points = ((whole.to_ft, high),) if whole.to_ft > last else ()
    return (*before, *ground, *after)


def _lowest(view: View) -> float:
    heights = [height for _, height in view.known] or [view.highest_ft - GUESSED_DEPTH_FT]
    return min(heights) - 0.7


def _bottom(view: View) -> float:
    return view.y(_lowest(view)) + 16


def _draw(letter: Letter, canvas: Canvas, view: View) -> None:
    text = title(letter, view.line)
    canvas.text((0, view.top - HEAD + 4), text, 12.5, INK, bold=True)
    after = canvas.wide(text, 12.5, bold=True) + 10
    canvas.text((after, view.top - HEAD + 6), _how_counted(letter, view), TINY, QUIET)
    _ground(letter, canvas, view)
    _beams(canvas, view)
    _pipe(canvas, view)
    _depths(letter, canvas, view)
    _letters(letter, canvas, view)
    _axis(letter, canvas, view)
    for row, option in enumerate(_options(letter, view.line)):
        _bar(letter, canvas, view, option, _bottom(view) + BAR * row)


def _how_counted(letter: Letter, view: View) -> str:
    counted = counted_from(letter, view.line)
    if view.times == 1:
        return counted
    return f"{counted} {letter.speak('Heights drawn {times} times as large.', times=view.times)}"


def _ground(letter: Letter, canvas: Canvas, view: View) -> None:
    """Soil, floors and paving, and what lies above: rooms by name, else the yard, the driveway."""
    profile, floor = Profile(view.line), view.y(_lowest(view))
    for (x0, y0), (x1, y1) in pairwise(view.ground):
        if x1 > x0:
            canvas.shape([(view.x(x0), view.y(y0)), (view.x(x1), view.y(y1)), (view.x(x1), floor), (view.x(x0), floor)], SOIL)
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
    left, right, y = view.x(part.from_ft), view.x(part.to_ft), view.top - HEAD + 30
    if canvas.wide(name, TINY) < right - left - 2:
        canvas.text(((left + right) / 2, y), name, TINY, QUIET, anchor="mm")
    canvas.line([(left, y - 5), (left, y + 5)], "#C3CBD0", 0.7)
    canvas.line([(right, y - 5), (right, y + 5)], "#C3CBD0", 0.7)


def _beams(canvas: Canvas, view: View) -> None:
    for beam in Profile(view.line).beams:
        part = beam.stretch if beam.stretch.length_ft else beam.stretch.padded(0.4, 0.4)
        top = height_at(view.ground, part.middle_ft)
        canvas.box(view.x(part.from_ft), view.y(top), view.x(part.to_ft), view.y(top - beam.bottom_below_slab_ft), fill=CONCRETE)


def _pipe(canvas: Canvas, view: View) -> None:
    """As thick as it is; dashed where the camera did not see it or no depth was read."""
    profile = Profile(view.line)
    known = view.known or tuple((x, view.highest_ft - GUESSED_DEPTH_FT) for x in (view.whole.from_ft, view.whole.to_ft))
    whole = profile.extent
    width = max(2.6, view.line.size_in / 12 * view.scale * view.times)
    cuts = sorted({whole.from_ft, whole.to_ft, *(x for x, _ in known), *(e for s in profile.filmed for e in (s.from_ft, s.to_ft))})
    for a, b in pairwise(cuts):
        seen = bool(view.known) and any(s.from_ft <= (a + b) / 2 <= s.to_ft for s in profile.filmed)
        ends = [(view.x(at), view.y(height_at(known, at))) for at in (a, b)]
        if seen:
            canvas.line(ends, PIPE, width)
        else:
            canvas.line(ends, QUIET, 1.4, dash=5)


def _pipe_height(view: View, at_ft: float) -> float:
    return height_at(view.known, at_ft) if view.known else view.highest_ft - GUESSED_DEPTH_FT


def _depths(letter: Letter, canvas: Canvas, view: View) -> None:
    """Feet below the ground outside, at the left."""
    if not view.known:
        canvas.text((0, view.y(view.highest_ft - GUESSED_DEPTH_FT)), letter.speak("depth unknown"), TINY, QUIET, anchor="lm")
        return
    least = 12.0
    step = next((s for s in (1, 2, 5, 10) if s * view.scale * view.times >= least), 20)
    depth = 0
    while -depth >= _lowest(view):
        y = view.y(-depth)
        canvas.line([(LEFT - 8, y), (LEFT - 4, y)], QUIET, 0.8)
        name = letter.speak("ground") if depth == 0 else letter.speak("{depth} ft", depth=depth)
        canvas.text((LEFT - 11, y), name, TINY, QUIET, anchor="rm")
        depth += step


def _letters(letter: Letter, canvas: Canvas, view: View) -> None:
    """A disc a finding above the ground, side by side where they would touch, with a stroke down to its place."""
    found = [(f, s) for f in letter.quote.found if f.line == view.line.name for s in f.places[:1]]
    y, last = view.top - HEAD + 47, LEFT - 20
    for entry, stretch in sorted(found, key=lambda pair: pair[1].middle_ft):
        color = RED if entry.act == "now" else AMBER
        x = max(last + 17, view.x(stretch.middle_ft))
        last = x
        at = (view.x(stretch.middle_ft), view.y(_pipe_height(view, stretch.middle_ft)))
        canvas.line([(x, y), at], color, 1.0)
        if stretch.length_ft > 0.5:
            ends = [(view.x(s), view.y(_pipe_height(view, s))) for s in (stretch.from_ft, stretch.middle_ft, stretch.to_ft)]
            canvas.line(ends, color, 3.2)
        else:
            canvas.disc(at, 3.2, color)
        canvas.disc((x, y), 7.5, color)
        canvas.text((x, y), entry.letter, SMALL, "#FFFFFF", bold=True, anchor="mm")


def _axis(letter: Letter, canvas: Canvas, view: View) -> None:
    y = view.y(_lowest(view)) + 1
    step = next((s for s in (5, 10, 20, 50) if s * view.scale >= 34), 100)
    first = -(-int(view.whole.from_ft) // step) * step
    for at in range(first, int(view.whole.to_ft) + 1, step):
        canvas.line([(view.x(at), y), (view.x(at), y + 3)], QUIET, 0.8)
        canvas.text((view.x(at), y + 4), letter.speak("{depth} ft", depth=at), TINY, QUIET, anchor="mt")


def _bar(letter: Letter, canvas: Canvas, view: View, option: Option, top: float) -> None:
    """What the option opens, as boxes, and over them what it does to the pipe."""
    works, name, accent = option.works, view.line.name, f"#{letter.quote.firm.accent.lstrip('#')}"
    middle = top + BAR / 2
    canvas.text((LEFT - 11, middle), letter.speak("option {letter}", letter=option.letter), TINY, INK, anchor="rm")
    canvas.line([(LEFT, middle), (view.x(view.whole.to_ft), middle)], "#E3E7EA", 0.8)
    for opening in works.openings:
        if opening.line == name:
            _opening(canvas, view, opening, top)
    for left in works.left:
        if left.line == name and left.how != "in use":
            canvas.line([(view.x(left.stretch.from_ft), middle), (view.x(left.stretch.to_ft), middle)], QUIET, 2.2, dash=3)
    for pipe_ in (*works.laid, *works.burst):
        if pipe_.line == name:
            canvas.box(view.x(pipe_.stretch.from_ft), middle - 2.4, view.x(pipe_.stretch.to_ft), middle + 2.4, fill=accent)
    for lined in works.lined:
        if lined.line == name:
            ends = (view.x(lined.stretch.from_ft), view.x(lined.stretch.to_ft))
            canvas.box(ends[0], middle - 3, ends[1], middle + 3, fill="#FFFFFF")
            canvas.hatched(ends[0], middle - 3, ends[1], middle + 3, accent, 5)


def _opening(canvas: Canvas, view: View, opening: Opening, top: float) -> None:
    ends = (view.x(opening.at_top.from_ft), view.x(opening.at_top.to_ft))
    low, high = top + 0.8, top + BAR - 0.8
    if opening.kind == "tunnel":
        canvas.box(ends[0], low, max(ends[1], ends[0] + 3), high, fill="#FFFFFF", edge="#7A5B2E")
        return
    canvas.box(ends[0], low, max(ends[1], ends[0] + 3), high, fill=CUT if opening.cuts_floor else DIG)


def _signs(letter: Letter, views: Sequence[View]) -> list[list[Sign]]:
    """What the legend explains, only what is drawn, in rows that fit the width."""
    speak, accent = letter.speak, f"#{letter.quote.firm.accent.lstrip('#')}"
    names = {view.line.name for view in views}
    works = [o.works for o in letter.quote.options]
    openings = [o for w in works for o in w.openings if o.line in names]
    acts = {f.act for f in letter.quote.found if f.line in names and f.places}
    drawn: dict[Sign, bool] = {
        ("disc", RED, speak("repair now")): "now" in acts,
        ("disc", AMBER, speak("can wait")): "later" in acts,
        ("dash", QUIET, speak("not inspected")): any(Profile(v.line).not_inspected for v in views),
        ("box", DIG, speak("dug from outside")): any(o.opens_ground for o in openings),
        ("edge", "#7A5B2E", speak("tunnel")): any(o.kind == "tunnel" for o in openings),
        ("box", CUT, speak("floor cut")): any(o.cuts_floor for o in openings),
        ("bar", accent, speak("new pipe")): any(w.laid or w.burst for w in works),
        ("hatch", accent, speak("lined")): any(w.lined for w in works),
        ("cap", QUIET, speak("capped and left")): any(x.how != "in use" for w in works for x in w.left),
    }
    rows, x = [list[Sign]()], 0.0
    for sign in (sign for sign, there in drawn.items() if there):
        if x + _sign_wide(sign) > WIDTH:
            rows.append([])
            x = 0.0
        rows[-1].append(sign)
        x += _sign_wide(sign)
    return rows


def _sign_wide(sign: Sign) -> float:
    return 34 + text_wide(sign[2], TINY)


def _legend(canvas: Canvas, top: float, rows: list[list[Sign]]) -> None:
    for number, row in enumerate(rows):
        x, y = 0.0, top + 8 + LEGEND_ROW * number
        for sign in row:
            _sign(canvas, sign[0], sign[1], (x, y))
            canvas.text((x + 20, y), sign[2], TINY, INK, anchor="lm")
            x += _sign_wide(sign)


def _sign(canvas: Canvas, sign: str, color: str, at: tuple[float, float]) -> None:
    x, y = at
    match sign:
        case "disc":
            canvas.disc((x + 8, y), 5, color)
        case "dash" | "cap":
            canvas.line([(x, y), (x + 16, y)], color, 1.4 if sign == "dash" else 2.2, dash=5 if sign == "dash" else 3)
        case "edge":
            canvas.box(x, y - 5, x + 16, y + 5, fill="#FFFFFF", edge=color)
        case "bar":
            canvas.box(x, y - 2.4, x + 16, y + 2.4, fill=color)
        case "hatch":
            canvas.hatched(x, y - 3, x + 16, y + 3, color, 5)
        case _:
            canvas.box(x, y - 5, x + 16, y + 5, fill=color)


def _in_words(letter: Letter) -> str:
    """What the drawing shows, for those who cannot see it."""
    count = number(len(letter.quote.found), letter.language, 0)
    return letter.speak(
        "Your pipes from the side, drawn to scale, with {count} findings by letter and a bar for each option.", count=count
    )
