"""The build-up, steps 1 to 8 in their order: takeoffs of a scope in, its Price out."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal

from estimator.model.money import up_to
from estimator.model.price import CostLine, CrewDays, LineItem, Price, TaskHours
from estimator.model.say import Say
from estimator.model.work import Takeoff
from estimator.pricing.amounts import follow_crews
from estimator.pricing.crew_days import crew_days, labor_lines
from estimator.pricing.crews import crews_of
from estimator.pricing.equipment import equipment_lines, machines_without_crew
from estimator.pricing.hours import task_hours
from estimator.pricing.house_rules import house_rules
from estimator.pricing.lines import PASSED_ON, lines_of
from estimator.pricing.markup import class_prices, class_rows, contingency_percent
from estimator.pricing.materials import material_lines
from estimator.pricing.minimum import lifts
from estimator.pricing.parts import Part, items_of, parts_of
from estimator.pricing.shares import Laid, by_class, laid_on
from estimator.pricing.spread_on import Owner
from estimator.pricing.steps import build_up
from estimator.pricing.subs import sub_lines
from estimator.pricing.tax import charged_tax, not_answered
from estimator.tables.rows import PlaceRow
from estimator.tables.tables import Tables


@dataclass(frozen=True, slots=True)
class Cost:
    """Steps 1 to 5: what the scope costs the firm, line by line, and who carries it."""

    tasks: tuple[TaskHours, ...]
    crews: tuple[CrewDays, ...]
    lines: tuple[CostLine, ...]
    laid: Laid
    warnings: tuple[Say, ...] = ()


def cost_of(parts: Sequence[Part], tasks: Sequence[TaskHours], tables: Tables, place: PlaceRow | None) -> Cost:
    """Steps 2 to 5 on hours already known."""
    rules = house_rules(tables)
    crews = crew_days(tasks, crews_of(parts, tables, rules), rules)
    there = {c.crew: c for c in crews}
    parts = follow_crews(parts, tasks, there)
    lines = (
        *labor_lines(tasks, crews),
        *equipment_lines(parts, tables, tasks, there),
        *material_lines(parts, tables, place, rules.small_parts_percent),
        *sub_lines(parts, tables),
    )
    return Cost(tuple(tasks), crews, lines, laid_on(lines), machines_without_crew(parts, tables, there))


def price_scope(takeoffs: Sequence[Takeoff], tables: Tables, place: PlaceRow | None) -> Price:
    """What a scope costs and is sold for.

    `takeoffs` are those of its repairs and the one of the job (method "job"). The scope is priced first, its lines second.
    Errors: CannotGoOn with every row that is missing or would cost nothing.
    """
    parts = parts_of(takeoffs, tables)
    tasks = task_hours(parts, tables, house_rules(tables).factor_cap)
    return sold_price(takeoffs, cost_of(parts, tasks, tables, place), tables, place)


def sold_price(
    takeoffs: Sequence[Takeoff], cost: Cost, tables: Tables, place: PlaceRow | None, fixed: Sequence[LineItem] = ()
) -> Price:
    """Steps 6 to 8 on a cost. `fixed` are lines whose amount stands already, such as allowances."""
    rules = house_rules(tables)
    costs = by_class(cost.lines)
    rows = class_rows(tuple(costs), tables)
    contingency = contingency_percent(takeoffs, tables)
    prices = class_prices(costs, rows, contingency)
    shares = {owner: _priced(cells, costs, prices) for owner, cells in cost.laid.items()}
    lifted, said = _lifted(shares, takeoffs, tables)
    before = (
        sum(prices.values(), Decimal(0)) + sum(lifted.values(), Decimal(0)) + sum((f.amount for f in fixed), Decimal(0))
    )
    work = up_to(before, rules.price_step)
    lines = lines_of(
        [s for t in takeoffs for s in items_of(t, tables)],
        {owner: sum(cells.values(), Decimal(0)) + lifted.get(owner, Decimal(0)) for owner, cells in shares.items()},
        cost.laid,
        fixed,
        work,
        rules.unit_price_step,
    )
    tax, tax_text = charged_tax(cost.lines, prices, costs, work, place)
    spent = sum((c.amount for c in cost.lines), Decimal(0)) + sum((f.cost_share for f in fixed), Decimal(0))
    return Price(
        tasks=cost.tasks,
        crews=cost.crews,
        costs=cost.lines,
        steps=build_up(cost.lines, costs, rows, contingency, prices, lifted, fixed, before, work, tax),
        lines=lines,
        direct=costs.get("own", Decimal(0)),
        contingency_percent=contingency,
        before_rounding=before,
        total=work + tax,
        tax=tax,
        tax_text=tax_text,
        margin=((work - spent) / work).quantize(Decimal("0.0001")),
        lifts=said,
        warnings=(*cost.warnings, *not_answered(place)),
    )


def _priced(
    cells: Mapping[str, Decimal], costs: Mapping[str, Decimal], prices: Mapping[str, Decimal]
) -> dict[str, Decimal]:
    """A work item's share of each class's price, in proportion to its share of the cost."""
    return {name: prices[name] * amount / costs[name] if costs[name] else Decimal(0) for name, amount in cells.items()}


def _lifted(
    shares: Mapping[Owner, Mapping[str, Decimal]], takeoffs: Iterable[Takeoff], tables: Tables
) -> tuple[dict[Owner, Decimal], tuple[Say, ...]]:
    work = {o: sum((a for c, a in cells.items() if c != PASSED_ON), Decimal(0)) for o, cells in shares.items()}
    return lifts(work, {t.repair.id: t.repair.method for t in takeoffs}, tables)
