"""A line of pipe in, a drawing of letters out: surface, the pipe at its depth to scale, findings and repairs under it.

Stations run from left to right; one letter is the same length everywhere on a drawing. The pipe is drawn solid where it
was filmed and dotted where it was not. Findings carry small letters that the list under the drawing puts into words.
"""

from collections.abc import Sequence
from string import ascii_lowercase

from estimator.cli.views.layout import Layout
from estimator.cli.views.table import table
from estimator.cli.views.words import Words
from estimator.model.frozen import Frozen
from estimator.model.line import Finding, Line
from estimator.model.profile import Profile
from estimator.model.stretch import Stretch

MOST_ROWS = 10
STEPS_FT: tuple[float, ...] = (0.5, 1, 2, 5, 10, 25, 100)
SURFACES: dict[str, str] = {
    "slab": "=",
    "drive": "=",
    "walk": "=",
    "street": "=",
    "yard": '"',
    "crawl": " ",
    "basement": "=",
}
LEAST_NAMED = 2  # letters: a zone shorter than that has no name over it
FILMED, NOT_FILMED, BEAM, BRANCH = "─", "·", "#", "┬"


class Bar(Frozen):
    """A repair to draw under the line: its name and its stretch."""

    name: str
    stretch: Stretch


class Labels(Frozen):
    """What stands to the left of each row of a drawing, in the reader's language."""

    words: Words
    surface: str
    station: str
    found: str
    repair: str

    @property
    def width(self) -> int:
        """As wide as the longest of them and a blank."""
        return 1 + max(map(len, (self.surface, self.station, self.found, self.repair, self.words.feet(88.5))))

    def row(self, label: str, drawn: Sequence[str]) -> str:
        return (label.ljust(self.width)[: self.width] + "".join(drawn)).rstrip()


def labels(words: Words) -> Labels:
    speak = words.speak
    return Labels(words, speak("surface"), speak("station"), speak("found"), speak("repair"))


class Scale(Frozen):
    """Stations to columns and back: `extent` over `columns` letters, with the labels beside them."""

    extent: Stretch
    columns: int
    labels: Labels

    @property
    def ft_a_letter(self) -> float:
        return max(self.extent.length_ft, 1.0) / max(self.columns - 1, 1)

    def column(self, station_ft: float) -> int:
        place = round((station_ft - self.extent.from_ft) / self.ft_a_letter)
        return max(0, min(self.columns - 1, place))

    def station(self, column: int) -> float:
        return self.extent.from_ft + column * self.ft_a_letter


def draw_line(out: Layout, line: Line, bars: Sequence[Bar] = ()) -> None:
    """What the line is, its drawing, and the list of what was found on it."""
    out.paragraph(title(line, out), hanging=2, look="head")
    out.lines(strip(line, out.columns, bars, out))


def strip(line: Line, columns: int, bars: Sequence[Bar] = (), words: Words | None = None) -> list[str]:
    """The drawing of one line, without its title, and the list of what was found on it."""
    profile = Profile(line)
    named = labels(words or Words())
    scale = Scale(profile.extent, columns - named.width, named)
    lettered = letters(line.findings)
    return [
        *_surface(profile, scale),
        *_depth(profile, scale),
        _ruler(scale),
        *_found(lettered, scale),
        *_bars(bars, scale),
        *_listed(lettered, bool(profile.filmed), columns, named.words),
    ]


