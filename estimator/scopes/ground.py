"""A line in, the runs of it that can be worked on in one way out: under the floor, in the crawl space, outside."""

from typing import Literal

from estimator.knowledge.pipe_family import family
from estimator.model.profile import Profile
from estimator.model.stretch import Stretch

Ground = Literal["floor", "crawl", "outside"]

OF_ZONE: dict[str, Ground] = {
    "slab": "floor",
    "basement": "floor",
    "crawl": "crawl",
    "yard": "outside",
    "drive": "outside",
    "walk": "outside",
    "street": "outside",
}


def grounds(profile: Profile) -> tuple[tuple[Stretch, Ground], ...]:
    """The line cut where the ground changes; a slab edge splits it. Where nobody said, it is taken to be outside."""
    out: list[tuple[Stretch, Ground]] = []
    for stretch, zone in profile.zones(profile.extent):
        ground = OF_ZONE.get(zone or "", "outside")
        if out and out[-1][1] == ground:
            out[-1] = (out[-1][0].union(stretch), ground)
        else:
            out.append((stretch, ground))
    return tuple(out)


def runs_under(profile: Profile, ground: Ground, stretch: Stretch) -> tuple[Stretch, ...]:
    """The runs of this ground that the stretch lies on, at least with a part of it (a point: at least touching)."""
    runs = [run for run, here in grounds(profile) if here == ground]
    if stretch.length_ft == 0:
        return tuple(run for run in runs if run.holds(stretch.from_ft))[:1]
    return tuple(run for run in runs if run.overlaps(stretch))


def same_pipe(profile: Profile, run: Stretch, stretch: Stretch) -> Stretch:
    """The whole of the run that is of the same kind of pipe as the stretch.

    Neighbouring pieces of one family count as one; the stretch itself is always inside.
    """
    out = stretch
    kinds = {family(p) for _, p in profile.pipes(stretch)}
    pieces = [piece for piece, p in profile.pipes(run) if family(p) in kinds]
    grown = True
    while grown:
        touching = [p for p in pieces if p.touches(out) and not out.covers(p)]
        grown = bool(touching)
        for piece in touching:
            out = out.union(piece)
    return out
