"""Priced lines and the place in; tax on work that the place taxes in its own way, and what is left for its usual way, out."""

from collections.abc import Sequence
from decimal import Decimal

from estimator.model.frozen import Frozen
from estimator.model.money import cents
from estimator.model.price import LineItem
from estimator.model.say import Dollars, Say
from estimator.pricing.lines import PASSED_ON
from estimator.pricing.shown import plain
from estimator.pricing.spread_on import Owner
from estimator.tables.rows import PlaceRow, TaxClass
from estimator.tables.tables import Tables


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
