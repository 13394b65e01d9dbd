"""A plan in; what of it goes on a sheet, which part of each line where there is room for no more, which way up, and how large, out."""

from collections.abc import Iterable, Mapping, Sequence

from estimator.model.frozen import Frozen
from estimator.model.job import Job
from estimator.model.line import Line
from estimator.model.say import Say
from estimator.model.stretch import Stretch
from estimator.model.works import Works
from estimator.onsite.dead_reckoning import XY, Track
from estimator.onsite.plan import Plan, indoors
from estimator.onsite.plan_labels import Box
from estimator.onsite.plan_marks import things_on
from estimator.wording.say import plain_words, say

COARSE = frozenset({"access point", "branch", "utility", "tree", "lot line", "room"})
"""What stands on a small plan."""


class Frame(Frozen):
    """The part of a sheet a plan may take, points; its words may stand so far beyond."""

    left: float
    top: float
    width: float
    height: float
    beside: float = 0.0
    above: float = 0.0

    @property
    def written(self) -> Box:
        """Left, top, right and bottom of what may be written on."""
        return (
            self.left - self.beside,
            self.top - self.above,
            self.left + self.width + self.beside,
            self.top + self.height + self.above,
        )


class Lettered(Frozen):
    """A finding by its letter, in its color, at a station of a line."""

    text: str
    line: str
    station_ft: float
    color: str


class Sketch:
    """One plan to be drawn: what is on it and how large it is.

    `turned`: the front of the house on the left instead of at the bottom. `small`: the house and what lies at it, without
    footage, beams and wall names.
    """

    def __init__(
        self,
        job: Job,
        plan: Plan,
        language: str,
        works: Works | None = None,
        raised: Sequence[tuple[XY, Say]] = (),
        letters: Sequence[Lettered] = (),
        turned: bool = False,
        small: bool = False,
    ) -> None:
        self.job, self.plan, self.language, self.raised, self.letters = job, plan, language, raised, letters
        self.turned, self.small = turned, small
        self.openings = [o for o in works.openings if o.line in plan.tracks and o.is_excavation] if works else []
        self.tracks, self.things = dict(plan.tracks), list(things_on(plan, job))
        if small:
            kept = near_the_house(plan, job)
            self.tracks = {name: shortened(track, kept[name]) for name, track in plan.tracks.items()}
            self.things = [t for t in self.things if t.kind in COARSE and kept[t.line].holds(t.station_ft)]
            self.openings = [o for o in self.openings if kept[o.line].covers(o.at_top)]
        places = [self.on_sheet(place) for place in self._places()]
        self.left, self.top = min(x for x, _ in places), min(y for _, y in places)
        self.wide_ft = max(max(x for x, _ in places) - self.left, 1.0)
        self.high_ft = max(max(y for _, y in places) - self.top, 1.0)

    def scale_in(self, frame: Frame) -> float:
        """Return how many points a foot takes where it has to fit."""
        return min(frame.width / self.wide_ft, frame.height / self.high_ft)

    def on_sheet(self, place: XY) -> XY:
        """A place as it lies on the sheet, ft to the right and down."""
        x, y = place
        return (y, x) if self.turned else (x, -y)

    def _places(self) -> Iterable[XY]:
        for track in self.tracks.values():
            yield from (at for _, at in track.corners)
        yield from (thing.at for thing in self.things)
        yield from (place for place, _ in self.raised)
        if (house := self.plan.outline) is not None:
            yield from ((house.left, house.front), (house.right, house.back))

    def shown(self, line: str, station_ft: float) -> Track | None:
        """Return the track a station is drawn on; None where it is not on the plan."""
        track = self.tracks.get(line)
        return track if track and track.corners[0][0] <= station_ft <= track.corners[-1][0] else None

    def said(self, words: Say | str) -> str:
        return say(words, self.language) if isinstance(words, Say) else plain_words(words, self.language)


BESIDE_FT = 10.0
"""So far beyond house and tapes a line is still drawn; the rest is told as a length."""


def near_the_house(plan: Plan, job: Job) -> Mapping[str, Stretch]:
    """Return which stations of each line to draw."""
    return {line.name: _near(line, plan.tracks[line.name]) for line in job.lines}


def _near(line: Line, track: Track) -> Stretch:
    whole = Stretch(track.corners[0][0], track.corners[-1][0])
    known = [*indoors(line), *track.taped]
    if not known:
        known = [whole.from_ft if line.downstream > 0 else whole.to_ft]
    kept = Stretch(max(min(known) - BESIDE_FT, whole.from_ft), min(max(known) + BESIDE_FT, whole.to_ft))
    return kept if whole.length_ft - kept.length_ft > BESIDE_FT / 2 else whole


def shortened(track: Track, kept: Stretch) -> Track:
    """Return the track of those stations alone."""
    inside = [c for c in track.corners if kept.from_ft < c[0] < kept.to_ft]
    ends = [(at, track.at(at)) for at in (kept.from_ft, kept.to_ft)]
    return Track(track.line, (ends[0], *inside, ends[1]), track.taped, track.known)
