"""A line with depth readings in, a chart of ground, pipe, findings and repairs to scale out, with its figures beneath."""

from estimator.model.line import Finding, Line
from estimator.model.offer import Option
from estimator.model.profile import Profile
from estimator.model.stretch import Stretch
from estimator.papers.letter import Letter
from estimator.papers.page import Page
from estimator.papers.segments import _all
from estimator.sheets.book import Cell, Chart, Series
from estimator.sheets.style import tint
from estimator.wording.numbers import feet
from estimator.wording.plain import FINDINGS, in_plain_words

OPTION_SHADES = (1.0, 0.65, 0.4, 0.25)
GROUND, PIPE, BAD = "6B7A4B", "3D4A54", "A61B1B"
BETWEEN_FT = 0.35  # how far under the pipe each option's bar is drawn, ft, so that they do not hide each other


def side_view(letter: Letter, page: Page, line: Line) -> None:
    """The chart and its table; a sentence instead where no depth was ever read."""
    speak, profile = letter.speak, Profile(line)
    whole = profile.extent
    depths = [(x, profile.depth_to_centre_ft(x).value) for x in _stations(profile, whole)]
    known = [(x, d) for x, d in depths if d is not None]
    if len(known) < 2:
        page.line(speak("No depth was measured on this line, so no side view is drawn."), "quiet")
        page.gap()
        return
    tables = [
        (speak("Ground or floor"), GROUND, [(x, 0.0) for x, _ in known], "line"),
        (speak("Pipe"), PIPE, [(x, -d) for x, d in known], "line"),
        (speak("Found"), BAD, [(f.stretch.middle_ft, -_depth(profile, f)) for f in line.findings], "marks"),
        *_repairs(letter, profile, line),
    ]
    _draw(letter, page, line, [t for t in tables if t[2]])


def _stations(profile: Profile, whole: Stretch) -> list[float]:
    marks = [m.stretch.middle_ft for m in profile.marks("depth", "loc", "pothole", "invert")]
    return sorted({whole.from_ft, whole.to_ft, *(m for m in marks if whole.holds(m))})


def _depth(profile: Profile, finding: Finding) -> float:
    return profile.depth_to_centre_ft(finding.stretch.middle_ft).value or 0.0


def _repairs(letter: Letter, profile: Profile, line: Line) -> list[tuple[str, str, list[tuple[float, float]], str]]:
    """One bar an option, under the pipe, over the pieces it renews; gaps between pieces are drawn as one bar each."""
    out = []
    for number, option in enumerate(letter.quote.options):
        for stretch in _stretches(option, line):
            under = BETWEEN_FT * (number + 1)
            points = [
                (x, -(profile.depth_to_centre_ft(x).value or 0.0) - under) for x in (stretch.from_ft, stretch.to_ft)
            ]
            shade = tint(letter.quote.firm.accent, OPTION_SHADES[number % len(OPTION_SHADES)]).lstrip("#")
            out.append((letter.speak("Option {letter}", letter=option.letter), shade, points, "bar"))
    return out


def _stretches(option: Option, line: Line) -> list[Stretch]:
    return [r.stretch for r in _all(option.scope.repairs) if r.line == line.name and r.stretch.length_ft > 0]


def _draw(
    letter: Letter, page: Page, line: Line, tables: list[tuple[str, str, list[tuple[float, float]], str]]
) -> None:
    speak = letter.speak
    found = ", ".join(
        f"{letter.say(in_plain_words(FINDINGS, f.kind))} {feet(f.stretch.middle_ft, letter.language)}"
        for f in line.findings
    )
    title = speak("Side view of {name}, depths to scale", name=line.name)
    alt = speak(
        "Side view of the pipe: ground on top, the pipe below it at its measured depth. Found: {found}.",
        found=found or "-",
    )
    chart_row = len(page.rows)
    for _ in range(16):
        page.add(height_pt=15.0)
    page.line(speak("Figures of the picture: feet along the pipe, feet below ground"), "quiet")
    series = []
    for name, colour, points, kind in tables:
        first = len(page.rows)
        for x, y in points:
            page.add(Cell(name, "cell quiet"), Cell(round(x, 2), "cell quiet"), Cell(round(y, 2), "cell quiet"))
        last = len(page.rows) - 1
        series.append(_series(letter, line, name, colour, kind, first, last))
    page.gap()
    page.charts.append(
        Chart(kind="scatter", title=title, alt=alt, series=tuple(series), row=chart_row, height_px=310, width_px=640,
              x_title=speak("feet along the pipe"), y_title=speak("feet below ground"), number_format="0;0;0")
    )  # fmt: skip


def _series(letter: Letter, line: Line, name: str, colour: str, kind: str, first: int, last: int) -> Series:
    labels = tuple(letter.say(in_plain_words(FINDINGS, f.kind)) for f in line.findings) if kind == "marks" else ()
    return Series(
        name=name, colour=colour, categories=(first, 1, last, 1), values=(first, 2, last, 2), labels=labels,
        line=kind != "marks", marker="diamond" if kind == "marks" else "", width_pt=6.0 if kind == "bar" else 2.5,
    )  # fmt: skip
