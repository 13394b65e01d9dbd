"""The job and all takeoffs of a scope in; what comes once, out: mobilizing, permit, visits, films, closures, tests."""

from collections.abc import Sequence

from estimator.knowledge.houses import ASBESTOS_FLOOR_THROUGH
from estimator.model.job import Job
from estimator.model.profile import Profile
from estimator.model.stretch import Stretch
from estimator.model.work import JOB, Repair, Takeoff
from estimator.model.works import together
from estimator.tables.tables import Tables
from estimator.takeoff.asked_by_rules import asked
from estimator.takeoff.case import Case
from estimator.takeoff.house_facts import house_facts
from estimator.takeoff.rented import BROUGHT, times_brought
from estimator.works.methods import renews

BURIED_PRIVATE = ("irrigation", "pool", "gas to grill", "private", "lighting", "sprinkler")


def take_off_job(job: Job, takeoffs: Sequence[Takeoff], tables: Tables, days_without_drains: float = 0.0) -> Takeoff:
    """Quantities that a scope has once, whatever its repairs are.

    Lines repaired are filmed once each; a permit and the inspector's visit when pipe is replaced, lined or closed; a
    street closure when a repair lies in the street; asbestos test and tendon scan when a floor is opened;
    and what the rules asked for (asked.py). `days_without_drains` is known only once the scope is priced.
    """
    line = takeoffs[0].repair.line if takeoffs else job.lines[0].name
    case = Case.of(Repair(id=JOB, method=JOB, line=line, stretch=Stretch(0.0, 0.0)), job, tables)
    house_facts(case)
    case.paper.facts.discard("under_slab")
    case.paper.facts |= {fact for t in takeoffs for fact in t.facts}
    _once(case, takeoffs)
    _tests(case, takeoffs)
    _machines(case, takeoffs)
    _opened_floor(case, takeoffs)
    _streets(case, takeoffs)
    _private_lines(case, takeoffs)
    asked(case, takeoffs, days_without_drains)
    return Takeoff(
        repair=case.repair,
        quantities=case.paper.quantities,
        facts=frozenset(case.paper.facts),
        assumptions=tuple(case.paper.assumptions),
        cautions=tuple(case.paper.cautions),
    )


def _touches_pipe(takeoff: Takeoff) -> bool:
    """Pipe is replaced, lined or closed, or uncovered: more than cleaned, tested or looked at from above."""
    return takeoff.repair.method == JOB or bool(
        renews(takeoff.repair.method) or takeoff.works.digs or takeoff.works.closes
    )


def _pipe_work(takeoffs: Sequence[Takeoff]) -> bool:
    return any(_touches_pipe(t) for t in takeoffs)


def _once(case: Case, takeoffs: Sequence[Takeoff]) -> None:
    paper, place = case.paper, case.place
    paper.put("jobs", 1, "the job")
    permit = _pipe_work(takeoffs)
    paper.put(
        "permits",
        1 if permit else 0,
        "pipe is replaced, lined or closed",
        ("methods", ", ".join(sorted({t.repair.method for t in takeoffs}))),
    )
    asked = None if place is None else place.inspection_before_cover
    visits = 1 if place is None or place.inspections is None else place.inspections
    if permit and asked is None:
        paper.assume("an inspector sees the pipe before it is covered; the price includes the standby")
    paper.put(
        "inspections",
        visits if permit and asked is not False else 0,
        "the inspector sees the pipe before it is covered",
        ("asked for by the place", {True: "yes", False: "no", None: "not answered"}[asked]),
        source="place row",
    )
    lines = sorted({t.repair.line for t in takeoffs if _touches_pipe(t)})
    paper.put(
        "films_after",
        len(lines),
        "each line repaired; a line only cleaned is filmed again right after",
        ("lines", ", ".join(lines)),
    )


def _tests(case: Case, takeoffs: Sequence[Takeoff]) -> None:
    """All new pipe of a visit stands open until it was seen full: each part is plugged and filled, all are watched together.

    A lining has a test of its own (liner.py): before its side drains are cut open, when the rest is not laid yet.
    """
    new = [t for t in takeoffs if t.filled_with_the_rest]
    case.paper.put(
        "tests",
        1 if new else 0,
        "all new pipe of the visit at once, before it is covered",
        ("repairs that lay pipe", len(new)),
        source="IPC 312: 10 ft of water, 15 min",
    )
    case.paper.put(
        "toilets",
        together(t.works for t in takeoffs).toilets_pulled - sum(t.value("toilets") for t in takeoffs),
        "one to fill through where new pipe lies below a floor, unless one is off for the camera or none drains into it",
    )


def _machines(case: Case, takeoffs: Sequence[Takeoff]) -> None:
    """The excavator is brought once, however many holes it digs, and again where it was not kept for the fill."""
    dug = sum(t.value("dig_bcy") for t in takeoffs)
    case.paper.put(BROUGHT, times_brought(takeoffs) if dug else 0, "a machine digs", ("dug by machine", dug, "cy"))


def _opened_floor(case: Case, takeoffs: Sequence[Takeoff]) -> None:
    opened = sum(t.value("slab_sf") for t in takeoffs)
    if not opened:
        return
    house = case.job.house
    if house.built is None or house.built <= ASBESTOS_FLOOR_THROUGH:
        case.paper.put(
            "asbestos_tests",
            1,
            "a floor of those years is opened",
            ("built", house.built or "unknown"),
            source="29 CFR 1926.1101, from memory; state rules",
        )
    if "slab_may_have_tendons" in case.paper.facts:
        case.paper.put("tendon_scans", 1, "a slab that may have tendons is opened", ("floor", house.floor))


def _streets(case: Case, takeoffs: Sequence[Takeoff]) -> None:
    count = sum(1 for t in takeoffs if any("street" in o.zones for o in t.works.open_digs))
    case.paper.put("street_closures", count, "repairs dug in the street")


def _private_lines(case: Case, takeoffs: Sequence[Takeoff]) -> None:
    """Lines the public locate does not mark: sprinklers, pool, gas to a grill."""
    words = {
        mark.choice
        for t in takeoffs
        if t.value("spoil_lcy")
        for mark in Profile(case.job.line(t.repair.line)).marks("crossing")
        if mark.choice in BURIED_PRIVATE
    }
    case.paper.put(
        "private_locates",
        1 if words else 0,
        "private lines near the dig",
        ("lines", ", ".join(sorted(str(w) for w in words))),
    )
