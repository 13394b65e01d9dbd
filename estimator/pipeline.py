"""The steps in their order: a Job and the firm's tables in, options with prices and the Quote out."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date
from decimal import Decimal

from estimator.diagnosis import diagnose
from estimator.model.add_on import AddOn
from estimator.model.frozen import Frozen
from estimator.model.job import Job
from estimator.model.judgement import FLOOR_RULE, Diagnosis
from estimator.model.offer import Margin, Quote
from estimator.model.price import Price
from estimator.model.problem import CannotGoOn, Kind, Level, Place, Problem
from estimator.model.say import Say
from estimator.model.wanted import Override
from estimator.model.work import Repair, Takeoff, all_repairs
from estimator.pricing.add_ons import add_ons, bound, wanted, ways_of
from estimator.pricing.build import price_scope
from estimator.pricing.chosen_add_ons import with_chosen
from estimator.pricing.lines_off import sellable
from estimator.pricing.margins import margins
from estimator.pricing.overrides import concerns, meant
from estimator.pricing.payments import installs, payments_of
from estimator.pricing.present_worth import with_cost_a_year
from estimator.pricing.rough import rough_cost, smooth_price
from estimator.pricing.seed import seed_of
from estimator.pricing.total import Total, total_of
from estimator.pricing.visit_credit import visit_credits
from estimator.quote import Chosen as InWords
from estimator.quote import build_quote, build_report
from estimator.quote.build import LETTERS
from estimator.quote.invented import with_invented
from estimator.scopes import owners_words
from estimator.scopes.candidates import Offers, repairs
from estimator.scopes.choose import Choices, choose
from estimator.scopes.chosen import Chosen
from estimator.scopes.discounted import discounted
from estimator.scopes.handed import Handed
from estimator.scopes.owners_words import lost_wishes, unknown_words
from estimator.scopes.rules import conditions
from estimator.tables import against_job
from estimator.tables.rows import PlaceRow
from estimator.tables.tables import Tables
from estimator.takeoff import follows_days_off, measure_with, on_rent, open_for, take_off_job
from estimator.takeoff.together import together

LOST_OVERRIDE = Kind(
    "job/override-without-option",
    Level.WARNING,
    "your own number for {what} ({reason}) fits no option any more.",
    "{near} Look at it: the finding under it may have changed. Name another option, or take the override out.",
    "The owner's own numbers are never dropped without a word.",
)
LOST_ADD_ON = Kind(
    "job/add-on-nowhere",
    Level.WARNING,
    "the add-on {code} {asked}, and no option can have it.",
    "It is in every price anyway, or fits none of these repairs. To choose from: {codes}.",
    "What a homeowner asked for is never dropped without a word.",
)
PROBLEMS = (*against_job.PROBLEMS, *owners_words.PROBLEMS, LOST_OVERRIDE, LOST_ADD_ON)


class Result(Frozen, kw_only=True):
    """Everything on the way, for the papers, the record and `explain`."""

    job: Job
    tables: Tables
    diagnosis: Diagnosis
    offers: Offers
    choices: Choices
    quote: Quote | None
    problems: tuple[Problem, ...] = ()


def run(job: Job, tables: Tables, day: date, revision: int = 1) -> Result:
    """The whole way once. `day` is the day the quote is dated; prices are those of `tables.day`.

    Errors: CannotGoOn with all that stops it: a setting nobody knows, a missing row, a quote that may not be issued.
    """
    return run_with(job, tables, day, revision, with_margins=True)


def run_with(job: Job, tables: Tables, day: date, revision: int, *, with_margins: bool) -> Result:
    """The same, with or without the margins of extra work, which only papers print. Errors: as `run`."""
    said = _or_stop(unknown_words(job, tables))
    tables = with_job_settings(job, tables)
    place = place_of(job, tables)
    diagnosis = diagnose(job, tables)
    offers = _with_every_line(repairs(job, diagnosis, tables), job, tables)
    choices = choose(job, diagnosis, offers, handed(job, tables, place), tables)
    job = bound(job, [option.scope for option in choices.options])
    options, problems = _with_overrides(choices.options, job, tables, place, with_margins=with_margins)
    if options or diagnosis.needs:
        built = build_quote(job, diagnosis, options, tables, day, revision, choices.verdicts, choices.unanswered)
        quote = with_invented(with_cost_a_year(built, tables), tables)
    else:  # a clean house: nothing to repair, nothing to sell
        quote = build_report(job, diagnosis, tables, day, revision)
    return Result(
        job=job, tables=tables, diagnosis=diagnosis, offers=offers, choices=choices, quote=quote,
        problems=(*said, *lost_wishes(job, choices), *problems),
    )  # fmt: skip


def report(job: Job, tables: Tables, day: date, revision: int = 1) -> Quote:
    """What was seen and why nothing is offered, where the rules leave no way of repair.

    Errors: CannotGoOn as `run`, but never for there being nothing to offer.
    """
    _or_stop(unknown_words(job, tables))
    tables = with_job_settings(job, tables)
    diagnosis = diagnose(job, tables)
    offers = _with_every_line(repairs(job, diagnosis, tables), job, tables)
    verdicts = choose(job, diagnosis, offers, handed(job, tables, place_of(job, tables)), tables).verdicts
    return build_report(job, diagnosis, tables, day, revision, verdicts)


def _with_every_line(offers: Offers, job: Job, tables: Tables) -> Offers:
    """The offers less those that need a work item out of use."""
    kept, against = sellable(offers.repairs, lambda repair: measure_with(tables)(repair, job), tables)
    spare, too = sellable(offers.instead, lambda repair: measure_with(tables)(repair, job), tables)
    return Offers(kept, (*offers.verdicts, *against, *too), spare)


def with_ranges(quote: Quote, tables: Tables, seed: int) -> Quote:
    """The quote with the range of each option, for the office alone. The same seed draws the same."""
    from estimator.pricing.likely_range import range_of

    own = with_job_settings(quote.job, tables)
    drawn = tuple(replace(o, likely_range=range_of(o.price, o.takeoffs, own, seed)) for o in quote.options)
    return replace(quote, options=drawn)


def handed(job: Job, tables: Tables, place: PlaceRow | None) -> Handed:
    """The functions of takeoff and pricing that the search is handed, each bound to this job and these tables.

    Prices are those before any discount: a discount must not be refused for a repair that nobody is shown.
    """
    return Handed(
        take_off=lambda repair: measure_with(tables)(repair, job),
        in_figures=lambda takeoffs: in_figures(takeoffs, job, tables, place),
        rough=lambda takeoff: rough_cost(takeoff, tables, place),
        price=lambda takeoffs: price_scope(takeoffs, tables, place, allowances=job.allowances),
        conditions=lambda repair, takeoff: conditions(repair, takeoff, job, tables),
        smooth=smooth,
        together=lambda takeoffs: together(takeoffs, job, tables),
    )


def in_figures(own: Sequence[Takeoff], job: Job, tables: Tables, place: PlaceRow | None) -> Total:
    """The takeoffs of a scope's repairs and what it has once, reckoned to the cent. Errors: those of takeoff and pricing.

    What is rented as long as the drains are off, such as a portable toilet, or the ground is open, as boxes and pumps are,
    is known only once the hours are.
    """
    once = take_off_job(job, own, tables)
    found = total_of((*own, once), tables, place, job.allowances)
    days = found.days_open if any(map(on_rent, own)) else {}
    for_so_long = [
        open_for(one, *days[one.repair.id]) if one.repair.id in days and on_rent(one) else one for one in own
    ]
    if follows_days_off(once):
        once = take_off_job(job, own, tables, found.days_without_drains)
    whole = (*for_so_long, once)
    return found if whole == found.takeoffs else total_of(whole, tables, place, job.allowances)


def smooth(repairs: Sequence[Repair], job: Job, tables: Tables) -> float:
    """These repairs measured and priced as one scope, nothing rounded, dollars. Errors: those of takeoff and pricing."""
    return smooth_as_measured([measure_with(tables)(one, job) for one in all_repairs(repairs)], job, tables)


def smooth_as_measured(takeoffs: Sequence[Takeoff], job: Job, tables: Tables) -> float:
    """The same for repairs that are measured already. Errors: those of pricing."""
    own = together(takeoffs, job, tables)
    return smooth_price([*own, take_off_job(job, own, tables)], tables, place_of(job, tables))


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


def with_job_settings(job: Job, tables: Tables) -> Tables:
    """The tables with the settings this job changes. Errors: CannotGoOn naming each that the tables would refuse."""
    return against_job.with_settings_of(job, tables)


def _or_stop(problems: tuple[Problem, ...]) -> tuple[Problem, ...]:
    """The warnings among them. Errors: CannotGoOn with all of them where one is an error."""
    if any(p.level is Level.ERROR for p in problems):
        raise CannotGoOn(*problems)
    return problems


def place_of(job: Job, tables: Tables) -> PlaceRow | None:
    """The row of the job's jurisdiction; None when the tables have none (then nothing about it is answered)."""
    return tables.known_place(job.house.jurisdiction)


def _with_overrides(
    chosen: Sequence[Chosen], job: Job, tables: Tables, place: PlaceRow | None, *, with_margins: bool
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
        more = margins(option.takeoffs, job, tables, place, measure_with(tables)) if with_margins else {}
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
