"""The needs of a job and the repairs offered in; for every way that answers none of them, the rule that speaks against it, out."""

from collections.abc import Iterable, Sequence

from estimator.model.job import Job
from estimator.model.judgement import METHODS, Effect, Need, Verdict
from estimator.model.work import Repair
from estimator.scopes.rules import BY_ID, may
from estimator.scopes.rules.facts import facts_of
from estimator.tables.tables import Tables

AGAINST = (Effect.BLOCKS, Effect.DOES_NOT_FIX)


def why_not(job: Job, needs: Sequence[Need], offered: Iterable[Repair], tables: Tables) -> tuple[Verdict, ...]:
    """For each need and each way that no offered repair answers it by: the verdicts that block it or say it cures nothing.

    Asked over the bare need, so that a way which was never tried (three spots on a worn-out run) still gets its reason.
    Rules that go without saying are left out.
    """
    answered = {(r.method, need) for r in offered for need in (*r.answers, *(a for f in r.first for a in f.answers))}
    out: dict[tuple[str, str, str], Verdict] = {}
    for need in needs:
        facts = facts_of(job, job.line(need.line), need.stretch, (need,), tables)
        for method in METHODS:
            if (method, need.id) in answered:
                continue
            for verdict in may(method, facts, tables):
                if verdict.effect in AGAINST and not verdict.overruled and not BY_ID[verdict.rule].goes_without_saying:
                    out.setdefault((method, verdict.rule, need.id), verdict)
    return tuple(out.values())
