"""A plan laid out in; house, pipe and what stands on it drawn on a part of a sheet, out.

What was measured is drawn full, what nobody measured in dashes. Colors of buried lines are those that locators paint on the
ground (APWA uniform color code, from memory): sewer green, gas yellow, water blue, power red, phone orange.
"""

from collections.abc import Callable
from itertools import pairwise

from estimator.drawing.canvas import Canvas
from estimator.model.opening import Opening
from estimator.model.say import Feet, Say
from estimator.onsite.dead_reckoning import XY, Track
from estimator.onsite.plan_labels import Labels
from estimator.onsite.plan_layout import Frame, Lettered, Sketch
from estimator.onsite.plan_marks import Thing
from estimator.wording.plain import LINES, in_plain_words

INK, QUIET, WALL, GROUND = "#222B33", "#5C6670", "#39424B", "#F4F1EA"
SEWER, CUT, TREE = "#1E7B3A", "#C77700", "#4F8A3C"
PAINT = {"gas": "#B58900", "water": "#1F5FBF", "power": "#B3261E", "phone": "#D86A00"}
DASH, STEP_FT, TICK_FT = 5.0, 1.0, 10.0
NAMED = 0.3
"""How far along a wall its name stands."""
NAMED_AT = (0.5, 0.3, 0.7, 0.15, 0.85)
"""How far along a line its name is tried."""
ARROW = 8.0
STUB_FT = 5.0
"""A branch that was not filmed is drawn so long, in dashes."""


