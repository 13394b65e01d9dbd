"""Step 8: prices of work items and the total in; the homeowner's lines, which sum to it to the cent, out."""

from collections.abc import Mapping, Sequence
from decimal import Decimal
from typing import NoReturn

from estimator.model.frozen import replace
from estimator.model.money import CENT, cents, plain, to_step
from estimator.model.price import LineItem
from estimator.model.problem import CannotGoOn, Place
from estimator.model.work import JOB
from estimator.pricing.amounts import Owner
from estimator.pricing.parts import Sold
from estimator.pricing.problems import NO_LUMP_LINE
from estimator.tables.rows import WorkItem

PASSED_ON = "pass-through"
REST_QUANTITY = "jobs"
"""The work item of the job itself, mobilizing, takes what rounding leaves."""
LAST = (10**6, 0)
"""What is no work item, such as an allowance, comes last."""


def lines_of(
    sold: Sequence[Sold],
    prices: Mapping[Owner, Decimal],
    classes: Mapping[Owner, Mapping[str, Decimal]],
    fixed: Sequence[LineItem],
    total: Decimal,
    step: Decimal,
) -> tuple[LineItem, ...]:
    """Every work item a line, `fixed` lines (allowances) as they are, mobilizing the rest. Errors: CannotGoOn when no line can take it."""
    made = [
        _line(s, prices[s.takeoff.repair.id, s.item.item], classes[s.takeoff.repair.id, s.item.item], step)
        for s in sold
    ]
    places = _places(sold)
    made = sorted([*made, *fixed], key=lambda line: places.get((line.repair, line.work_item), LAST))
    rest = _rest_line(made, sold)
    if rest is not None:
        made = _balanced(made, rest, total, step)
    if sum((m.amount for m in made), Decimal(0)) != total:
        _fail(made, total)
    return tuple(_number(made))


def _line(sold: Sold, price: Decimal, classes: Mapping[str, Decimal], step: Decimal) -> LineItem:
    item = sold.item
    exactly = set(classes) == {PASSED_ON}
    measured = plain(cents(sold.size)) if item.billed == "measured" else Decimal(0)
    quantity = measured if measured > 0 and not exactly else Decimal(1)
    unit_price = cents(price) if exactly else _whole(price / quantity, step)
    return LineItem(
        id="",
        work_item=item.item,
        work_class=item.work_class,
        repair=sold.takeoff.repair.id,
        text_en=item.text_en.replace("{size}", sold.takeoff.size),
        text_es=item.text_es.replace("{size}", sold.takeoff.size),
        size=sold.size,
        size_unit=item.unit,
        billed="measured" if quantity == measured else "lump",
        quantity=quantity,
        unit=item.unit if quantity == measured else "",
        unit_price=unit_price,
        amount=cents(unit_price * quantity),
        price_class=_class(classes),
        cost_share=sum(classes.values(), Decimal(0)),
    )


def _whole(price: Decimal, step: Decimal) -> Decimal:
    """Whole steps; to the cent where a step is more than the price, so that nothing reads 0."""
    return to_step(price, step) or max(cents(price), CENT)


def _class(classes: Mapping[str, Decimal]) -> str:
    return next(iter(classes)) if len(classes) == 1 else "own"


def _places(sold: Sequence[Sold]) -> dict[Owner, tuple[int, int]]:
    """Where each line stands, as the items stand in the table; of an item sold twice the first place."""
    places: dict[Owner, tuple[int, int]] = {}
    for i, s in enumerate(sold):
        places.setdefault((s.takeoff.repair.id, s.item.item), (s.item.order, i))
    return places


def _rest_line(made: Sequence[LineItem], sold: Sequence[Sold]) -> int | None:
    """Where mobilizing stands; the dearest other lump line of the firm's own work where there is none."""
    items: dict[Owner, WorkItem] = {(s.takeoff.repair.id, s.item.item): s.item for s in sold}
    lumps = [i for i, m in enumerate(made) if m.billed == "lump" and m.price_class not in (PASSED_ON, "allowance")]
    for i in lumps:
        item = items[made[i].repair, made[i].work_item]
        if JOB in item.methods and item.quantity == REST_QUANTITY:
            return i
    return max(lumps, key=lambda i: made[i].amount, default=None)


def _balanced(made: list[LineItem], rest: int, total: Decimal, step: Decimal) -> list[LineItem]:
    lines = list(made)
    left = total - sum((m.amount for i, m in enumerate(lines) if i != rest), Decimal(0))
    while left <= 0:
        i = _dearest(lines, rest, step)
        if i is None:
            _fail(lines, total)
        cheaper = _reprice(lines[i], lines[i].unit_price - step)
        left += lines[i].amount - cheaper.amount
        lines[i] = cheaper
    lines[rest] = replace(lines[rest], unit_price=left, amount=left)
    return lines


def _dearest(lines: Sequence[LineItem], rest: int, step: Decimal) -> int | None:
    can = [
        i
        for i, m in enumerate(lines)
        if i != rest and m.unit_price > step and m.price_class not in (PASSED_ON, "allowance")
    ]
    return max(can, key=lambda i: lines[i].unit_price, default=None)


def _reprice(line: LineItem, unit_price: Decimal) -> LineItem:
    return replace(line, unit_price=unit_price, amount=cents(unit_price * line.quantity))


def _fail(lines: Sequence[LineItem], total: Decimal) -> NoReturn:
    made = sum((m.amount for m in lines), Decimal(0))
    raise CannotGoOn(NO_LUMP_LINE(Place(table="work_items", cell="billed"), lines=made, total=total))


def _number(lines: Sequence[LineItem]) -> list[LineItem]:
    return [replace(line, id=str(n)) for n, line in enumerate(lines, 1)]
