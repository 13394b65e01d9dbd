"""A line's levels, locates, risers and standing water in; what each says of the height of the pipe's bottom, and how surely, out."""

from collections.abc import Iterable
from typing import Literal

from estimator.model.answers import INDOOR_ZONES, taken_indoors
from estimator.model.frozen import Frozen
from estimator.model.job import Job
from estimator.model.line import Line, Mark
from estimator.model.profile import Profile
from estimator.model.stretch import Stretch
from estimator.tables.tables import Tables

INCHES_PER_FT = 12.0
STEP_FT = 0.5
"""So often pipe is asked whether it lies at a height; water that stands for less says nothing."""
Kind = Literal["level", "locate", "pothole", "riser", "standing water", "water depth", "slope as laid"]


class Saying(Frozen):
    """One reading as an equation: heights at stations, each times a factor, come to `value`, give or take `sigma`, ft."""

    kind: Kind
    parts: tuple[tuple[float, float], ...]  # (station, factor)
    value: float
    sigma: float

    @property
    def at(self) -> Stretch:
        stations = [station for station, _ in self.parts]
        return Stretch(min(stations), max(stations))


def level_readings(profile: Profile, tables: Tables) -> Iterable[Saying]:
    """Bottoms of the pipe read with a level or a stick from the slab top."""
    error = tables.number("level_error_in") / INCHES_PER_FT
    for mark in profile.levels:
        yield Saying("level", ((round(mark.stretch.middle_ft, 2), 1.0),), mark.depth_ft or 0.0, error)


def locate_readings(profile: Profile, job: Job, tables: Tables) -> Iterable[Saying]:
    """Locate depths and potholes, from the floor or, where the slab's height over the ground is known, from the ground."""
    for mark in profile.marks("depth", "loc", "pothole"):
        lower = _surface_below_slab_ft(mark, job)
        if mark.depth_ft is None or lower is None:
            continue
        bottom = mark.depth_ft + (0.0 if mark.to == "invert" else profile.bore_in(mark.stretch.middle_ft).value / 24)
        uneven = tables.number("ground_error_in") / INCHES_PER_FT if lower else 0.0
        if mark.word == "pothole":
            error = tables.number("level_error_in") / INCHES_PER_FT
        else:
            share = tables.number("locator_tolerance_percent") / 100 * mark.depth_ft
            error = max(share, tables.number("locator_tolerance_min_ft")) / 2
        kind: Kind = "pothole" if mark.word == "pothole" else "locate"
        yield Saying(kind, ((round(mark.stretch.middle_ft, 2), 1.0),), bottom + lower, (error**2 + uneven**2) ** 0.5)


def riser_readings(line: Line, profile: Profile, job: Job, tables: Tables) -> Iterable[Saying]:
    """Where a run went in: its riser, from the floor or the ground down to the middle of the pipe.

    A run that hangs on ties alone may have come in by a branch, so its riser says nothing of this line.
    """
    error = tables.number("riser_error_in") / INCHES_PER_FT
    known = (p for p in line.passes if p.riser_ft > 0 and p.access and p.placed_by not in ("ties", "end"))
    for at, riser_ft in dict.fromkeys((p.start_ft, p.riser_ft) for p in known):
        indoors = profile.zone(at).value in INDOOR_ZONES
        lower = 0.0 if indoors else job.house.slab_above_grade_ft
        if lower is not None:
            bottom = riser_ft + profile.bore_in(at).value / 24 + lower
            uneven = 0.0 if indoors else tables.number("ground_error_in") / INCHES_PER_FT
            yield Saying("riser", ((round(at, 2), 1.0),), bottom, (error**2 + uneven**2) ** 0.5)


def _surface_below_slab_ft(mark: Mark, job: Job) -> float | None:
    """How far the surface a depth was taken from lies below the slab top; None where nobody measured it."""
    indoors = taken_indoors(mark)
    if indoors or (indoors is None and mark.surface in (None, "")):
        return 0.0
    return job.house.slab_above_grade_ft


def standing_water(line: Line, profile: Profile, tables: Tables) -> Iterable[Saying]:
    """Water that stands from here to there: its ends are level, and its depth is how far the bottom dips below them."""
    error = tables.number("water_line_error_in") / INCHES_PER_FT
    for finding in line.findings:
        if (
            finding.kind != "sag"
            or finding.stretch.length_ft < STEP_FT
            or {"only in use", "never ends"} & set(finding.signs)
        ):
            continue
        low, high = round(finding.stretch.from_ft, 2), round(finding.stretch.to_ft, 2)
        yield Saying("standing water", ((low, 1.0), (high, -1.0)), 0.0, error)
        bore = profile.bore_in(finding.stretch.middle_ft).value
        share = finding.share_percent(bore)
        if share is not None:
            eye = tables.number("eye_tolerance_percent") / 200 * bore / INCHES_PER_FT
            middle = round(finding.stretch.middle_ft, 2)
            deep = share / 100 * bore / INCHES_PER_FT
            yield Saying("water depth", ((middle, 1.0), (low, -0.5), (high, -0.5)), deep, eye)
