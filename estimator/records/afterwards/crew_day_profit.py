"""A sold option and its hours as they turned out in; gross profit and crew-days of each of its methods out."""

from collections.abc import Mapping
from decimal import Decimal
from typing import Any

from estimator.model.frozen import Frozen
from estimator.model.money import cents, exact, spread
from estimator.model.price import BESIDE
from estimator.model.work import JOB
from estimator.pricing.actuals import outcomes_of
from estimator.records.afterwards.actuals import Worked
from estimator.records.afterwards.sold import Sold

ZERO = Decimal(0)


class Earned(Frozen, kw_only=True):
    """What one method left over its cost, dollars, and the crew-days it took."""

    method: str
    profit: Decimal
    crew_days: Decimal

    @property
    def per_crew_day(self) -> Decimal:
        """Dollars of gross profit per crew-day, to the cent; 0 where it took none."""
        return cents(self.profit / self.crew_days) if self.crew_days else ZERO

    def plus(self, other: "Earned") -> "Earned":
        return Earned(method=self.method, profit=self.profit + other.profit, crew_days=self.crew_days + other.crew_days)


def earned(done: Sold, held: Worked) -> tuple[Earned, ...]:
    """Return gross profit and crew-days by method.

    Gross profit of an option is its price without tax, less its costs, with labor as the hours turned out: labor cost × actual
    days ÷ estimated days where days were noted, else × actual hours ÷ estimated hours of the tasks noted (the others as
    estimated). Price and costs lie on methods by their lines and shares; what serves the whole job is spread by price.
    """
    price = done.option["price"]
    total = Decimal(price["total"]) - Decimal(price["tax"])
    methods = {t["repair"]["id"]: t["repair"]["method"] for t in done.option["takeoffs"]}
    sales = _sales(price, methods)
    if not sales:
        return ()
    hours = _hours(done, held)
    labor = _labor(done, held, hours)
    weights = [sales[m] for m in sales]
    revenue = dict(zip(sales, spread(total, weights), strict=True))
    other = _bought(price, methods, sales)
    own = {m: sum(h for repair, h in hours.items() if methods.get(repair) == m) for m in sales}
    by_hours = [exact(round(own[m], 6)) for m in sales]
    laid = by_hours if any(by_hours) else weights
    paid = dict(zip(sales, spread(labor, laid), strict=True))
    days = dict(zip(sales, _shares(_days(done, held, hours), laid), strict=True))
    return tuple(Earned(method=m, profit=revenue[m] - other[m] - paid[m], crew_days=days[m]) for m in sales)


def _sales(price: Mapping[str, Any], methods: Mapping[str, str]) -> dict[str, Decimal]:
    """What the lines of each method come to; those of the whole job are left out."""
    out: dict[str, Decimal] = {}
    for line in price["lines"]:
        method = methods.get(line["repair"], JOB)
        if method != JOB and Decimal(line["amount"]) > 0:
            out[method] = out.get(method, ZERO) + Decimal(line["amount"])
    return out


def _hours(done: Sold, held: Worked) -> dict[str, float]:
    """Hours of each repair: those of its tasks, times how the task's hours turned out."""
    ratio = {o.task: o.actual_hours / o.hours for o in outcomes_of(done.tasks, held.entries) if o.hours}
    out: dict[str, float] = {}
    for task in done.tasks:
        out[task.repair] = out.get(task.repair, 0.0) + task.hours * ratio.get(task.task, 1.0)
    return out


def _over(done: Sold, held: Worked, hours: Mapping[str, float]) -> Decimal:
    """Actual ÷ estimated: of crew-days where they were noted, else of hours."""
    if held.days is not None and done.days:
        return held.days / done.days
    planned = sum(task.hours for task in done.tasks)
    return exact(round(sum(hours.values()) / planned, 9)) if planned else Decimal(1)


def _labor(done: Sold, held: Worked, hours: Mapping[str, float]) -> Decimal:
    costs = (Decimal(c["amount"]) for c in done.option["price"]["costs"] if c["part"] == "labor")
    return cents(sum(costs, ZERO) * _over(done, held, hours))


def _days(done: Sold, held: Worked, hours: Mapping[str, float]) -> Decimal:
    return done.days * _over(done, held, hours)


def _bought(price: Mapping[str, Any], methods: Mapping[str, str], sales: Mapping[str, Decimal]) -> dict[str, Decimal]:
    """Materials, machines, subs and fees by method; what allowances and add-ons chosen cost stands in no cost line."""
    out = dict.fromkeys(sales, ZERO)
    for_all = sum((Decimal(line["cost_share"]) for line in price["lines"] if _beside(line)), ZERO)
    for cost in price["costs"]:
        if cost["part"] == "labor":
            continue
        if not cost["shares"]:
            for_all += Decimal(cost["amount"])
            continue
        parts = spread(Decimal(cost["amount"]), [weight for _, _, weight in cost["shares"]])
        for (repair, _, _), amount in zip(cost["shares"], parts, strict=True):
            method = methods.get(repair, JOB)
            if method in out:
                out[method] += amount
            else:
                for_all += amount
    rest = spread(for_all, list(sales.values()))
    return {method: out[method] + part for method, part in zip(sales, rest, strict=True)}


def _beside(line: Mapping[str, Any]) -> bool:
    return str(line["repair"]).startswith(BESIDE) or bool(line["price_class"] == "allowance")


def _shares(days: Decimal, laid: list[Decimal]) -> list[Decimal]:
    whole = sum(laid, ZERO)
    return [days * part / whole for part in laid]
