"""A scope with its takeoffs in, what the homeowner lives with out: floor, yard, old pipe left."""

from collections.abc import Iterable, Sequence

from estimator.model.job import Job
from estimator.model.judgement import Need
from estimator.model.profile import Profile
from estimator.model.stretch import Stretch, missing
from estimator.model.work import Repair, Takeoff, all_repairs
from estimator.works.methods import renews


def floor_sf(takeoffs: Iterable[Takeoff]) -> float:
    return sum(t.value("slab_sf") for t in takeoffs)


OPENED_OUTSIDE = (
    "sod_sf", "bed_sf", "flatwork_sf", "drive_sf", "street_sf", "asphalt_sf", "gravel_sf", "pavers_sf",
)  # fmt: skip


def yard_sf(takeoffs: Iterable[Takeoff]) -> float:
    """Grass, beds, walks, drive and street opened, sq ft."""
    return sum(t.value(name) for t in takeoffs for name in OPENED_OUTSIDE)


def renewed(repairs: Iterable[Repair], line: str) -> tuple[Stretch, ...]:
    """Where a line has new pipe or a lining afterwards, or was taken out of use by a way round."""
    return tuple(r.stretch for r in all_repairs(repairs) if r.line == line and renews(r.method))


def old_pipe_left_ft(repairs: Sequence[Repair], needs: Iterable[Need], job: Job) -> float:
    """Length of the lines with needs that is neither replaced nor lined, what was not filmed among it."""
    lines = sorted({n.line for n in needs})
    return sum(
        part.length_ft for line in lines for part in missing(Profile(job.line(line)).extent, renewed(repairs, line))
    )
