"""One repair with everything a takeoff looks up beside it: the line's profile, the soil, the place, the firm's numbers."""

import re
from typing import TYPE_CHECKING, Self

from estimator.knowledge.pipe_family import family
from estimator.model.frozen import Frozen, replace
from estimator.model.job import SLAB_FLOORS, Job
from estimator.model.judgement import Effect, Verdict
from estimator.model.line import Line, runs_into_another
from estimator.model.problem import CannotGoOn, Place
from estimator.model.profile import Branch, Profile
from estimator.model.say import Say
from estimator.model.stretch import Stretch
from estimator.model.work import JOB, Repair
from estimator.works.notes import Notes
from estimator.works.problems import NO_SETTING, NO_SOIL, SETTING_WORD

if TYPE_CHECKING:
    from estimator.tables.rows import PlaceRow, Soil
    from estimator.tables.tables import Tables

UNKNOWN_SOIL = "unknown"  # the row of the soils table for what nobody named


class Case(Frozen, dict=True):
    """What planning reads (`repair`, `job`, `tables`) and writes on (`paper`)."""

    repair: Repair
    job: Job
    tables: "Tables"
    line: Line
    profile: Profile
    paper: Notes
    from_tunnel: bool = False  # the tunnel begins in another one of the same scope
    open_ft: float = 0.0  # of its lower end, that lies in the open floor over the line it joins

    @classmethod
    def of(cls, repair: Repair, job: Job, tables: "Tables", from_tunnel: bool = False, open_ft: float = 0.0) -> Self:
        line = job.line(repair.line)
        return cls(repair, job, tables, line, Profile(line), cls.sheet(), from_tunnel, open_ft)

    @classmethod
    def sheet(cls) -> Notes:
        """Return an empty sheet to write on."""
        return Notes()

    # ── the firm's numbers ────────────────────────────────────────────────────────────────────

    def number(self, key: str) -> float:
        """A setting as a number. Errors: CannotGoOn where the tables lack it."""
        try:
            return self.tables.number(key)
        except KeyError:
            raise CannotGoOn(NO_SETTING(Place(table="settings"), key=key)) from None

    def text(self, key: str) -> str:
        """A setting as it is written. Errors: CannotGoOn where the tables lack it."""
        try:
            return self.tables.text(key)
        except KeyError:
            raise CannotGoOn(NO_SETTING(Place(table="settings"), key=key)) from None

    def word(self, key: str, *choices: str) -> str:
        """A setting that names one of several ways. Errors: CannotGoOn for a word that is none of them."""
        value = self.text(key)
        if value not in choices:
            place = Place(table="settings", cell=self.tables.setting(key).cell("value"))
            raise CannotGoOn(SETTING_WORD(place, key=key, value=value, choices=", ".join(choices)))
        return value

    def numbers(self, key: str) -> tuple[float, ...]:
        """A setting that lists numbers, the smallest first. Errors: CannotGoOn where one is no number."""
        try:
            return tuple(sorted(float(part) for part in self.text(key).split(",")))
        except ValueError:
            place = Place(table="settings", cell=self.tables.setting(key).cell("value"))
            choices = "numbers parted by commas, such as 2, 3, 4"
            raise CannotGoOn(SETTING_WORD(place, key=key, value=self.text(key), choices=choices)) from None

    @property
    def place(self) -> "PlaceRow | None":
        return self.tables.known_place(self.job.house.jurisdiction)

    # ── the ground ────────────────────────────────────────────────────────────────────────────

    @property
    def stretch(self) -> Stretch:
        return self.repair.stretch

    @property
    def soil_word(self) -> str | None:
        """The soil's name where somebody gave one."""
        return self.profile.soil(self.stretch.middle_ft) or self.job.house.soil

    @property
    def soil(self) -> "Soil":
        """The soil's row; where nobody said what soil it is, the one the firm counts with. Errors: CannotGoOn without it."""
        return self.soil_row(self.soil_word)

    def soil_row(self, named: str | None) -> "Soil":
        """The row of a soil's name. Errors: CannotGoOn where the tables have neither it nor one to count with."""
        for word in (named, UNKNOWN_SOIL):
            try:
                return self.tables.soil(word or UNKNOWN_SOIL)
            except KeyError:
                continue
        raise CannotGoOn(NO_SOIL(Place(table="soils"), word=named or Say.of("a soil")))

    # ── the pipe ──────────────────────────────────────────────────────────────────────────────

    @property
    def bore_in(self) -> float:
        """The largest bore along the stretch: the new pipe is never smaller than the old."""
        return max(size for _, size in self.profile.sizes(self.stretch))

    @property
    def size(self) -> str:
        return f"{self.bore_in:g}"

    @property
    def old_pipe(self) -> str:
        return self.profile.pipe(self.stretch.middle_ft).value

    def is_iron(self) -> bool:
        return family(self.old_pipe) == "iron"

    def is_clay(self) -> bool:
        return family(self.old_pipe) == "clay"

    @property
    def branches(self) -> tuple[Branch, ...]:
        """Side drains to tie in again: those that join inside the stretch and are not known to be dead."""
        return tuple(b for b in self.profile.branches if self.stretch.holds(b.station_ft) and b.live != "dead")

    @property
    def at_junction(self) -> bool:
        """The stretch is a side line's, down to where it joins: it ends in a new wye in the line it runs into."""
        if self.repair.method == JOB or not runs_into_another(self.line, self.job.lines):
            return False
        whole = self.profile.extent
        end, last = (
            (self.stretch.to_ft, whole.to_ft) if self.line.downstream == 1 else (self.stretch.from_ft, whole.from_ft)
        )
        return abs(end - last) < self.number("locator_tolerance_min_ft")

    @property
    def bends(self) -> int:
        return sum(1 for m in self.profile.marks("bend") if self.stretch.holds(m.stretch.from_ft))

    @property
    def on_slab(self) -> bool:
        return self.job.house.floor in SLAB_FLOORS

    # ── the slab ──────────────────────────────────────────────────────────────────────────────

    @property
    def slab_ft(self) -> float:
        """The slab's thickness, read or taken."""
        thick = self.job.house.slab_thickness_ft
        return self.number("slab_thickness_ft") if thick is None else thick

    @property
    def outlet_ft(self) -> float:
        """Where the line leaves the slab; where no edge was noted, the line's own lower end: its wye on another line."""
        edge = self.profile.slab_edge_ft
        if edge is not None:
            return edge
        return self.profile.extent.from_ft if self.line.downstream == -1 else self.profile.extent.to_ft

    def inside_ft(self, station_ft: float) -> float:
        """How far inside the slab edge, or up from the line's own lower end; below 0 outside."""
        inside = self.profile.to_slab_edge_ft(station_ft)
        return (station_ft - self.outlet_ft) * -self.line.downstream if inside is None else inside

    @property
    def inside(self) -> tuple[float, float]:
        """The stretch as distances inside the slab edge, the nearer end first (below 0: outside)."""
        ends = sorted((self.inside_ft(self.stretch.from_ft), self.inside_ft(self.stretch.to_ft)))
        return ends[0], ends[1]

    def station(self, inside_ft: float) -> float:
        """Back from a distance inside the slab edge to a station."""
        return self.outlet_ft - self.line.downstream * inside_ft

    def on(self, line: Line) -> Self:
        """The same repair's case looked at along another line of the house."""
        return replace(self, line=line, profile=Profile(line))

    @property
    def lead_ft(self) -> float:
        """How far a side line's lower end lies inside the slab edge, along the lines it runs into. 0 for a line with an edge.

        A branch of a branch is followed all the way: its own lower end to the first line, on to the next, to the edge.
        """
        lead, line, seen = 0.0, self.line, {self.line.name}
        while Profile(line).slab_edge_ft is None and line.joins is not None and line.joins.line not in seen:
            seen.add(line.joins.line)
            parent = self.on(self.job.line(line.joins.line))
            lead += max(0.0, parent.inside_ft(line.joins.station_ft))
            line = parent.line
        return lead

    @property
    def way_out(self) -> tuple[Line, float]:
        """The line that leaves the slab, of those this one runs into, and where (0: at its own edge or lower end)."""
        line, seen = self.line, {self.line.name}
        while Profile(line).slab_edge_ft is None and line.joins is not None and line.joins.line not in seen:
            seen.add(line.joins.line)
            line = self.job.line(line.joins.line)
        return line, 0.0

    @property
    def edge_known(self) -> bool:
        """Somebody noted where this line, or the one it runs into in the end, leaves the slab."""
        return Profile(self.way_out[0]).slab_edge_ft is not None

    # ── what only geometry finds ──────────────────────────────────────────────────────────────

    def find(self, rule: str, effect: Effect, homeowner: Say, estimator: Say, *settings: str) -> Verdict:
        return Verdict(
            rule=rule,
            effect=effect,
            method=self.repair.method,
            line=self.repair.line,
            stretch=self.stretch,
            homeowner=homeowner,
            estimator=estimator,
            settings=settings,
        )


def surface_word(mark_choice: str | None, mark_surface: str | None) -> str:
    """What grows or lies on the ground, in one word of the notes; "" where nobody said.

    >>> surface_word("lawn", None), surface_word(None, "bare ground"), surface_word(None, None)
    ('lawn', 'bare ground', '')
    """
    return re.sub(r"\s+", " ", (mark_choice or mark_surface or "").strip().lower())
