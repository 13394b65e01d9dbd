"""One chosen scope in, the Option in words out."""

from collections.abc import Iterable
from decimal import Decimal

from estimator.model.agreed import work_of
from estimator.model.frozen import replace
from estimator.model.gas import NO_PRICE_IN_GAS, gas_smelled
from estimator.model.job import Job
from estimator.model.judgement import Diagnosis, Effect, Verdict
from estimator.model.offer import Option
from estimator.model.price import Price
from estimator.model.say import FromTable, Say
from estimator.model.work import JOB, Repair, Takeoff, all_repairs
from estimator.quote import pipe_remaining, terms
from estimator.quote.recommend import Chosen
from estimator.quote.refuse import facts
from estimator.quote.titles import title, under_title
from estimator.tables.rows import MethodRow, PlaceRow
from estimator.tables.tables import Tables
from estimator.wording.plain import CLASSES
from estimator.works.methods import known, renews

PAPERS_BY_FACT: tuple[tuple[str, Say], ...] = (
    ("septic_permit", Say.of("Health department permit for work at the septic system.")),
    ("street_permit", Say.of("City street permit, with bond, traffic control and patch.")),
    ("permission_first", Say.of("Written permission from the neighbor or city that owns the ground.")),
    ("asbestos_check", Say.of("Asbestos test before we cut.")),
    ("lead_safe", Say.of("Lead-safe work by a certified firm. You get the EPA lead pamphlet first.")),
)
"""Papers that the rules ask for, in the order in which they take longest (common practice; 40 CFR 745 for lead)."""
NOT_FIXED = (Effect.NO_FIXED_PRICE, Effect.UNTIL_APPROVED)


def option(
    job: Job, diagnosis: Diagnosis, chosen: Chosen, tables: Tables, letter: str, lacks: tuple[Say, ...] = ()
) -> Option:
    """Titles and warranty from the methods, sentences from the terms, extras with caps, days, payments.

    `lacks` says what must be repaired and is not in it: then its price is not fixed.
    """
    repairs = all_repairs(chosen.scope.repairs)
    methods = by_weight(chosen, repairs, tables)
    used, known = {m.method for m in methods} | {JOB}, facts(job, chosen.takeoffs)
    because = (*lacks, *not_fixed_because(job, diagnosis, repairs, chosen.takeoffs))
    promise, promise_text = pipe_remaining.water_test(chosen.scope, chosen.takeoffs, chosen.old_pipe_left_ft)
    place = tables.known_place(job.house.jurisdiction)
    low, high = life(methods)
    extras = terms.extras(tables, used, known, chosen.margins)
    made = Option(
        letter=letter, title=title(methods), under_title=under_title(methods), name=chosen.name,
        scope=chosen.scope, takeoffs=chosen.takeoffs, price=lettered(chosen.price, letter),
        days_on_site=chosen.days_on_site, days_without_drains=chosen.days_without_drains,
        floors_opened=pipe_remaining.floors_opened(job, chosen.takeoffs), floor_sf=chosen.floor_sf, yard_sf=chosen.yard_sf,
        old_pipe_left_ft=chosen.old_pipe_left_ft, stays_old=pipe_remaining.pipe_left(job, chosen.scope, chosen.takeoffs),
        water_test=promise, water_test_text=promise_text, life_low=low, life_high=high,
        warranty_en="\n".join(dict.fromkeys(m.warranty_en for m in methods)),
        warranty_es="\n".join(dict.fromkeys(m.warranty_es for m in methods)),
        main_risk=Say.of("{risk}", risk=FromTable(methods[0].risk_en, methods[0].risk_es)),
        extras=extras, extras_tax=terms.extras_tax(extras, place), terms=terms.terms(tables, used, known),
        to_others=terms.to_others(tables, used, known, chosen.floor_sf, job.house.floor_price_sf),
        payments=chosen.payments, add_ons=chosen.add_ons, basis=chosen.basis,
        needs_papers=needs_papers(chosen.takeoffs, place), fixed=not because, not_fixed_because=because,
        does=pipe_remaining.work_lines(job, chosen.scope, chosen.takeoffs),
        cautions=cautions(repairs, chosen.takeoffs), assumptions=assumptions(chosen.takeoffs),
    )  # fmt: skip
    return replace(made, work_key=work_of(made, job))


