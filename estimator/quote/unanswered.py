"""Needs that must be repaired and are in no price in, a sentence for each with the reason out."""

from collections.abc import Iterable, Sequence

from estimator.model.job import Job
from estimator.model.judgement import Effect, Need, Verdict
from estimator.model.say import Say
from estimator.model.work import Scope
from estimator.quote import where
from estimator.wording.plain import FINDINGS, in_plain_words
from estimator.works.methods import known

AGAINST = (Effect.BLOCKS, Effect.DOES_NOT_FIX)
NO_WAY = Say.of("No repair method is open there with today's notes.")


def never_done(scopes: Sequence[Scope]) -> tuple[Need, ...]:
    """Needs that must be repaired and that every scope leaves as they are."""
    left = [{n.id for n in scope.leaves} for scope in scopes]
    return tuple(n for n in scopes[0].leaves if n.must and all(n.id in ids for ids in left)) if scopes else ()


def incomplete(job: Job, scope: Scope, unanswered: Iterable[Need], blocked: Sequence[Verdict]) -> tuple[Say, ...]:
    """What this scope leaves although it must be repaired, and what speaks against doing it."""
    return tuple(_said(job, need, blocked) for need in unanswered if need in scope.leaves)


def _a_run(method: str) -> bool:
    """It renews a run: what stands against it says more than why a spot is too little."""
    record = known(method)
    return record is not None and record.renews and record.kind in ("replace", "line", "go around")


def _said(job: Job, need: Need, blocked: Sequence[Verdict]) -> Say:
    there = [v for v in blocked if v.line == need.line and v.stretch.touches(need.stretch) and not v.overruled]
    why = sorted(
        (v for v in there if v.effect in AGAINST), key=lambda v: (not _a_run(v.method), AGAINST.index(v.effect))
    )
    return Say.of(
        "Not complete: {what}, {place}, also needs repair and is not in this price. {why}",
        what=tuple(in_plain_words(FINDINGS, kind) for kind in need.kinds),
        place=where.place(job.line(need.line), need.stretch),
        why=why[0].homeowner if why else NO_WAY,
    )
