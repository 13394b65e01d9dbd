"""Discounts, allowances and visits accepted before in; lines of their own, with the floor margin guarded, out."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from decimal import Decimal

from estimator.model.judgement import FLOOR_RULE
from estimator.model.money import cents, plain
from estimator.model.price import LineItem
from estimator.model.problem import Place
from estimator.model.say import Dollars, Say
from estimator.model.wanted import Allowance, Discount, Override, PastVisit
from estimator.model.work import JOB, Takeoff
from estimator.pricing.problems import BELOW_FLOOR, stop
from estimator.tables.rows import PriceClass
from estimator.tables.tables import Tables
from estimator.wording.say import say
from estimator.works.methods import prepares


def allowance_lines(allowances: Iterable[Allowance], row: PriceClass | None) -> tuple[LineItem, ...]:
    """A line each, at the amount written, adjusted later to what it turns out to cost. Its cost is the amount less its margin."""
    margin = row.margin_percent if row else Decimal(0)
    return tuple(_line("allowance", a.text, a.amount, cents(a.amount * (1 - margin / 100))) for a in allowances)


def discount_lines(discounts: Iterable[Discount], after: int, price: Decimal) -> tuple[LineItem, ...]:
    """A line each, after the other lines: never hidden in a unit price, and all together never more than the price."""
    lines = []
    for number, discount in enumerate(discounts, after + 1):
        off = min(discount.amount, price)
        price -= off
        line = _line("discount", discount.reason, -off, Decimal(0), str(number))
        lines.append(replace(line, text_es=discount.reason_es or discount.reason))
    return tuple(lines)


def _line(item: str, text: str, amount: Decimal, cost: Decimal, line_id: str = "") -> LineItem:
    return LineItem(
        id=line_id,
        work_item=item,
        work_class="put back" if item == "allowance" else "",
        repair="",
        text_en=text,
        text_es=text,
        size=1.0,
        size_unit="",
        billed="lump",
        quantity=Decimal(1),
        unit="",
        unit_price=cents(amount),
        amount=cents(amount),
        price_class=item,
        cost_share=cost,
    )


def floor_price(costs: Mapping[str, Decimal], rows: Mapping[str, PriceClass], kept: Decimal = Decimal(1)) -> Decimal:
    """The least the scope may be sold for: each class at its floor margin, ÷ the share of a price that is kept, to the cent."""
    return sum((cents(c / (1 - rows[n].floor_margin_percent / 100) / kept) for n, c in costs.items()), Decimal(0))


def guard_floor(
    price: Decimal, spent: Decimal, floor: Decimal, discounts: Sequence[Discount], overrides: Iterable[Override]
) -> None:
    """Errors: CannotGoOn when a discount takes the price below the floor and the owner did not overrule it with a reason."""
    allowed = any(o.rule == FLOOR_RULE and o.reason for o in overrides)
    if discounts and price < floor and not allowed:
        what = ", ".join(f"“{d.reason}”" for d in discounts)
        margin, least = (_percent(1 - spent / p) if p > 0 else Decimal(-100) for p in (price, floor))
        stop([BELOW_FLOOR(Place(file="job file, [[discount]]"), what=what, margin=margin, floor=least)])


def _percent(share: Decimal) -> Decimal:
    return (share * 100).quantize(Decimal("0.1"))


SETTING = "visit_credit_percent"


def visit_credits(visits: Sequence[PastVisit], takeoffs: Sequence[Takeoff], tables: Tables) -> tuple[Discount, ...]:
    """Return a discount for each visit, `visit_credit_percent` of what was charged; none for a scope that is a visit itself."""
    if not visits or all(t.repair.method == JOB or prepares(t.repair.method) for t in takeoffs):
        return ()
    percent = tables.amount(SETTING)
    return tuple(_credit(visit, percent) for visit in visits if cents(visit.charged * percent / 100))


def _credit(visit: PastVisit, percent: Decimal) -> Discount:
    said = Say.of(
        "Credit for the visit of {day}: {percent}% of {amount}",
        day=visit.day,
        percent=plain(percent),
        amount=Dollars(visit.charged),
    )
    return Discount(
        reason=say(said, "en_US"), reason_es=say(said, "es_US"), amount=cents(visit.charged * percent / 100)
    )
