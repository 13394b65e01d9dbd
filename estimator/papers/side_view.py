"""A line with depth readings in, a chart of ground, pipe, findings and repairs to scale out; its figures go on a sheet of their own."""

from dataclasses import dataclass

from estimator.model.line import Line
from estimator.model.offer import Option
from estimator.model.profile import Profile
from estimator.model.stretch import Stretch
from estimator.papers.heights import RAISED, Points, height_at, pipe, surface
from estimator.papers.letter import Letter
from estimator.papers.page import Page
from estimator.papers.segments import BUILDS_NOTHING, all_repairs, gives_up
from estimator.sheets.book import Cell, Chart, Series
from estimator.sheets.style import tint
from estimator.wording.found import in_words
from estimator.wording.numbers import feet
from estimator.wording.plain import LINES, in_plain_words

OPTION_SHADES = (1.0, 0.7, 0.5, 0.35)
GROUND, PIPE, BAD = "6B7A4B", "3D4A54", "A61B1B"
BETWEEN_FT = 0.35  # how far under the pipe each option's bar is drawn, ft, so that they do not hide each other
HEIGHT_PX = 310


@dataclass(frozen=True, slots=True)
class Curve:
    """Points of one series: (feet along the pipe, feet above the ground), and how it is drawn."""

    name: str
    colour: str
    points: tuple[tuple[float, float], ...]
    kind: str  # "line", "marks", "bar"
    labels: tuple[str, ...] = ()


def side_view(letter: Letter, page: Page, figures: Page, line: Line) -> None:
    """The chart on the page and its table on the figures' page; a sentence instead where no depth was ever read."""
    profile, floor_ft = Profile(line), letter.quote.job.house.slab_above_grade_ft
    known = pipe(profile, floor_ft or 0.0)
    if len(known) < 2:
        page.line(letter.speak("No depth was measured on this line, so no side view is drawn."), "quiet")
        return
    ground = Curve(letter.speak("Ground or floor"), GROUND, surface(profile, floor_ft or 0.0), "line")
    drain = Curve(letter.speak("Pipe"), PIPE, known, "line")
    curves = [ground, drain, *_found(letter, known, line), *_repairs(letter, known, line)]
    series = [_series(figures, curve) for curve in curves]
    if line.findings:
        page.line("   ".join(numbered(letter, line)), "quiet")
    page.line(_how_to_read(letter, curves), "quiet")
    if floor_ft is None and len({zone == RAISED for _, zone in profile.zones(profile.extent)}) > 1:
        page.line(
            letter.speak("How high the floor lies over the ground was not written down; both are drawn level."), "quiet"
        )
    page.chart(_chart(letter, line, tuple(series)))


def _how_to_read(letter: Letter, curves: list[Curve]) -> str:
    """What is to scale: the ground and the pipe; the options' bars hang below each other so that each can be seen."""
    scale = letter.speak("The depths of the ground and the pipe are to scale.")
    if not any(curve.kind == "bar" for curve in curves):
        return scale
    return f"{scale} {letter.speak('The bars below the pipe show where each option works, not how deep.')}"


def _found(letter: Letter, known: Points, line: Line) -> list[Curve]:
    if not line.findings:
        return []
    findings = sorted(line.findings, key=lambda f: f.stretch.middle_ft)
    points = tuple((at, height_at(known, at)) for at in (f.stretch.middle_ft for f in findings))
    return [Curve(letter.speak("Found"), BAD, points, "marks", tuple(str(i + 1) for i in range(len(findings))))]


def numbered(letter: Letter, line: Line) -> list[str]:
    """The findings in order, each with the number it has in the picture."""
    findings = sorted(line.findings, key=lambda f: f.stretch.middle_ft)
    return [
        f"{i}  {letter.say(in_words(f))}, {feet(f.stretch.middle_ft, letter.language)}"
        for i, f in enumerate(findings, start=1)
    ]


def _repairs(letter: Letter, known: Points, line: Line) -> list[Curve]:
    """One bar a repair, under the pipe, a shade an option."""
    out = []
    for number, option in enumerate(letter.quote.options):
        shade = tint(letter.quote.firm.accent, OPTION_SHADES[number % len(OPTION_SHADES)]).lstrip("#")
        under = BETWEEN_FT * (number + 1)
        for stretch in _stretches(option, line):
            ends = (stretch.from_ft, stretch.to_ft)
            points = tuple((x, height_at(known, x) - under) for x in ends)
            out.append(Curve(letter.speak("Option {letter}", letter=option.letter), shade, points, "bar"))
    return out


def _stretches(option: Option, line: Line) -> list[Stretch]:
    """Where it builds on this pipe: a way round leaves the pipe, so it has no bar on it."""
    repairs = (r for r in all_repairs(option.scope.repairs) if r.line == line.name)
    here = (r for r in repairs if r.method not in BUILDS_NOTHING and not gives_up(r))
    return [r.stretch for r in here if r.stretch.length_ft > 0]


def _series(figures: Page, curve: Curve) -> Series:
    first = len(figures.rows)
    for x, y in curve.points:
        figures.add(
            Cell(curve.name, "cell small"), Cell(round(x, 2), "number small"), Cell(round(y, 2), "number small")
        )
    last = len(figures.rows) - 1
    marks = curve.kind == "marks"
    return Series(
        name=curve.name, colour=curve.colour, sheet=figures.name, categories=(first, 1, last, 1), values=(first, 2, last, 2),
        labels=curve.labels, line=not marks, marker="diamond" if marks else "", width_pt=6.0 if curve.kind == "bar" else 2.5,
    )  # fmt: skip


def _chart(letter: Letter, line: Line, series: tuple[Series, ...]) -> Chart:
    speak = letter.speak
    named = (f"{letter.say(in_words(f))} ({feet(f.stretch.middle_ft, letter.language)})" for f in line.findings)
    found = ", ".join(named) or speak("nothing wrong seen")
    return Chart(
        kind="scatter", series=series, row=0, height_px=HEIGHT_PX, width_px=590,
        title=speak("Side view, {name}", name=in_plain_words(LINES, line.name)),
        alt=speak("Side view of the pipe: ground on top, the pipe below it at its measured depth. Found: {found}.", found=found),
        x_title=speak("feet along the pipe"), y_title=speak("feet below ground, + above"), number_format="+0;0;0",
    )  # fmt: skip
