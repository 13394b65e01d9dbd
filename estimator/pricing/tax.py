"""What a scope is sold for and the place in; the sales tax charged to the homeowner, by kind, out."""

from collections.abc import Iterable, Mapping, Sequence, Set
from decimal import Decimal

from estimator.model.frozen import Frozen
from estimator.model.money import cents, plain, spread
from estimator.model.price import CostLine, LineItem
from estimator.model.say import Dollars, Say
from estimator.pricing.amounts import Owner
from estimator.pricing.lines import PASSED_ON
from estimator.tables.rows import PlaceRow, TaxClass
from estimator.tables.tables import Tables


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


class OwnWay(Frozen):
    """`amount`: sold under a row of its own; `passed_on`: how much of that is handed on at cost; their tax and its words.

    `owners` are those work items by repair.
    """

    amount: Decimal = Decimal(0)
    passed_on: Decimal = Decimal(0)
    tax: Decimal = Decimal(0)
    says: tuple[Say, ...] = ()
    warnings: tuple[Say, ...] = ()
    owners: frozenset[Owner] = frozenset()


def taxed_in_their_own_way(lines: Sequence[LineItem], place: PlaceRow | None, tables: Tables) -> OwnWay:
    """Each class's rate × what its lines are sold for, to the cent a class.

    An empty kind or rate is not answered: nothing is charged, and the office is told. Discounts, which are no work item,
    stay with the rest.
    """
    if place is None:
        return OwnWay()
    found: dict[str, tuple[TaxClass, list[LineItem]]] = {}
    words = {item.item: item.tax_class for item in tables.work_items}
    for line in lines:
        row = tables.tax_class(place.place, words.get(line.work_item, ""))
        if row is not None:
            found.setdefault(row.tax_class, (row, []))[1].append(line)
    sums = [(row, sum((line.amount for line in own), Decimal(0))) for row, own in found.values()]
    charged = [
        (row, amount, cents(amount * row.tax_percent / 100)) for row, amount in sums if _rate(row) and row.tax_percent
    ]
    mine = [line for _, own in found.values() for line in own]
    return OwnWay(
        amount=sum((line.amount for line in mine), Decimal(0)),
        passed_on=sum((line.amount for line in mine if line.price_class == PASSED_ON), Decimal(0)),
        tax=sum((tax for _, _, tax in charged), Decimal(0)),
        says=tuple(_said(row, amount) for row, amount, _ in charged),
        warnings=tuple(_not_answered(row) for row, _ in sums if row.tax_kind != "none" and not _rate(row)),
        owners=frozenset((line.repair, line.work_item) for line in mine),
    )


def class_rate(row: TaxClass) -> float:
    """The share charged on work of a class: nothing where it is not taxed or nobody has answered."""
    return float(row.tax_percent) / 100 if _rate(row) and row.tax_percent else 0.0


def _rate(row: TaxClass) -> bool:
    return row.tax_kind == "whole charge" and row.tax_percent is not None


def _said(row: TaxClass, amount: Decimal) -> Say:
    text = "{what} {rate}% on {amount}; ask a tax adviser if you are unsure"
    return Say.of(text, what=row.tax_class, rate=str(plain(row.tax_percent or Decimal(0))), amount=Dollars(amount))


def _not_answered(row: TaxClass) -> Say:
    text = "{place}: sales tax on {what} is not answered; it is not in this price"
    return Say.of(text, place=row.place, what=row.tax_class)
