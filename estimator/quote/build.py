"""Step 6: chosen scopes with their prices in, the Quote out, or CannotGoOn with the reasons why none may be sent."""

from collections.abc import Container, Iterable, Sequence
from dataclasses import replace
from datetime import date, timedelta

from estimator.model.job import Job
from estimator.model.judgement import Diagnosis, Effect, Need, Verdict
from estimator.model.offer import Firm, Option, Quote
from estimator.model.problem import CannotGoOn
from estimator.model.say import FromTable, Say
from estimator.model.work import LETTERS as LETTERS
from estimator.model.work import Scope, all_repairs
from estimator.quote import findings, terms, urgency, where
from estimator.quote.option import option
from estimator.quote.recommend import Chosen, is_visit
from estimator.quote.refuse import NOTHING_TO_OFFER, facts, not_known_to_be_clean, reasons
from estimator.quote.titles import told_apart
from estimator.tables.tables import Tables
from estimator.wording.plain import FINDINGS, in_plain_words
from estimator.works.methods import known


def build_quote(
    job: Job,
    diagnosis: Diagnosis,
    chosen: Sequence[Chosen],
    tables: Tables,
    day: date,
    revision: int,
    blocked: Sequence[Verdict] = (),
    unanswered: Sequence[Need] = (),
) -> Quote:
    """Options lettered in the order they come, with everything the papers need; pure, no files.

    `tables` may be looked at on an earlier day than the quote's: a revision keeps the prices and the last day of the first
    issue while that lasts. No price is fixed that leaves one of `unanswered`, needs that must be repaired and that no
    allowed repair answers, or what all options leave of those.

    Errors: CannotGoOn with kinds of PROBLEMS: an invented place for a real job, a lapsed licence or insurance, nothing
    to offer, text that cannot be printed.
    """
    of_the_day = tables.on(day)  # licence and letterhead are today's, whatever day the prices are of
    if problems := reasons(job, len(chosen), of_the_day, day):
        raise CannotGoOn(*problems)
    known = facts(job, (t for c in chosen for t in c.takeoffs))
    methods = {t.repair.method for c in chosen for t in c.takeoffs}
    needs = [need for need in diagnosis.needs if need.must] or list(diagnosis.needs)
    place = place_name(job, tables)
    never = dict.fromkeys((*(n for n in unanswered if n.must), *never_done([c.scope for c in chosen])))
    lacks = [incomplete(job, c.scope, never, blocked) for c in chosen]
    options = [option(job, diagnosis, c, tables, LETTERS[i], lacks[i]) for i, c in enumerate(chosen)]
    return Quote(
        job=job, diagnosis=diagnosis, place=place, firm=firm(of_the_day), revision=revision, day=day,
        options=told_apart(_after_the_visit(options, chosen), job.lines),
        blocked=not_offered(blocked, chosen, tables),
        priced_on=tables.day if tables.day < day else None,
        valid_until=min(day, tables.day) + timedelta(days=int(tables.number("validity_days"))),
        seen=findings.seen(job), not_seen=(*findings.not_seen(job), *findings.hidden(job, diagnosis)),
        found=findings.found(job, diagnosis), tests=findings.tests(diagnosis),
        tests_compared=diagnosis.tests_compared, lift_steps=tuple(step.text for step in diagnosis.lift_steps),
        notices=terms.notices(tables, known, methods), tables_fingerprint=tables.fingerprint,
        urgency=urgency.how_soon(needs), if_nothing=urgency.if_nothing(needs, job), if_cleaned=urgency.if_cleaned(needs),
        cancel_business_days=_cancel(job, tables),
        paper_warnings=tuple(dict.fromkeys(w for c in chosen for w in c.price.warnings)),
    )  # fmt: skip


def _after_the_visit(options: Sequence[Option], chosen: Sequence[Chosen]) -> list[Option]:
    """Each option whose price a visit would make firm with the letter of the visit that is offered."""
    visit = next((o.letter for o in options if is_visit(o) and not o.name), "")
    return [
        replace(o, firm_after=visit if c.waits_for_visit and not o.fixed else "")
        for o, c in zip(options, chosen, strict=True)
    ]


def firm(tables: Tables) -> Firm:
    """The letterhead from the settings."""
    return Firm(
        name=tables.text("firm_name"), address=tables.text("firm_address"), phone=tables.text("firm_phone"),
        email=tables.text("firm_email"), licence=tables.text("firm_licence"), insurance=tables.text("firm_insurance"),
        accent=tables.text("accent_colour"), logo=tables.text("logo_file"),
    )  # fmt: skip


def not_offered(blocked: Sequence[Verdict], chosen: Sequence[Chosen], tables: Tables) -> tuple[Verdict, ...]:
    """One reason a method, for the methods that no option uses; the way named before the reason."""
    used = {r.method for c in chosen for r in all_repairs(c.scope.repairs)}
    taken = {record.short for method in used if (record := known(method))}
    first: dict[str, Verdict] = {}
    for verdict in blocked:
        if verdict.method not in used and not verdict.overruled:
            first.setdefault(verdict.method, verdict)
    return tuple(replace(v, homeowner=_named(v, tables, taken)) for v in first.values())


def _named(verdict: Verdict, tables: Tables, taken: Container[Say]) -> Say:
    """The way in a word or two before the reason; by the firm's title where it has no word, or an option is told by the same."""
    if (record := known(verdict.method)) and record.short not in taken:
        return Say.of("{way}: {why}", way=record.short, why=verdict.homeowner)
    try:
        row = tables.method(verdict.method)
    except KeyError:
        return verdict.homeowner
    return Say.of("{way}: {why}", way=FromTable(row.title_en, row.title_es), why=verdict.homeowner)


def place_name(job: Job, tables: Tables) -> str:
    place = tables.known_place(job.house.jurisdiction)
    return place.text if place else job.house.jurisdiction


def _cancel(job: Job, tables: Tables) -> int | None:
    place = tables.known_place(job.house.jurisdiction)
    return place.cancel_business_days if place else None


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
