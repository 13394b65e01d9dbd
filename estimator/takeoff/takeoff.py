"""Step 4: a repair in, its quantities, facts, assumptions, cautions and geometric finds out."""

from collections.abc import Callable

from estimator.model.job import Job
from estimator.model.judgement import Verdict
from estimator.model.remembered import remembered
from estimator.model.work import Repair, Takeoff
from estimator.tables.tables import Tables
from estimator.takeoff.burst import burst
from estimator.takeoff.case import Case
from estimator.takeoff.cleaning import clean
from estimator.takeoff.house import house_facts
from estimator.takeoff.liner import reline, sectional
from estimator.takeoff.reroute import reroute
from estimator.takeoff.restoration import note_small_finish
from estimator.takeoff.slab import break_through, slab_spot
from estimator.takeoff.small_methods import abandon, crawl_replace, isolation_test, look_and_see
from estimator.takeoff.tunnel import tunnel
from estimator.takeoff.visit import visit
from estimator.takeoff.yard import trench, yard_spot
from estimator.works import works_of

Step = Callable[[Case], tuple[Verdict, ...] | None]

WAYS: tuple[tuple[str, Step], ...] = (
    ("clean", clean),
    ("sectional liner", sectional),
    ("reline", reline),
    ("yard spot", yard_spot),
    ("slab spot", slab_spot),
    ("tunnel", tunnel),
    ("break-through", break_through),
    ("trench", trench),
    ("burst", burst),
    ("reroute", reroute),
    ("abandon", abandon),
    ("isolation test", isolation_test),
    ("look and see", look_and_see),
    ("crawl replace", crawl_replace),
    ("visit", visit),
)
"""Every method of model.judgement.METHODS and the function that measures it."""


def take_off(repair: Repair, job: Job, tables: Tables, *, from_tunnel: bool = False) -> Takeoff:
    """All quantities of one repair, without those of the repairs that come first (they have takeoffs of their own).

    `from_tunnel`: this tunnel begins in another one of the same scope, so the way there and its pit are not dug again.

    Errors: KeyError for a method or a line nobody knows, or a setting the tables lack.
    """
    case = Case.of(repair, job, tables, from_tunnel)
    house_facts(case)
    finds = dict(WAYS)[repair.method](case) or ()
    note_small_finish(case)
    paper = case.paper
    facts = (
        frozenset(paper.facts)
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
        works=works_of(repair, job, tables),
    )


@remembered
def measure_with(tables: Tables) -> Callable[[Repair, Job], Takeoff]:
    """How a repair on a job is measured: the same repair of the same job once, in however many options it is."""
    return remembered(lambda repair, job: take_off(repair, job, tables))


def _size(case: Case) -> str:
    """What {size} means in recipes: the new pipe's; on a way round its own."""
    own = case.paper.value("reroute_size_in")
    return f"{own:g}" if own else case.size
