"""The chosen scopes in; each priced with the owner's own numbers and its add-ons, ready for the quote, out."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from decimal import Decimal

from estimator.model.add_on import AddOn
from estimator.model.job import Job
from estimator.model.judgement import FLOOR_RULE
from estimator.model.likely_range import seed_of
from estimator.model.offer import Margin
from estimator.model.price import Price
from estimator.model.problem import Place, Problem, warning
from estimator.model.say import Say
from estimator.model.wanted import Override
from estimator.model.work import Scope, Takeoff, all_repairs
from estimator.pricing.add_on_price import with_chosen
from estimator.pricing.add_ons import add_ons, wanted, ways_of
from estimator.pricing.build import price_scope
from estimator.pricing.discounts import visit_credits
from estimator.pricing.margins import margins
from estimator.pricing.overrides import concerns, meant
from estimator.pricing.payments import installs, payments_of
from estimator.quote import Chosen as InWords
from estimator.quote.build import LETTERS
from estimator.scopes.chosen import Chosen
from estimator.tables.rows import PlaceRow
from estimator.tables.tables import Tables
from estimator.takeoff import measure_with
from estimator.works.methods import record_of

LOST_OVERRIDE = warning(
    "job/override-without-option",
    "your own number for {what} ({reason}) fits no option any more.",
    "{near} Look at it: the finding under it may have changed. Name another option, or take the override out.",
    "The owner's own numbers are never dropped without a word.",
)
LOST_ADD_ON = warning(
    "job/add-on-nowhere",
    "the add-on {code} {asked}, and no option can have it.",
    "It is in every price anyway, or fits none of these repairs. To choose from: {codes}.",
    "What a homeowner asked for is never dropped without a word.",
)
PROBLEMS = (LOST_OVERRIDE, LOST_ADD_ON)


def priced(
    takeoffs: Sequence[Takeoff], job: Job, tables: Tables, place: PlaceRow | None, mine: Sequence[Override] = ()
) -> Price:
    """One scope priced with the job's allowances and discounts, visits credited, and the owner's own numbers for it.

    Where the firm says so its contingency is raised to what its confidence needs in the simulation of this scope.
    """

    off = (*job.discounts, *visit_credits(job.visits, takeoffs, tables))

    def at(contingency: Decimal | None = None) -> Price:
        return price_scope(
            takeoffs, tables, place, allowances=job.allowances, discounts=off, overrides=mine, contingency=contingency
        )

    price = at()
    if not tables.yes("contingency_reaches_confidence"):
        return price
    from estimator.pricing.likely_range import range_of, reaching

    needed = reaching(range_of(price, takeoffs, tables, seed_of(job.number)))
    return price if needed is None else at(needed)


def priced_options(
    chosen: Sequence[Chosen], job: Job, tables: Tables, place: PlaceRow | None, *, for_papers: bool
) -> tuple[tuple[InWords, ...], tuple[Problem, ...]]:
    """Each option with the owner's own numbers for it and its payments; a warning for each number that found no option."""
    numbers = [o for o in job.overrides if o.quantity or o.hours is not None or o.price is not None]
    below_floor = [o for o in job.overrides if o.rule == FLOOR_RULE]
    used: set[Override] = set()
    options = []
    ways = ways_of([option.scope for option in chosen])
    for letter, option, way in zip(LETTERS, chosen, ways, strict=False):
        called = {"", letter.lower(), option.name.lower()}
        mine = [o for o in numbers if o.option.lower() in called and concerns(o, option.takeoffs, tables)]
        mine += [o for o in below_floor if o.option.lower() in called]
        used.update(mine)
        price = priced(option.takeoffs, discounted(job, option.scope, len(chosen)), tables, place, mine)
        offered = add_ons(option.takeoffs, price, tables, place, wanted(job, {*called, way.lower()}))
        more = margins(option.takeoffs, job, tables, place, measure_with(tables)) if for_papers else {}
        options.append(_in_words(option, with_chosen(price, offered), offered, more, tables, place))
    notes, total = Place("the job file"), Say.of("the price")
    lost = [
        LOST_OVERRIDE(notes, what=o.item or o.option or total, reason=o.reason, near=meant(o, tables))
        for o in dict.fromkeys((*numbers, *below_floor))
        if o not in used
    ]
    return tuple(options), (*lost, *_lost_add_ons(job, options))


def _lost_add_ons(job: Job, options: Sequence[InWords]) -> list[Problem]:
    """A warning for each add-on that was chosen, or stands in the job file, and that no option has."""
    ways = ways_of([option.scope for option in options])
    named = zip(LETTERS, ways, options, strict=False)
    there = {code for letter, way, o in named for code in _all_names(o, letter, way, o.name)}
    offered = sorted({a.code for o in options for a in o.add_ons})
    asked = dict.fromkeys(job.chosen_add_ons, Say.of("was chosen"))
    asked |= {word.code: Say.of("stands in the job file") for word in job.add_ons if word.quantity != 0}
    return [
        LOST_ADD_ON(Place("the job file"), code=code, asked=how, codes=", ".join(offered) or Say.of("none"))
        for code, how in asked.items()
        if code.lower() not in there
    ]


def _all_names(option: InWords, *called: str) -> set[str]:
    """Every name under which an add-on of this option can be chosen, in small letters."""
    codes = [a.code.lower() for a in option.add_ons]
    return {*codes, *(f"{name}:{code}".lower() for name in called for code in codes)}


def _in_words(
    option: Chosen,
    price: Price,
    offered: tuple[AddOn, ...],
    more: Mapping[str, Margin],
    tables: Tables,
    place: PlaceRow | None,
) -> InWords:
    return InWords(
        scope=option.scope,
        takeoffs=option.takeoffs,
        price=price,
        days_on_site=option.days_on_site,
        days_without_drains=option.days_without_drains,
        floor_sf=option.floor_sf,
        yard_sf=option.yard_sf,
        old_pipe_left_ft=option.old_pipe_left_ft,
        payments=payments_of(price, tables, place, installs=installs(option.takeoffs)),
        name=option.name,
        basis=option.basis,
        waits_for_visit=option.waits_for_visit,
        add_ons=offered,
        margins=more,
    )


def discounted(job: Job, scope: Scope, offered: int) -> Job:
    """Return the job; a discount is for the repair, so a visit that is one of several `offered` keeps its price."""
    visits = (record_of(repair.method).measure == "visit" for repair in all_repairs(scope.repairs))
    return replace(job, discounts=()) if offered > 1 and all(visits) else job
