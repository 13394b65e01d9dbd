"""Step 4: a repair in, its quantities, facts, assumptions, cautions and geometric finds out."""

from collections.abc import Callable

from estimator.model.job import Job
from estimator.model.judgement import Verdict
from estimator.model.remembered import remembered, remembered_by
from estimator.model.work import Repair, Takeoff
from estimator.tables.tables import Tables
from estimator.takeoff.burst import burst
from estimator.takeoff.by_works import by_works
from estimator.takeoff.case import Case
from estimator.takeoff.cleaning import clean
from estimator.takeoff.house_facts import house_facts
from estimator.takeoff.least_cover import say_least_cover
from estimator.takeoff.liner import reline, sectional
from estimator.takeoff.reroute import reroute
from estimator.takeoff.restoration import note_small_finish
from estimator.takeoff.slab import break_through, slab_spot
from estimator.takeoff.small_methods import abandon, crawl_replace, isolation_test, look_and_see
from estimator.takeoff.tunnel import tunnel
from estimator.takeoff.visit import visit
from estimator.takeoff.yard import hand_over, trench, yard_spot
from estimator.works import works_of
from estimator.works.methods import Measure, record_of
from estimator.works.properties import properties_of

Step = Callable[[Case], tuple[Verdict, ...] | None]

MEASURES: dict[Measure, Step] = {
    "cleaning": clean,
    "pieces": sectional,
    "lining": reline,
    "open spot": yard_spot,
    "open run": trench,
    "floor spot": slab_spot,
    "floor strip": break_through,
    "tunnel": tunnel,
    "pits": burst,
    "way round": reroute,
    "closing": abandon,
    "section tests": isolation_test,
    "look": look_and_see,
    "hung": crawl_replace,
    "to the lot line": hand_over,
    "visit": visit,
    "works": by_works,
}
"""What a record says is to be counted, and the function that counts it."""


def take_off(repair: Repair, job: Job, tables: Tables, *, from_tunnel: bool = False, open_ft: float = 0.0) -> Takeoff:
    """All quantities of one repair, without those of the repairs that come first (they have takeoffs of their own).

    `from_tunnel`: this tunnel begins in another one of the same scope, so the way there and its pit are not dug again.
    `open_ft`: so much of its lower end lies in the open floor over the line it joins.

    Errors: KeyError for a method or a line nobody knows, or a setting the tables lack.
    """
    case = Case.of(repair, job, tables, from_tunnel, open_ft)
    house_facts(case)
    finds = MEASURES[record_of(repair.method).measure](case) or ()
    note_small_finish(case)
    case.paper.put(
        "excavator_days", 1 if case.paper.value("dig_bcy") else 0, "one day at least, while it digs and fills"
    )
    works = works_of(repair, job, tables, open_ft)
    say_least_cover(case, works)
    paper = case.paper
    facts = (
        frozenset(paper.facts)
        | properties_of(works)
        | ({"machine_dug"} if paper.value("dig_bcy") else set())
        | repair.facts
        | {f for v in (*repair.verdicts, *finds) if not v.overruled for f in v.facts}
    )
    return Takeoff(
        repair=repair,
        quantities=paper.quantities,
        facts=facts,
        size=_size(case),
        assumptions=tuple(paper.assumptions),
        cautions=tuple(paper.cautions),
        finds=finds,
        works=works,
    )


@remembered
def measure_with(tables: Tables) -> Callable[[Repair, Job], Takeoff]:
    """How a repair on a job is measured: the same repair of the same job once, in however many options it is."""
    return remembered(lambda repair, job: take_off(repair, job, tables))


@remembered
def measure_open(tables: Tables) -> Callable[[Repair, Job, float], Takeoff]:
    """The same for a repair with so many feet of its lower end in the open floor over the line it joins."""
    by = remembered_by(lambda repair, job, open_ft: (id(repair), id(job), open_ft))
    return by(lambda repair, job, open_ft: take_off(repair, job, tables, open_ft=open_ft))


def _size(case: Case) -> str:
    """What {size} means in recipes: the new pipe's; on a way round its own."""
    own = case.paper.value("reroute_size_in")
    return f"{own:g}" if own else case.size
