"""A way of repair that has no count of its own in; what the openings and the pipe of its plan come to, out.

Each opening from the open air is counted like any dig of its length, width and depth, with what holds its sides; each opening
in a floor with its concrete and its dust; the pipe by its feet, laid or lined. Several openings are added up.
"""

from collections.abc import Sequence
from dataclasses import replace

from estimator.model.judgement import Verdict
from estimator.model.opening import Opening
from estimator.takeoff.case import Case
from estimator.takeoff.cleaning import clean
from estimator.takeoff.dig import dig_as
from estimator.takeoff.liner import reline, sectional
from estimator.takeoff.pipe import new_pipe
from estimator.takeoff.restoration import put_back
from estimator.takeoff.slab_concrete import concrete_back, concrete_out
from estimator.takeoff.slab_dig import fill_below, held_below
from estimator.takeoff.slab_room import floor_and_dust
from estimator.takeoff.tunnel import tunnel
from estimator.takeoff.working import Working, cubic_yards
from estimator.works import works_of
from estimator.works.depth import bedding_ft, outside_ft
from estimator.works.ground import ground_facts
from estimator.works.open_dig import as_planned

GREATEST = frozenset({"dig_depth_ft", "safety_depth_ft", "dig_width_ft", "dig_top_width_ft"})
"""Of these several openings have the greatest one; all else is a sum."""


def by_works(case: Case) -> tuple[Verdict, ...]:
    """Return what stands against it; quantities are written on the case's sheet."""
    works = works_of(case.repair, case.job, case.tables)
    for one in works.open_digs:
        _add(case, _open_dig(case, one))
    if works.floors:
        _floors(case, works.floors)
    if works.tunnels:
        return tunnel(case)
    if works.laid:
        new_pipe(case, tunnel=False, tested=not works.piece)
    if works.lined:
        (sectional if any(p.pieces_ft for p in works.lined) else reline)(case)
    elif works.cleans:
        clean(case)
    return ()


def _open_dig(case: Case, one: Opening) -> Working:
    """One opening from the open air, by itself."""
    alone = replace(case, paper=Working())
    dug = dig_as(alone, as_planned(alone, one), one.days, new_pipe=bool(case.repair.stretch.length_ft))
    put_back(alone, (dug.top, dug.way.top_width_ft))
    return alone.paper


def _add(case: Case, more: Working) -> None:
    paper = case.paper
    for q in more.quantities:
        given = more.inputs_of(q.name)
        if q.name not in GREATEST:
            paper.add(q.name, q.value, q.formula, *given, source=q.source)
        elif q.value > paper.value(q.name):
            paper.put(q.name, q.value, q.formula, *given, source=q.source)
    paper.facts |= more.facts
    paper.assumptions.extend(a for a in more.assumptions if a not in paper.assumptions)
    paper.cautions.extend(c for c in more.cautions if c not in paper.cautions)


def _floors(case: Case, floors: Sequence[Opening]) -> None:
    """Openings in a floor: concrete out and in, the earth below them by hand, the room kept clean."""
    cuts = tuple((o.along.length_ft, o.bottom_width_ft) for o in floors)
    below = tuple(max(0.0, o.depth_ft - case.slab_ft) for o in floors)
    ground_facts(case)
    case.paper.facts |= {"under_slab", "inside_work"}
    concrete_out(case, cuts)
    area = sum(long * wide for long, wide in cuts)
    bank = sum(long * wide * deep for (long, wide), deep in zip(cuts, below, strict=True))
    case.paper.put("dig_depth_ft", max(o.depth_ft for o in floors), "the deepest opening, as planned")
    case.paper.put(
        "safety_depth_ft", max(o.safety_ft for o in floors), "bottom, not rounded, + what the locator may be off"
    )
    case.paper.put(
        "inside_dig_bcy",
        cubic_yards(bank),
        "each opening: length x width x depth below the slab; / 27",
        ("opened", area, "sq ft"),
    )
    case.paper.put("dig_length_ft", sum(long for long, _ in cuts), "the openings one after another")
    held_below(case, cuts, max(o.safety_ft for o in floors), max(o.depth_ft for o in floors))
    zone = area * min(bedding_ft(case) + outside_ft(case) + case.number("pipe_zone_over_ft"), min(below))
    fill_below(case, bank, zone, 0.0, 0.0)
    concrete_back(case, cuts)
    floor_and_dust(case, cuts)
