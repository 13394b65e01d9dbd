"""A quote in, the option we recommend and what each option does to each defect out."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from typing import Literal

from estimator.model.add_on import AddOn
from estimator.model.basis import Basis
from estimator.model.found import Found
from estimator.model.line import CLEANABLE
from estimator.model.offer import Margin, Option, Payment, Quote
from estimator.model.price import Price
from estimator.model.stretch import missing
from estimator.model.work import Scope, Takeoff, all_repairs
from estimator.model.works import Burst, Laid, Left, Lined
from estimator.works.methods import prepares, record_of

SPARE_FT = 0.05
"""Rounding of stations: a defect is covered when no more than this of it is left."""


Treated = Literal["repaired", "cleaned", "cleaned in passing", "looked into", "left"]
"""`cleaned`: what cleaning puts right; `in passing`: the tool takes it out on its way, and the opening it came in by stays."""


def treated(found: Found, option: Option) -> Treated:
    """Return what the option does to the defect: the most lasting of what answers its needs, or of what renews its pipe."""
    left = {need.id for need in option.scope.leaves}
    answers = {
        n: [r.method for r in all_repairs(option.scope.repairs) if n in r.answers and n not in left]
        for n in found.needs
    }
    if found.needs and all(answers.values()):
        weakest = [_lasting(methods) for methods in answers.values()]
        return next(word for word in ("looked into", "cleaned", "repaired") if word in weakest)
    if not found.needs and _renewed(found, option):
        return "repaired"
    return "cleaned in passing" if _passed(found, option) else "left"


def _lasting(methods: list[str]) -> Treated:
    if any(not prepares(m) for m in methods):
        return "repaired"
    return "cleaned" if any(record_of(m).kind == "clean" for m in methods) else "looked into"


def _renewed(found: Found, option: Option) -> bool:
    """New pipe, a lining or a cap covers every place of it."""
    works = option.works
    pipes: tuple[Laid | Lined | Burst | Left, ...] = (
        *works.laid,
        *works.lined,
        *works.burst,
        *(left for left in works.left if left.how != "in use"),
    )
    new = [pipe.stretch for pipe in pipes if pipe.line == found.line]
    return bool(found.places) and all(
        any(part.covers(place) for part in new)
        or sum(s.length_ft for s in missing(place, new)) < SPARE_FT < place.length_ft
        for place in found.places
    )


def _passed(found: Found, option: Option) -> bool:
    """A cleaning tool goes through every place of what it can take out."""
    cleaned = [s for repair in option.takeoffs for s in repair.works.cleans if repair.repair.line == found.line]
    kinds = {finding.kind for finding in found.findings}
    return bool(found.places) and kinds <= CLEANABLE and all(any(s.covers(p) for s in cleaned) for p in found.places)


def cured(found: Found, option: Option) -> bool:
    """Return whether the option repairs the defect, or cleans what cleaning puts right."""
    return treated(found, option) in ("repaired", "cleaned")


def only_prepares(option: Option) -> bool:
    """It cleans, tests or looks, and repairs nothing: a visit that comes before the repair."""
    return all(prepares(repair.method) for repair in all_repairs(option.scope.repairs))


def is_visit(option: Option) -> bool:
    """It only settles what a firm price of another option needs."""
    return all(record_of(repair.method).measure == "visit" for repair in all_repairs(option.scope.repairs))


def compared(quote: Quote) -> tuple[Option, ...]:
    """The options people compare: the repairs. A visit that only comes before one of them is compared where it stands alone."""
    before = {o.firm_after for o in quote.options}
    repairs = tuple(o for o in quote.options if o.letter not in before)
    return repairs if any(o.fixed for o in repairs) and len(repairs) > 1 else quote.options


def cures_all_now(quote: Quote, option: Option) -> bool:
    """Whether nothing that must be repaired now is left."""
    return all(cured(found, option) for found in quote.found if found.act == "now")


def recommended(quote: Quote) -> Option | None:
    """Return the option the firm names; else the firm-priced one that repairs all that must be, at the least price.

    Where the owner asked to keep the floors, the one that cuts least of them comes first. Where no price is firm, a visit
    that makes one firm; None where there is nothing to sign.
    """
    if named := _named(quote):
        return named
    firm = [option for option in quote.options if option.fixed]
    sound = [o for o in firm if cures_all_now(quote, o) and not only_prepares(o)]
    keep = quote.job.wishes.keep_floors
    if sound:
        return min(sound, key=lambda o: (o.floor_sf if keep else 0.0, o.all_in))
    return min((o for o in firm if only_prepares(o)), key=lambda o: o.all_in, default=None)


def _named(quote: Quote) -> Option | None:
    wanted = quote.job.wishes.recommend.strip().casefold()
    return next((o for o in quote.options if wanted and wanted in (o.letter.casefold(), o.name.casefold())), None)


@dataclass(frozen=True, slots=True, kw_only=True)
class Chosen:
    """One option before it has words.

    `days_*` are working days, halves allowed; `floor_sf`, `yard_sf` what is opened; `old_pipe_left_ft` the length of the
    lines with needs that is neither replaced nor lined, and what was not filmed. `payments` are the milestones,
    summing to the price's total. `margins`, by the code of an extra, are what one more of it adds to this price. `name` is the estimator's own name for the option, if he gave
    one; `basis` is what the price rests on; `waits_for_visit` says that a visit would settle what keeps it from being firm.
    """

    scope: Scope
    takeoffs: tuple[Takeoff, ...]
    price: Price
    days_on_site: Decimal
    days_without_drains: Decimal
    floor_sf: float = 0.0
    yard_sf: float = 0.0
    old_pipe_left_ft: float = 0.0
    payments: tuple[Payment, ...] = ()
    name: str = ""
    basis: Basis = Basis()
    waits_for_visit: bool = False
    add_ons: tuple[AddOn, ...] = ()
    margins: Mapping[str, Margin] = field(default_factory=dict, hash=False)
