"""Needs, the repairs offered and what stands against others in; for every need every way of repair with its verdict out."""

from collections.abc import Iterable, Sequence

from estimator.model.frozen import Frozen
from estimator.model.job import Job
from estimator.model.judgement import Effect, Need, Verdict
from estimator.model.say import Say
from estimator.model.work import Repair, all_repairs
from estimator.scopes.judge import counts
from estimator.scopes.rules import may
from estimator.scopes.rules.why_not import facts_there, in_order
from estimator.tables.tables import Tables
from estimator.works.methods import RECORDS, record_of

WEIGHT: tuple[Effect, ...] = tuple(Effect)
"""The gravest first: blocks, no fixed price ... prefers."""
NOT_FOR_THIS = Say.of("This way does not put that trouble right.")


class WayThere(Frozen):
    """One way of repair for one need: may it be offered, and the gravest thing a rule says of it (None: nothing)."""

    method: str
    offered: bool
    verdict: Verdict | None


class NeedWays(Frozen):
    need: Need
    ways: tuple[WayThere, ...]


def each_way(
    job: Job, needs: Sequence[Need], repairs: Iterable[Repair], against: Sequence[Verdict], tables: Tables
) -> tuple[NeedWays, ...]:
    """Every need with every way. `against` are all verdicts that stand against a way, those found by measuring among them."""
    open_ = tuple(one for repair in repairs for one in all_repairs((repair,)) if not _shut(one, against))
    return tuple(NeedWays(n, tuple(_way(m, n, job, open_, against, tables) for m in _ways())) for n in needs)


def _ways() -> tuple[str, ...]:
    """Closing off the old pipe puts nothing right by itself: it comes with a way round."""
    return tuple(m.name for m in RECORDS.values() if m.kind != "close")


def _shut(repair: Repair, against: Iterable[Verdict]) -> bool:
    """A rule blocked just this repair once it was measured."""
    it = (repair.method, repair.line, repair.stretch)
    return any((v.method, v.line, v.stretch) == it and counts(v, Effect.BLOCKS) for v in against)


def _way(
    method: str, need: Need, job: Job, open_: Sequence[Repair], against: Sequence[Verdict], tables: Tables
) -> WayThere:
    answering = [_gravest(r.verdicts) for r in open_ if r.method == method and need.id in r.answers]
    if answering:
        return WayThere(method, True, max(answering, key=_rank))
    said = may(method, facts_there(method, need, job, tables), tables)
    there = (v for v in against if (v.method, v.line) == (method, need.line) and v.stretch.touches(need.stretch))
    return WayThere(method, False, next(iter((*in_order(said), *there)), None) or _no_stretch(method, need))


def _no_stretch(method: str, need: Need) -> Verdict:
    rule, homeowner, estimator = record_of(method).no_shape or ("place-fits-the-method", NOT_FOR_THIS, NOT_FOR_THIS)
    return Verdict(
        rule=rule, effect=Effect.BLOCKS, method=method, line=need.line, stretch=need.stretch, homeowner=homeowner, estimator=estimator
    )  # fmt: skip


def _gravest(verdicts: Iterable[Verdict]) -> Verdict | None:
    """What does not fix another place nearby is left out: this need it does put right."""
    said = (v for v in verdicts if not v.overruled and v.effect is not Effect.DOES_NOT_FIX)
    return min(said, key=_rank, default=None)


def _rank(verdict: Verdict | None) -> int:
    return len(WEIGHT) if verdict is None else WEIGHT.index(verdict.effect)