def letters(findings: Sequence[Finding]) -> list[tuple[str, Finding]]:
    """Findings in order of station, each with its letter (a … z, then a2 … )."""
    ordered = sorted(findings, key=lambda f: (f.stretch, f.kind))
    return [(ascii_lowercase[i % 26] + (str(i // 26 + 1) if i >= 26 else ""), f) for i, f in enumerate(ordered)]


def title(line: Line, words: Words) -> str:
    """What the line is and how much of it was filmed."""
    profile, speak = Profile(line), words.speak
    flow = speak("flows to the right") if line.downstream == 1 else speak("flows to the left")
    filmed = sum(part.length_ft for part in profile.filmed)
    missing = sum(part.length_ft for part in profile.not_inspected)
    unseen = [speak("{length} not", length=words.feet(missing))] if missing >= 0.05 else []
    return ", ".join((
        f"{words.term(line.name)}: {words.number(line.size_in)} {speak('in')} {words.term(line.pipe)}",
        speak("{length} filmed", length=words.feet(filmed)),
        *unseen,
        flow,
        f"0 = {words.term(line.zero)}",
    ))  # fmt: skip


def _surface(profile: Profile, scale: Scale) -> list[str]:
    """The zones' names over where they begin, whole and on as many rows as that takes; under them their surface."""
    names: list[list[str]] = [[" "] * scale.columns]
    drawn = [" "] * scale.columns
    for part, zone in profile.zones(scale.extent):
        first, last = scale.column(part.from_ft), scale.column(part.to_ft)
        drawn[first : last + 1] = SURFACES.get(zone or "", "?") * (last - first + 1)
        if last - first < LEAST_NAMED:
            continue  # the few inches before somebody said what lies there
        name = scale.labels.words.term(zone) if zone else scale.labels.words.speak("not said")
        _named(names, max(0, min(first, scale.columns - len(name))), name)
    return [*(scale.labels.row("", row) for row in reversed(names)), scale.labels.row(scale.labels.surface, drawn)]


def _named(rows: list[list[str]], at_column: int, name: str) -> None:
    """The name on the lowest row that has room for it and a blank on both sides."""
    wanted = slice(max(0, at_column - 1), at_column + len(name) + 1)
    row = next((row for row in rows if not "".join(row[wanted]).strip()), None)
    if row is None:
        row = [" "] * len(rows[0])
        rows.append(row)
    _write(row, at_column, name)


def _write(row: list[str], column: int, text: str) -> None:
    for i, letter in enumerate(text):
        if column + i < len(row):
            row[column + i] = letter


def _depth(profile: Profile, scale: Scale) -> list[str]:
    """The pipe at its depth, one row a step of depth; beams hang from the slab; branches leave the pipe downwards."""
    depths = [profile.depth_to_centre_ft(scale.station(c)).value for c in range(scale.columns)]
    known = [d for d in depths if d is not None]
    if not known:
        return [scale.labels.row(scale.labels.words.speak("depth ?"), _pipe_row(profile, scale))]
    step = next((step for step in STEPS_FT if max(known) / step <= MOST_ROWS), max(known) / MOST_ROWS)
    grid = [[" "] * scale.columns for _ in range(round(max(known) / step) + 1)]
    for beam in profile.beams:
        _draw_beam(grid, scale, beam.stretch, beam.bottom_below_slab_ft, step)
    for column, letter in enumerate(_pipe_row(profile, scale)):
        depth = depths[column]
        if depth is not None:
            grid[round(depth / step)][column] = letter
    named = scale.labels
    return [named.row(named.words.feet(row * step), drawn) for row, drawn in enumerate(grid) if row]


def _draw_beam(grid: list[list[str]], scale: Scale, stretch: Stretch, bottom_ft: float, step: float) -> None:
    for row in range(1, min(len(grid), round(bottom_ft / step) + 1)):
        for column in range(scale.column(stretch.from_ft), scale.column(stretch.to_ft) + 1):
            grid[row][column] = BEAM


def _pipe_row(profile: Profile, scale: Scale) -> list[str]:
    """The pipe as one row: solid where filmed, dotted where not, a tee where a branch joins."""
    half = scale.ft_a_letter / 2
    row = [
        FILMED if any(p.from_ft - half <= scale.station(c) <= p.to_ft + half for p in profile.filmed) else NOT_FILMED
        for c in range(scale.columns)
    ]
    for branch in profile.branches:
        row[scale.column(branch.station_ft)] = BRANCH
    return row


def _ruler(scale: Scale) -> str:
    """Round stations at their places."""
    longest = len(scale.labels.words.number(round(scale.extent.to_ft)))
    apart = max(7, 2 * longest)  # letters
    step = next(s for s in (5, 10, 20, 25, 50, 100, 200, 500, 1000, 10000, 10**9) if s / scale.ft_a_letter >= apart)
    row = [" "] * scale.columns
    station = -(-scale.extent.from_ft // step) * step
    while station <= scale.extent.to_ft:
        text = scale.labels.words.number(station)
        _write(row, min(scale.column(station), scale.columns - len(text)), text)  # the last one whole, too
        station += step
    return scale.labels.row(scale.labels.station, row)


def _found(lettered: Sequence[tuple[str, Finding]], scale: Scale) -> list[str]:
    """The findings' letters under where they are, on as few rows as they fit without covering each other."""
    rows: list[list[str]] = []
    for letter, found in lettered:
        first, last = scale.column(found.stretch.from_ft), scale.column(found.stretch.to_ft)
        last = max(last, first + len(letter) - 1)
        free = next((row for row in rows if all(c == " " for c in row[first : last + 1])), None)
        if free is None:
            free = [" "] * (scale.columns + 2)
            rows.append(free)
        _write(free, first, letter if len(letter) > 1 else letter * (last - first + 1))
    return [scale.labels.row(scale.labels.found if i == 0 else "", row) for i, row in enumerate(rows)]


def _bars(bars: Sequence[Bar], scale: Scale) -> list[str]:
    """Each repair as a bar with its name in it, or beside it where there is no room."""
    out = []
    for i, bar in enumerate(bars):
        row = [" "] * scale.columns
        first, last = scale.column(bar.stretch.from_ft), scale.column(bar.stretch.to_ft)
        _write(row, first, "├" + "─" * max(0, last - first - 1) + "┤" if last > first else "│")
        if last - first - 3 >= len(bar.name):
            _write(row, first + 2, bar.name)
        elif last + 2 + len(bar.name) <= scale.columns:
            _write(row, last + 2, bar.name)
        else:
            _write(row, max(0, first - 1 - len(bar.name)), bar.name[: max(0, first - 1)])
        out.append(scale.labels.row(scale.labels.repair if i == 0 else "", row))
    return out


def _listed(lettered: Sequence[tuple[str, Finding]], filmed: bool, columns: int, words: Words) -> list[str]:
    """`a   12.5 – 18   hole 3 in, soil seen`, one finding a line. Nothing found where nobody looked says nothing of the pipe."""
    if not lettered:
        return [
            words.speak("Nothing was found on this line.") if filmed else words.speak("No camera was in this line.")
        ]
    headers = ("", words.speak("station, ft"), words.speak("what was found"))
    return table(headers, [(letter, words.at(f.stretch), words.finding(f)) for letter, f in lettered], columns)
