"""What a scope is sold for and the place in; the sales tax charged to the homeowner, by kind, out."""

from collections.abc import Iterable, Mapping, Set
from decimal import Decimal

from estimator.model.money import cents, spread
from estimator.model.price import CostLine
from estimator.model.say import Dollars, Say
from estimator.pricing.lines import PASSED_ON
from estimator.pricing.shown import plain
from estimator.pricing.spread_on import Owner
from estimator.tables.rows import PlaceRow


def charged_tax(
    bought: Decimal,
    prices: Mapping[str, Decimal],
    costs: Mapping[str, Decimal],
    work: Decimal,
    place: PlaceRow | None,
) -> tuple[Decimal, tuple[Say, ...]]:
    """contractor pays, none: nothing here (in the first the firm paid when buying, as a cost line).

    separated: rate × what the materials are sold for, their share of the firm's own work. whole charge: rate × the price
    less what is passed on at cost. The sentences say it on paper. `bought` is what materials and small parts cost, those of
    work taxed in its own way left out; `work` is the price without tax.
    """
    if place is None or place.tax_percent is None or not charges_tax(place):
        return Decimal(0), ()
    if place.tax_kind == "separated":
        base = materials_price(bought, prices, costs)
        text = "sales tax {rate}% on materials sold for {amount}; ask a tax adviser if you are unsure"
    else:
        base = work - prices.get(PASSED_ON, Decimal(0))
        text = "sales tax {rate}% on {amount}; ask a tax adviser if you are unsure"
    said = Say.of(text, rate=str(plain(place.tax_percent)), amount=Dollars(base))
    return cents(base * place.tax_percent / 100), (said,)


def charges_tax(place: PlaceRow) -> bool:
    """The homeowner is charged a tax on top of the price."""
    return place.tax_kind in ("separated", "whole charge")


def materials_price(bought: Decimal, prices: Mapping[str, Decimal], costs: Mapping[str, Decimal]) -> Decimal:
    """What materials and small parts are sold for, to the cent: their share of the price of own work."""
    return cents(prices["own"] * bought / costs["own"]) if bought else Decimal(0)


def bought_for(lines: Iterable[CostLine], apart: Set[Owner] = frozenset()) -> Decimal:
    """What materials and small parts cost, less those of the work items `apart`."""
    return sum((_without(c, apart) for c in lines if c.part in ("material", "small parts")), Decimal(0))


def _without(line: CostLine, apart: Set[Owner]) -> Decimal:
    """What of a cost line is laid on other work items than these."""
    if not apart:
        return line.amount
    parts = spread(line.amount, [weight for _, _, weight in line.shares])
    mine = zip(line.shares, parts, strict=True)
    return sum((amount for (repair, item, _), amount in mine if (repair, item) not in apart), Decimal(0))


def not_answered(place: PlaceRow | None) -> tuple[Say, ...]:
    """Empty is not answered, and not answered is never 0: the office is told."""
    if place is None:
        return (Say.of("the place is not known: sales tax is not in this price; ask your accountant"),)
    if not place.tax_kind:
        return (Say.of("{place}: the kind of sales tax is not answered; it is not in this price", place=place.place),)
    if place.tax_kind != "none" and place.tax_percent is None:
        return (Say.of("{place}: the rate of sales tax is not answered; it is not in this price", place=place.place),)
    return ()
