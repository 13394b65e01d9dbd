"""A job and, where wanted, an option's works in; its plan drawn from what was noted as a PNG out, with its height and its words.

What was measured is drawn full, what nobody measured in dashes, and a legend says so. Colors of buried lines are those that
locators paint on the ground (APWA uniform color code, from memory): sewer green, gas yellow, water blue, power red, phone orange.
"""

from collections.abc import Callable, Iterable, Sequence
from itertools import pairwise

from estimator.drawing.canvas import Canvas
from estimator.model.afterwards import LiftHeight
from estimator.model.job import Job
from estimator.model.say import Inches, Say
from estimator.model.works import Opening, Works
from estimator.onsite.dead_reckoning import XY, Track
from estimator.onsite.plan import Plan, corner, plan_of
from estimator.onsite.plan_labels import Labels
from estimator.onsite.plan_marks import Thing, things_on
from estimator.wording.say import plain_words, say

WIDTH, MOST_HEIGHT, EDGE, FOOT = 680.0, 820.0, 56.0, 74.0
INK, QUIET, WALL, GROUND = "#222B33", "#5C6670", "#39424B", "#F4F1EA"
SEWER, CUT, TREE = "#1E7B3A", "#C77700", "#4F8A3C"
PAINT = {"gas": "#B58900", "water": "#1F5FBF", "power": "#B3261E", "phone": "#D86A00"}
DASH, STEP_FT, TICK_FT = 5.0, 1.0, 10.0
STUB_FT = 5.0
"""A branch that was not filmed is drawn so long, in dashes."""


def plan_picture(
    job: Job, language: str, works: Works | None = None, heights: Sequence[LiftHeight] = ()
) -> tuple[bytes, int, str] | None:
    """Return the PNG, its height on paper (points of 1/96 in) and its words for those who cannot see it; None without lines."""
    if not job.lines:
        return None
    sheet = Sketch(job, plan_of(job, heights), works, language, heights)
    return sheet.drawn(), round(sheet.canvas.height), sheet.said(in_words(job))


def in_words(job: Job) -> Say:
    """Return what the picture shows, in one sentence."""
    return Say.of("Plan of the drains, not a survey: {lines}.", lines=tuple(line.name for line in job.lines))


