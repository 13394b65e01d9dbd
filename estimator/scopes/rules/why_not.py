"""The needs of a job and the repairs offered in; for every way that answers none, or has no price for its size, what speaks against it, out."""

from collections.abc import Iterable, Sequence

from estimator.model.job import Job
from estimator.model.judgement import Effect, Need, Verdict
from estimator.model.say import Say
from estimator.model.stretch import Stretch
from estimator.model.work import Repair, Takeoff
from estimator.scopes.rules import BY_ID, may
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.gathered import facts_of
from estimator.tables.tables import Tables
from estimator.works import works_of
from estimator.works.methods import names, record_of

AGAINST = (Effect.BLOCKS, Effect.DOES_NOT_FIX)
TOLD_FIRST = ("no-spots-on-worn-out-pipe", "fiber-is-not-patched")
TOLD_LAST = ("length-fits-the-method", "bore-fits-the-method")
"""Where several rules speak against a way, the one about the pipe says more than the one about the tool."""


def why_not(job: Job, needs: Sequence[Need], offered: Iterable[Repair], tables: Tables) -> tuple[Verdict, ...]:
    """For each need and each way that no offered repair answers it by: the verdicts that block it or say it cures nothing.

    Asked over the bare need, so that a way which was never tried (three spots on a worn-out run) still gets its reason. A
    way that goes without saying (a yard dig under a house) is left out.
    """
    answered = {(r.method, need) for r in offered for need in (*r.answers, *(a for f in r.first for a in f.answers))}
    out: dict[Verdict, None] = {}
    for need in needs:
        for method in names():
            if (method, need.id) not in answered:
                out |= dict.fromkeys(_against(may(method, facts_there(method, need, job, tables), tables)))
    return tuple(out)


def facts_there(method: str, need: Need, job: Job, tables: Tables) -> StretchFacts:
    """What a way is asked about for one need: the bare need, or all that the way round there would replace."""
    ways = (w for w in job.reroutes if record_of(method).goes_round and w.replaces_line == need.line)
    for way in ways:
        low = need.stretch.from_ft if way.replaces_from_ft is None else way.replaces_from_ft
        high = need.stretch.to_ft if way.replaces_to_ft is None else way.replaces_to_ft
        if (replaced := Stretch.between(low, high)).covers(need.stretch):
            return _there(method, need, replaced, job, tables, way.name)
    return _there(method, need, need.stretch, job, tables)


def _there(method: str, need: Need, stretch: Stretch, job: Job, tables: Tables, reroute: str = "") -> StretchFacts:
    repair = Repair(id="", method=method, line=need.line, stretch=stretch, reroute=reroute)
    works = works_of(repair, job, tables)
    return facts_of(job, job.line(need.line), stretch, (need,), tables, reroute, works, method)


def _against(verdicts: Iterable[Verdict]) -> tuple[Verdict, ...]:
    counting = in_order(verdicts)
    return () if any(BY_ID[v.rule].goes_without_saying for v in counting) else counting


def in_order(verdicts: Iterable[Verdict]) -> tuple[Verdict, ...]:
    """Those that block a way or say it cures nothing: what guards people first, then what goes without saying, then what says
    most of the pipe.
    """
    counting = [v for v in verdicts if v.effect in AGAINST and not v.overruled]
    return tuple(sorted(counting, key=_telling))


def _telling(verdict: Verdict) -> tuple[bool, ...]:
    rule = BY_ID[verdict.rule]
    return not rule.guards_people, not rule.goes_without_saying, rule.id not in TOLD_FIRST, rule.id in TOLD_LAST


NO_ROW_FOR_SIZE = "pricing/size-without-price"
"""The code of the one problem of pricing that puts a single repair aside and stops nothing else."""


def no_price(takeoff: Takeoff) -> Verdict:
    repair = takeoff.repair
    return Verdict(
        rule="no-price-for-this-size",
        effect=Effect.BLOCKS,
        method=repair.method,
        line=repair.line,
        stretch=repair.stretch,
        homeowner=Say.of("We do not carry what this method needs for a pipe of this size."),
        estimator=Say.of(
            "The tables have no price for {size} in pipe here: add the row, or leave this way out.", size=takeoff.size
        ),
    )