def lettered(price: Price, letter: str) -> Price:
    """The price with its lines numbered for this option, A1, A2 ..., in the order in which they are printed: by class."""
    order = {name: n for n, name in enumerate(CLASSES)}
    printed = sorted(range(len(price.lines)), key=lambda i: (order.get(price.lines[i].work_class, len(order)), i))
    number = {i: n for n, i in enumerate(printed, start=1)}
    lines = (replace(line, id=f"{letter}{number[i]}") for i, line in enumerate(price.lines))
    return replace(price, lines=tuple(lines))


def by_weight(chosen: Chosen, repairs: Iterable[Repair], tables: Tables) -> tuple[MethodRow, ...]:
    """The methods used, the one most of the money goes to first; ties in the order of the work."""
    money: dict[str, Decimal] = {}
    for line in chosen.price.lines:
        money[line.repair] = money.get(line.repair, Decimal(0)) + line.amount
    weight: dict[str, Decimal] = {}
    for repair in repairs:
        weight[repair.method] = weight.get(repair.method, Decimal(0)) + money.get(repair.id, Decimal(0))
    return tuple(tables.method(name) for name in sorted(weight, key=lambda name: -weight[name]))


def _cleans(method: str) -> bool:
    record = known(method)
    return record is not None and record.kind == "clean"


def life(methods: tuple[MethodRow, ...]) -> tuple[int, int]:
    """Years, low and high, of the part that wears out first; cleaning counts only on its own."""
    lasting = [m for m in methods if m.life_high and not _cleans(m.method)] or [m for m in methods if m.life_high]
    return (min(m.life_low for m in lasting), min(m.life_high for m in lasting)) if lasting else (0, 0)


def verdicts(repairs: Iterable[Repair], takeoffs: Iterable[Takeoff]) -> list[Verdict]:
    """Rules' answers on the repairs, those found at takeoff among them; what the owner overruled is left out."""
    found = [v for repair in repairs for v in repair.verdicts] + [v for takeoff in takeoffs for v in takeoff.finds]
    return [v for v in found if not v.overruled]


def not_fixed_because(
    job: Job, diagnosis: Diagnosis, repairs: tuple[Repair, ...], takeoffs: tuple[Takeoff, ...]
) -> tuple[Say, ...]:
    """Why the price cannot hold yet: rules that say so, and open questions on the pipe it is for."""
    rules = [v.homeowner for v in verdicts(repairs, takeoffs) if v.effect in NOT_FIXED]
    open_ = [
        q.not_fixed
        for q in diagnosis.questions
        if q.not_fixed
        and any(
            q.line == r.line and (q.stretch is None or q.stretch.touches(r.stretch))
            for r in repairs
            if renews(r.method)  # what cleans or looks is what answers it
        )
    ]
    gas = [NO_PRICE_IN_GAS] if gas_smelled(job) else []
    return tuple(dict.fromkeys([*gas, *rules, *open_]))


def cautions(repairs: tuple[Repair, ...], takeoffs: tuple[Takeoff, ...]) -> tuple[Say, ...]:
    """What the rules ask the people of the house to mind; what a takeoff warns of is for the crew and stays with it."""
    return tuple(dict.fromkeys(v.homeowner for v in verdicts(repairs, takeoffs) if v.effect is Effect.CAUTION))


def assumptions(takeoffs: tuple[Takeoff, ...]) -> tuple[Say, ...]:
    return tuple(dict.fromkeys(a for t in takeoffs for a in t.assumptions))


def needs_papers(takeoffs: tuple[Takeoff, ...], place: PlaceRow | None) -> tuple[Say, ...]:
    """Permits and letters that the work needs, as far as the takeoff asks for them."""
    out = []
    if any(t.value("permits") for t in takeoffs):
        covered = any(t.value(name) for t in takeoffs for name in ("pipe_ft", "reroute_ft", "burst_ft"))
        before = place is not None and place.inspection_before_cover and covered
        out.append(
            Say.of("City permit, with inspection before we cover the pipe.")
            if before
            else Say.of("City permit and inspections.")
        )
    if any(t.value("engineer_letters") for t in takeoffs):
        out.append(Say.of("Engineer's letter (P.E.)."))
    known = {fact for takeoff in takeoffs for fact in takeoff.facts}
    return (*out, *(text for fact, text in PAPERS_BY_FACT if fact in known))