class Drawn:
    """A sketch on a sheet: the house first, then openings, then pipe with its names, then what stands on it; words keep clear of all."""

    def __init__(self, sketch: Sketch, canvas: Canvas, frame: Frame) -> None:
        self.sketch, self.plan, self.said, self.canvas = sketch, sketch.plan, sketch.said, canvas
        self.scale = sketch.scale_in(frame)
        self.left = frame.left + (frame.width - sketch.wide_ft * self.scale) / 2
        self.top = frame.top + (frame.height - sketch.high_ft * self.scale) / 2
        self.labels = Labels(canvas, frame.written)
        self._house()
        for opening in sketch.openings:
            self._opening(opening, self.plan.tracks[opening.line])
        for track in sketch.tracks.values():
            self._track(track)
        for letter in sketch.letters:
            self._letter(letter)
        for thing in sketch.things:
            self._keep(thing)
        for track in sketch.tracks.values():
            self._names(track)
        for thing in sketch.things:
            DRAWN[thing.kind](self, thing)
        for place, words in sketch.raised:
            self.labels.write(self.at(place), self.said(words), INK, bold=True)

    def at(self, place: XY) -> XY:
        """Where a place lies on the sheet."""
        x, y = self.sketch.on_sheet(place)
        return (self.left + (x - self.sketch.left) * self.scale, self.top + (y - self.sketch.top) * self.scale)

    def _house(self) -> None:
        house = self.plan.outline
        if house is None:
            return
        corners = (
            (house.left, house.back),
            (house.right, house.back),
            (house.right, house.front),
            (house.left, house.front),
        )
        back_left, back_right, front_right, front_left = (self.at(corner) for corner in corners)
        self.canvas.shape([back_left, back_right, front_right, front_left], GROUND)
        sides = {
            "left": (back_left, front_left),
            "right": (back_right, front_right),
            "front": (front_right, front_left),
            "back": (back_right, back_left),
        }
        named = dict(self.plan.walls.names)
        for side, (one, other) in sides.items():
            self.canvas.line([one, other], WALL, 2.0, dash=0.0 if side in house.measured else DASH)
            self.labels.keep(
                (
                    min(one[0], other[0]) - 2,
                    min(one[1], other[1]) - 2,
                    max(one[0], other[0]) + 2,
                    max(one[1], other[1]) + 2,
                )
            )
            if side in named and side in house.measured and not self.sketch.small:
                near = (one[0] + NAMED * (other[0] - one[0]), one[1] + NAMED * (other[1] - one[1]))
                self.labels.write(near, self.said(named[side]), QUIET)

    def _opening(self, opening: Opening, track: Track) -> None:
        """Its length along the pipe and its width at the top, beside the pipe where it is planned so."""
        half = max(opening.top_width_ft, opening.bottom_width_ft, 1.0) / 2
        low, high = opening.at_top.from_ft, opening.at_top.to_ft
        corners = [
            self._beside(track, s, opening.offset_ft + w)
            for s, w in ((low, half), (high, half), (high, -half), (low, -half))
        ]
        self.canvas.line([*corners, corners[0]], CUT, 1.5, dash=0.0 if not opening.assumed else DASH)
        for edge in pairwise([*corners, corners[0]]):
            self.labels.keep_line(*edge)
        if not self.sketch.small:
            self.labels.write(corners[1], self.said(opening.name), CUT)

    def _beside(self, track: Track, station_ft: float, away_ft: float) -> XY:
        (x, y), (dx, dy) = track.at(station_ft), track.heading(station_ft)
        return self.at((x - dy * away_ft, y + dx * away_ft))

    def _track(self, track: Track) -> None:
        """Full between taped places, in dashes elsewhere; a tick every 10 ft of footage."""
        low, high = track.corners[0][0], track.corners[-1][0]
        cuts = sorted({low, high, *(s for s, _ in track.corners)})
        for a, b in pairwise(cuts):
            sure = track.sure(a) and track.sure(b)
            self.canvas.line([self.at(track.at(a)), self.at(track.at(b))], SEWER, 2.5, dash=0.0 if sure else DASH)
        for number in range(round(high - low) + 1):
            x, y = self.at(track.at(low + number * STEP_FT))
            self.labels.keep((x - 3, y - 3, x + 3, y + 3))
        if self.sketch.small:
            return
        self._ticks(track, low, high)
        for station in track.taped:
            x, y = self.at(track.at(station))
            self.canvas.box(x - 3, y - 3, x + 3, y + 3, fill="white", edge=SEWER)

    def _letter(self, letter: Lettered) -> None:
        if track := self.sketch.shown(letter.line, letter.station_ft):
            at = self.at(track.at(letter.station_ft))
            self.canvas.disc(at, 2.6, letter.color)
            self.labels.keep((at[0] - 3, at[1] - 3, at[0] + 3, at[1] + 3))
            self.labels.write(at, letter.text, letter.color, bold=True)

    def _ticks(self, track: Track, low: float, high: float) -> None:
        tick = -(-low // TICK_FT) * TICK_FT
        while tick <= high:
            self.canvas.line([self._beside(track, tick, d / self.scale) for d in (-4, 4)], SEWER, 1.0)
            self.labels.write(self._beside(track, tick, -6 / self.scale), f"{tick + 0.0:g}", SEWER, 7.5)
            tick += TICK_FT

    def _names(self, track: Track) -> None:
        """The line's name at its middle, at its lower end what it runs into, and how much of it goes on beyond the plan."""
        line, whole = self.sketch.job.line(track.line), self.plan.tracks[track.line]
        for n, way in ((0, -1.0), (-1, 1.0)):
            (at, end), (last, _) = track.corners[n], whole.corners[n]
            lower = line.ends if n == (-1 if line.downstream > 0 else 0) and line.joins is None else ""
            if abs(last - at) > 0.5:
                self._goes_on(track, at, way, abs(last - at))
            elif lower:
                self.labels.write(self.at(end), self.said(lower), QUIET)
        low, high = track.corners[0][0], track.corners[-1][0]
        along = [self.at(track.at(low + share * (high - low))) for share in NAMED_AT]
        self.labels.write(along, self.said(in_plain_words(LINES, track.line)), SEWER, 10.0, bold=True)

    def _goes_on(self, track: Track, station_ft: float, way: float, more_ft: float) -> None:
        """An arrow where the plan ends before the line does, and how far it is to its end."""
        tip = self._beside(track, station_ft + way * ARROW / self.scale, 0.0)
        wings = [self._beside(track, station_ft, side / self.scale) for side in (-ARROW / 2, ARROW / 2)]
        self.canvas.shape([tip, *wings], SEWER)
        self.labels.write(tip, self.said(Say.of("{far} more", far=Feet(round(more_ft)))), QUIET)

    def _keep(self, thing: Thing) -> None:
        """Keep clear what is drawn of a thing: a disc, or a branch's stub."""
        if thing.kind in ("room", "beam", "utility", "lot line"):
            return
        (x0, y0), (x1, y1) = self.at(thing.at), self.at(self._off(thing, STUB_FT if thing.kind == "branch" else 0.0))
        around = 2 if thing.kind == "branch" else 5
        self.labels.keep((min(x0, x1) - around, min(y0, y1) - around, max(x0, x1) + around, max(y0, y1) + around))

    def way_in(self, thing: Thing) -> None:
        x, y = self.at(thing.at)
        self.canvas.disc((x, y), 4.5, "white", INK)
        self.labels.write((x, y), self.said(thing.words), INK)

    def branch(self, thing: Thing) -> None:
        end = self._off(thing, STUB_FT)
        (x0, y0), (x1, y1) = self.at(thing.at), self.at(end)
        self.canvas.line([(x0, y0), (x1, y1)], SEWER, 1.5, dash=3.0)
        self.labels.write(self.at(end), self.said(thing.words), SEWER)

    def _off(self, thing: Thing, far_ft: float) -> XY:
        dx, dy = thing.along
        way = 1 if thing.side == "left" else -1
        return (thing.at[0] - way * dy * far_ft, thing.at[1] + way * dx * far_ft)

    def across(self, thing: Thing) -> None:
        """A beam, a utility or a lot line runs across the pipe; how far beyond, nobody noted."""
        reach = (14.0 if thing.kind == "beam" else 34.0) / self.scale
        color = PAINT.get(thing.choice, QUIET) if thing.kind == "utility" else QUIET
        ends = [self.at(self._off(thing, far)) for far in (reach, -reach)]
        self.canvas.line(ends, color, 4.0 if thing.kind == "beam" else 1.8, dash=0.0 if thing.kind == "beam" else DASH)
        self.labels.write(ends[1], self.said(thing.words), color)

    def spot(self, thing: Thing) -> None:
        x, y = self.at(thing.at)
        color = TREE if thing.kind == "tree" else QUIET
        self.canvas.disc((x, y), 8.0 if thing.kind == "tree" else 5.0, "white" if not thing.noted else color, color)
        words = thing.words if thing.noted else Say.of("{what} (place not measured)", what=thing.words)
        self.labels.write((x, y), self.said(words), color)

    def room(self, thing: Thing) -> None:
        self.labels.write(self.at(thing.at), self.said(thing.words), QUIET, 10.0)


DRAWN: dict[str, Callable[[Drawn, Thing], None]] = {
    "access point": Drawn.way_in,
    "branch": Drawn.branch,
    "beam": Drawn.across,
    "utility": Drawn.across,
    "lot line": Drawn.across,
    "tree": Drawn.spot,
    "footing": Drawn.spot,
    "room": Drawn.room,
}