class Sketch:
    """One drawing: its scale, points a foot, and the calls that fill it."""

    def __init__(
        self, job: Job, plan: Plan, works: Works | None, language: str, heights: Sequence[LiftHeight] = ()
    ) -> None:
        self.job, self.plan, self.language = job, plan, language
        self.raised = [(xy, h.raised_ft * 12) for h in heights if (xy := corner(h, plan.walls)) is not None]
        self.openings = (
            [o for o in works.openings if o.line in plan.tracks and o.kind != "hole through"] if works else []
        )
        self.things = things_on(plan, job)
        points = list(self._points())
        xs, ys = [x for x, _ in points], [y for _, y in points]
        self.west, self.north = min(xs), max(ys)
        wide, high = max(max(xs) - self.west, 1.0), max(self.north - min(ys), 1.0)
        self.scale = min((WIDTH - 2 * EDGE) / wide, (MOST_HEIGHT - 2 * EDGE - FOOT) / high)
        self.left = (WIDTH - wide * self.scale) / 2
        self.canvas = Canvas(WIDTH, high * self.scale + 2 * EDGE + FOOT)
        self.labels = Labels(self.canvas)

    def said(self, words: Say | str) -> str:
        return say(words, self.language) if isinstance(words, Say) else plain_words(words, self.language)

    def at(self, place: XY) -> XY:
        """Where a place lies on the sheet."""
        return (self.left + (place[0] - self.west) * self.scale, EDGE + (self.north - place[1]) * self.scale)

    def _points(self) -> Iterable[XY]:
        for track in self.plan.tracks.values():
            yield from (at for _, at in track.corners)
        yield from (thing.at for thing in self.things)
        yield from (place for place, _ in self.raised)
        if (house := self.plan.outline) is not None:
            yield from ((house.left, house.front), (house.right, house.back))

    def drawn(self) -> bytes:
        """Return the picture: the house first, then openings, then pipe, then what stands on it, words last."""
        self._house()
        for opening in self.openings:
            self._opening(opening, self.plan.tracks[opening.line])
        for track in self.plan.tracks.values():
            self._track(track)
        for thing in self.things:
            DRAWN[thing.kind](self, thing)
        for track in self.plan.tracks.values():
            self._names(track)
        for place, inches in self.raised:
            words = Say.of("raised {inches}", inches=Inches(round(inches, 2)))
            self.labels.write(self.at(place), self.said(words), INK, bold=True)
        self._foot()
        return self.canvas.png()

    def _house(self) -> None:
        house = self.plan.outline
        if house is None:
            return
        left, top = self.at((house.left, house.back))
        right, bottom = self.at((house.right, house.front))
        self.canvas.box(left, top, right, bottom, fill=GROUND)
        sides = {
            "left": [(left, top), (left, bottom)],
            "right": [(right, top), (right, bottom)],
            "front": [(left, bottom), (right, bottom)],
            "back": [(left, top), (right, top)],
        }
        named = dict(self.plan.walls.names)
        for side, ends in sides.items():
            self.canvas.line(ends, WALL, 2.0, dash=0.0 if side in house.measured else DASH)
            if side in named and side in house.measured:
                middle = ((ends[0][0] + ends[1][0]) / 2, ends[0][1] + 0.3 * (ends[1][1] - ends[0][1]))
                self.labels.write(middle, self.said(named[side]), QUIET)

    def _opening(self, opening: Opening, track: Track) -> None:
        """Its length along the pipe and its width at the top, beside the pipe where it is planned so."""
        half = max(opening.top_width_ft, opening.bottom_width_ft, 1.0) / 2
        low, high = opening.at_top.from_ft, opening.at_top.to_ft
        corners = [
            self._beside(track, s, opening.offset_ft + w)
            for s, w in ((low, half), (high, half), (high, -half), (low, -half))
        ]
        self.canvas.line([*corners, corners[0]], CUT, 1.5, dash=0.0 if not opening.assumed else DASH)
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
        self._ticks(track, low, high)
        for station in track.taped:
            x, y = self.at(track.at(station))
            self.canvas.box(x - 3, y - 3, x + 3, y + 3, fill="white", edge=SEWER)

    def _ticks(self, track: Track, low: float, high: float) -> None:
        tick = -(-low // TICK_FT) * TICK_FT
        while tick <= high:
            self.canvas.line([self._beside(track, tick, d / self.scale) for d in (-4, 4)], SEWER, 1.0)
            self.labels.write(self._beside(track, tick, -6 / self.scale), f"{tick + 0.0:g}", SEWER, 7.5)
            tick += TICK_FT

    def _names(self, track: Track) -> None:
        """The line's name at its middle, and at its lower end what it runs into."""
        line = self.job.line(track.line)
        if line.ends and line.joins is None:
            end = track.corners[-1 if line.downstream > 0 else 0]
            self.labels.write(self.at(end[1]), self.said(line.ends), QUIET)
        middle = (track.corners[0][0] + track.corners[-1][0]) / 2
        self.labels.write(self.at(track.at(middle)), self.said(track.line), SEWER, 10.0, bold=True)

    def way_in(self, thing: Thing) -> None:
        x, y = self.at(thing.at)
        self.canvas.disc((x, y), 4.5, "white", INK)
        self.labels.keep((x - 5, y - 5, x + 5, y + 5))
        self.labels.write((x, y), self.said(thing.words), INK)

    def branch(self, thing: Thing) -> None:
        end = self._off(thing, STUB_FT)
        self.canvas.line([self.at(thing.at), self.at(end)], SEWER, 1.5, dash=3.0)
        self.labels.write(self.at(end), self.said(thing.words), SEWER)

    def _off(self, thing: Thing, far_ft: float) -> XY:
        dx, dy = thing.along
        way = 1 if thing.side == "left" else -1
        return (thing.at[0] - way * dy * far_ft, thing.at[1] + way * dx * far_ft)

    def across(self, thing: Thing) -> None:
        """A beam, a utility or a lot line runs across the pipe; how far beyond, nobody noted."""
        reach = 14.0 if thing.kind == "beam" else 34.0
        dx, dy = thing.along
        x, y = self.at(thing.at)
        color = PAINT.get(thing.choice, QUIET) if thing.kind == "utility" else QUIET
        ends = [(x - dy * reach, y - dx * reach), (x + dy * reach, y + dx * reach)]
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

    def _foot(self) -> None:
        """A bar of 10 ft, and what full lines and dashes mean."""
        top = self.canvas.height - FOOT
        bar = TICK_FT * self.scale
        self.canvas.line([(EDGE, top), (EDGE + bar, top)], INK, 2.0)
        self.canvas.text(
            (EDGE + bar + 8, top), self.said(Say.of("10 ft. Front of the house at the bottom.")), 9.5, INK, anchor="lm"
        )
        lines = (
            Say.of(
                "Full line: between places taped to two walls. Dashes: direction or length not measured, not to scale."
            ),
            Say.of("Square: taped. Circle: way in. Numbers on the pipe: camera footage from the line's zero."),
            Say.of("Drawn from a camera inspection. Not a survey: locate and pothole before you dig."),
        )
        for number, line in enumerate(lines):
            self.canvas.text((EDGE, top + 14 + 14 * number), self.said(line), 8.5, QUIET)


DRAWN: dict[str, Callable[[Sketch, Thing], None]] = {
    "way in": Sketch.way_in,
    "branch": Sketch.branch,
    "beam": Sketch.across,
    "utility": Sketch.across,
    "lot line": Sketch.across,
    "tree": Sketch.spot,
    "footing": Sketch.spot,
    "room": Sketch.room,
}
