"""A job and what it means in, a Quote without options out: the facts for reports that carry no price, a clean house among them."""

from collections.abc import Sequence
from datetime import date, timedelta

from estimator.model.job import Job
from estimator.model.judgement import Diagnosis, Verdict
from estimator.model.offer import Quote
from estimator.model.problem import CannotGoOn
from estimator.quote import findings, terms, urgency
from estimator.quote.build import firm, not_offered, place_name
from estimator.quote.facts import facts
from estimator.quote.refuse import NOTHING_TO_OFFER, not_known_to_be_clean, reasons
from estimator.tables.tables import Tables


def build_report(
    job: Job, diagnosis: Diagnosis, tables: Tables, day: date, revision: int = 1, blocked: Sequence[Verdict] = ()
) -> Quote:
    """What was filmed, found and tested, in words, with the firm's head, and why nothing is offered.

    Errors: CannotGoOn as for a quote: a lapsed licence, an invented place for a real job; never for want of options.
    """
    problems = tuple(p for p in reasons(job, 0, tables, day) if p.code != NOTHING_TO_OFFER.code)
    problems += () if diagnosis.needs else not_known_to_be_clean(job)
    if problems:
        raise CannotGoOn(*problems)
    needs = [need for need in diagnosis.needs if need.must] or list(diagnosis.needs)
    return Quote(
        job=job, diagnosis=diagnosis, place=place_name(job, tables), firm=firm(tables), revision=revision, day=day,
        options=(), blocked=not_offered(blocked, (), tables),
        priced_on=tables.day if tables.day < day else None,
        valid_until=min(day, tables.day) + timedelta(days=int(tables.number("validity_days"))),
        seen=findings.seen(job), not_seen=(*findings.not_seen(job), *findings.hidden(job, diagnosis)),
        found=findings.found(job, diagnosis), tests=findings.tests(diagnosis),
        notices=terms.notices(tables, facts(job, ())), tables_fingerprint=tables.fingerprint,
        urgency=urgency.how_soon(needs), if_nothing=urgency.if_nothing(needs, job),
        tests_compared=diagnosis.tests_compared, lift_steps=tuple(step.text for step in diagnosis.lift_steps),
    )  # fmt: skip
