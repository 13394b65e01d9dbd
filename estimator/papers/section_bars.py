"""Below the section: a bar an option with what it opens and does to the pipe, and the legend."""

from collections.abc import Sequence

from estimator.drawing.canvas import Canvas, text_wide
from estimator.model.line import Line
from estimator.model.offer import Option
from estimator.model.opening import Opening
from estimator.model.profile import Profile
from estimator.model.works import Burst, Laid, Left, Lined
from estimator.papers.letter import Letter
from estimator.papers.section_view import AMBER, BAR, INK, LEFT, QUIET, RED, TINY, WIDTH, View
from estimator.quote.urgency import what_must

DIG, CUT = "#D9B88A", "#E3A79B"
TUNNEL = "#7A5B2E"
Sign = tuple[str, str, str]
"""A mark of the legend: its shape, its color and its words."""
LEGEND_ROW = 14.0


def options_on(letter: Letter, line: Line) -> list[Option]:
    """The options that open ground for the line or work on its pipe."""
    return [o for o in letter.quote.options if _touches(o, line)]


def _touches(option: Option, line: Line) -> bool:
    works = option.works
    parts: tuple[Opening | Laid | Lined | Burst | Left, ...] = (
        *works.openings,
        *works.laid,
        *works.lined,
        *works.burst,
        *works.left,
    )
    return any(part.line == line.name for part in parts)


def bar(letter: Letter, canvas: Canvas, view: View, option: Option, top: float) -> None:
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
            canvas.line(
                [(view.x(left.stretch.from_ft), middle), (view.x(left.stretch.to_ft), middle)], QUIET, 2.2, dash=3
            )
    new: tuple[Laid | Burst, ...] = (*works.laid, *works.burst)
    for pipe_ in new:
        if pipe_.line == name:
            canvas.box(
                view.x(pipe_.stretch.from_ft), middle - 2.4, view.x(pipe_.stretch.to_ft), middle + 2.4, fill=accent
            )
    for lined in works.lined:
        if lined.line == name:
            ends = (view.x(lined.stretch.from_ft), view.x(lined.stretch.to_ft))
            canvas.box(ends[0], middle - 3, ends[1], middle + 3, fill="#FFFFFF")
            canvas.hatched(ends[0], middle - 3, ends[1], middle + 3, accent, 5)


def _opening(canvas: Canvas, view: View, opening: Opening, top: float) -> None:
    ends = (view.x(opening.at_top.from_ft), view.x(opening.at_top.to_ft))
    low, high = top + 0.8, top + BAR - 0.8
    if opening.kind == "tunnel":
        canvas.box(ends[0], low, max(ends[1], ends[0] + 3), high, fill="#FFFFFF", edge=TUNNEL)
        return
    canvas.box(ends[0], low, max(ends[1], ends[0] + 3), high, fill=CUT if opening.cuts_floor else DIG)


def signs_of(letter: Letter, views: Sequence[View]) -> list[list[Sign]]:
    """What the legend explains, only what is drawn, in rows that fit the width."""
    speak, accent = letter.speak, f"#{letter.quote.firm.accent.lstrip('#')}"
    names = {view.line.name for view in views}
    works = [o.works for o in letter.quote.options]
    openings = [o for w in works for o in w.openings if o.line in names]
    acts = {f.act for f in letter.quote.found if f.line in names and f.places}
    drawn: dict[Sign, bool] = {
        ("disc", RED, letter.say(what_must(letter.quote.diagnosis.needs))): "now" in acts,
        ("disc", AMBER, speak("can wait")): "later" in acts,
        ("dash", QUIET, speak("not inspected")): any(Profile(v.line).not_inspected for v in views),
        ("box", DIG, speak("dug from outside")): any(o.opens_ground for o in openings),
        ("edge", TUNNEL, speak("tunnel")): any(o.kind == "tunnel" for o in openings),
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


def legend(canvas: Canvas, top: float, rows: list[list[Sign]]) -> None:
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
