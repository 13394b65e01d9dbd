"""The takeoffs of one scope in; the same out, with what one repair digs, lays or cleans for another counted once."""

from collections.abc import Sequence

from estimator.model.frozen import replace
from estimator.model.job import Job
from estimator.model.line import Join
from estimator.model.profile import Profile
from estimator.model.stretch import Stretch, missing
from estimator.model.tool_reach import passed
from estimator.model.work import Quantity, Takeoff
from estimator.tables.tables import Tables
from estimator.takeoff.case import Case
from estimator.takeoff.takeoff import measure_open, take_off


def together(takeoffs: Sequence[Takeoff], job: Job, tables: Tables) -> tuple[Takeoff, ...]:
    """A tunnel to a side line begins in the tunnel along the line it joins, where the scope has one that far.

    A side line that ends in another repair's new pipe ends in its wye. A line is cleaned and filmed once. Facts and finds that others added to a takeoff stay on it.
    """
    begun = tuple(_begun_in_another(t, takeoffs, job, tables) or t for t in takeoffs)
    return cleaned_once([beside(t, begun, job, tables) for t in begun], job)


def _begun_in_another(takeoff: Takeoff, all_: Sequence[Takeoff], job: Job, tables: Tables) -> Takeoff | None:
    if not takeoff.works.tunnels:
        return None
    case = Case.of(takeoff.repair, job, tables)
    join = case.line.joins
    if join is None or not case.lead_ft or takeoff.value("tunnel_ft") <= case.lead_ft:
        return None
    main = [Case.of(t.repair, job, tables) for t in all_ if t.works.tunnels and t.repair.line == join.line]
    if not any(_passes(other, case.lead_ft) for other in main):
        return None
    again = take_off(takeoff.repair, job, tables, from_tunnel=True)
    return replace(again, facts=again.facts | takeoff.facts, finds=takeoff.finds)


def _passes(main: Case, inside_ft: float) -> bool:
    """The main tunnel comes by there: from the exit it passes all before its far end, from a wall only its own stretch."""
    near, far = main.inside
    return inside_ft <= far and (main.repair.entry != "wall" or near <= inside_ft)


AT_OLD_PIPE = frozenset({"junctions", "test_tees"})
"""What a side line takes at its lower end where the line it joins stays old: a wye cut in, and a tee for the test plug."""


def beside(takeoff: Takeoff, others: Sequence[Takeoff], job: Job, tables: Tables) -> Takeoff:
    """A side line renewed down to a stretch that others lay anew: glued to their wye, filled with them, no floor cut twice."""
    join = job.line(takeoff.repair.line).joins
    if join is None or not takeoff.value("junctions"):
        return takeoff
    hosts = [t for t in others if t.works.ties_in(join)]
    if not hosts:
        return takeoff
    open_ft = max((_half_open_ft(t, join) for t in hosts), default=0.0) if takeoff.works.floors else 0.0
    if open_ft:
        again = measure_open(tables)(takeoff.repair, job, open_ft)
        takeoff = replace(again, facts=again.facts | takeoff.facts, finds=takeoff.finds)
    return replace(takeoff, quantities=tuple(q for q in takeoff.quantities if q.name not in AT_OLD_PIPE))


def _half_open_ft(host: Takeoff, join: Join) -> float:
    """From the pipe to the side of its opening in the floor, where a line joins; 0 where none is cut there."""
    cut = (o for o in host.works.floors if o.line == join.line and o.along.holds(join.station_ft))
    return max((o.bottom_width_ft / 2 for o in cut), default=0.0)


def cleaned_once(takeoffs: Sequence[Takeoff], job: Job) -> tuple[Takeoff, ...]:
    """Two short liners on one line are cleaned for and looked at in one go; the first takeoff of a line carries it."""
    done: dict[str, list[Stretch]] = {}
    out = []
    for takeoff in takeoffs:
        if not takeoff.value("clean_ft"):
            out.append(takeoff)
            continue
        line = takeoff.repair.line
        here = passed(Profile(job.line(line)), takeoff.repair.stretch)
        out.append(_less(takeoff, here, done[line]) if line in done else takeoff)
        done.setdefault(line, []).append(here)
    return tuple(out)


def _less(takeoff: Takeoff, here: Stretch, done: list[Stretch]) -> Takeoff:
    """What another repair of this line has cleaned and filmed already is struck."""
    left = sum(part.length_ft for part in missing(here, done))
    feet = replace(_named(takeoff, "clean_ft"), value=left, formula="what no other repair of this line cleans already")
    kept = (feet if q.name == "clean_ft" else q for q in takeoff.quantities if q.name != "films_before")
    return replace(takeoff, quantities=tuple(q for q in kept if q.value > 0))


def _named(takeoff: Takeoff, name: str) -> Quantity:
    return next(q for q in takeoff.quantities if q.name == name)
