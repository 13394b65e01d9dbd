"""The build-up, steps 1 to 8 in their order: takeoffs of a scope in, its Price out."""

from collections.abc import Sequence
from dataclasses import replace
from decimal import Decimal

from estimator.model.frozen import Frozen
from estimator.model.money import up_to
from estimator.model.price import CostLine, CrewDays, LineItem, Overruled, Price, TaskHours
from estimator.model.problem import CannotGoOn, Place
from estimator.model.say import Say
from estimator.model.wanted import Allowance, Discount, Override
from estimator.model.work import Takeoff
from estimator.pricing.crew_days import crew_days
from estimator.pricing.crews import crews_of
from estimator.pricing.discounts import allowance_lines, discount_lines, floor_price, guard_floor
from estimator.pricing.equipment import machines_without_crew
from estimator.pricing.figures import figures_of, hours_of
from estimator.pricing.hours import missing_hours
from estimator.pricing.house_rules import house_rules
from estimator.pricing.lines import PASSED_ON, lines_of
from estimator.pricing.markup import class_rows, sold_by_class
from estimator.pricing.overrides import wanted_price, with_hours, with_quantities
from estimator.pricing.parts import items_of
from estimator.pricing.payments import deposit_not_answered
from estimator.pricing.prepared import prepared
from estimator.pricing.problems import PRICE_TOO_LOW
from estimator.pricing.sale import Sale, sale_of
from estimator.pricing.shares import Allocated, allocated, cost_lines, loads_of
from estimator.pricing.steps import build_up
from estimator.pricing.tax import bought_for, charged_tax, not_answered, taxed_in_their_own_way
from estimator.schedule import schedule_of
from estimator.tables.price_shares import firm_share, shares_of_price
from estimator.tables.rows import PlaceRow
from estimator.tables.tables import Tables


class Cost(Frozen, kw_only=True):
    """Steps 1 to 5: what the scope costs the firm, line by line, and who carries it."""

    tasks: tuple[TaskHours, ...]
    crews: tuple[CrewDays, ...]
    lines: tuple[CostLine, ...]
    allocated: Allocated
    warnings: tuple[Say, ...] = ()


def price_scope(
    takeoffs: Sequence[Takeoff],
    tables: Tables,
    place: PlaceRow | None,
    *,
    allowances: Sequence[Allowance] = (),
    discounts: Sequence[Discount] = (),
    overrides: Sequence[Override] = (),
    contingency: Decimal | None = None,
) -> Price:
    """What a scope costs and is sold for: the scope first, its lines second.

    `takeoffs` are those of its repairs and the one of the job (method "job"). `overrides` are the owner's for this option:
    quantities change before hours, hours before days, the price last. A discount comes off after rounding. `contingency`,
    percent, stands in place of what the tables give.
    Errors: CannotGoOn with every row that is missing or would cost nothing; a discount below the floor margin.
    """
    takeoffs, by_quantity = with_quantities(takeoffs, overrides, tables)
    scope = prepared(takeoffs, tables, place)
    tasks, by_hours = with_hours(hours_of(scope), overrides, takeoffs)
    rules = house_rules(tables)
    teams = crews_of(scope, tables, rules)
    figures = figures_of(scope, tasks, teams, crew_days(tasks, teams, rules), rules.overhead, tables, place)
    cost = Cost(
        tasks=figures.tasks,
        crews=figures.crews,
        lines=cost_lines(figures, tables, place, rules.overhead),
        allocated=allocated(loads_of(figures)),
        warnings=machines_without_crew(figures.machines),
    )
    fixed = allowance_lines(allowances, class_rows(("allowance",), tables)["allowance"] if allowances else None)
    sale = sale_of(sold_by_class(figures.costs, takeoffs, tables, contingency), takeoffs, cost.allocated, fixed, tables)
    price = _priced(takeoffs, cost, sale, fixed, tables, place, discounts, overrides)
    schedule = schedule_of(takeoffs, tasks, figures.set_ups, tables, place)
    return replace(price, schedule=schedule, overruled=(*by_quantity, *by_hours, *price.overruled))


def _priced(
    takeoffs: Sequence[Takeoff],
    cost: Cost,
    sale: Sale,
    fixed: Sequence[LineItem],
    tables: Tables,
    place: PlaceRow | None,
    discounts: Sequence[Discount],
    overrides: Sequence[Override],
) -> Price:
    rules = house_rules(tables)
    wanted, why = wanted_price(overrides)
    work = up_to(sale.before, rules.price_step)
    said = () if wanted is None else (Overruled(what="price", ours=work, mine=wanted, unit="", reason=why),)
    work = work if wanted is None else wanted
    if wanted is not None:
        _enough(wanted, why, sale)
    sold = [s for t in takeoffs for s in items_of(t, tables)]
    lines = lines_of(sold, sale.shown(work, wanted is not None), cost.allocated, fixed, work, rules.unit_price_step)
    off = discount_lines(discounts, len(lines), work)
    net = work + sum((line.amount for line in off), Decimal(0))
    leaves = shares_of_price(net, tables)
    spent = sale.spent + sum((share.amount for share in leaves), Decimal(0))
    floor = floor_price(sale.costs, sale.rows, firm_share(tables))
    settled = sum((f.cost_share for f in fixed), Decimal(0))  # at what an allowance costs: no work is paid from it
    guard_floor(net - sale.fixed, spent - settled, floor, discounts, overrides)
    own_way = taxed_in_their_own_way(lines, place, tables)
    usual = {name: price * (1 if name == PASSED_ON else sale.carry) for name, price in sale.prices.items()}
    usual[PASSED_ON] = sale.prices.get(PASSED_ON, Decimal(0)) - own_way.passed_on
    bought = bought_for(cost.lines, own_way.owners)
    tax, tax_says = charged_tax(bought, usual, sale.costs, net - own_way.amount, place)
    tax, tax_says = tax + own_way.tax, (*tax_says, *own_way.says)
    return Price(
        tasks=cost.tasks,
        crews=cost.crews,
        costs=cost.lines,
        steps=build_up(cost.lines, sale, work, net, tax, firm_share(tables)),
        lines=(*lines, *off),
        direct=sale.costs.get("own", Decimal(0)),
        contingency_percent=sale.contingency,
        before_rounding=sale.before,
        total=net + tax,
        tax=tax,
        tax_says=tax_says,
        margin=margin(net, spent),
        leaves=leaves,
        minimum_charges=sale.minimum_charges,
        warnings=(
            *missing_hours(takeoffs, cost.tasks, tables),
            *cost.warnings,
            *not_answered(place),
            *own_way.warnings,
            *deposit_not_answered(place),
        ),
        overruled=said,
    )


def _enough(wanted: Decimal, why: str, sale: Sale) -> None:
    """Errors: CannotGoOn where a price set by hand does not reach what is passed on and a dollar for each line of work."""
    passed = sum(sale.passed.values(), Decimal(0)) + sale.fixed
    if wanted < passed + len(sale.work):
        place = Place(file="job file, [[override]]")
        raise CannotGoOn(PRICE_TOO_LOW(place, price=f"{wanted:,.2f}", reason=why, passed=f"{passed:,.2f}"))


def margin(price: Decimal, spent: Decimal) -> Decimal:
    """The share of the price left over cost, to a hundredth of a percent; 0 for a price of nothing.

    >>> margin(Decimal(250000), Decimal(200000))
    Decimal('0.2000')
    """
    return ((price - spent) / price).quantize(Decimal("0.0001")) if price > 0 else Decimal(0)
