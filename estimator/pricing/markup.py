"""Step 6: costs by price class in; what they are sold for, out. Margin is a share of the price, never of the cost."""

from collections.abc import Iterable, Mapping, Sequence
from decimal import Decimal

from estimator.model.frozen import Frozen
from estimator.model.money import cents
from estimator.model.problem import Place, Problem
from estimator.model.say import Say
from estimator.model.work import JOB, Takeoff
from estimator.pricing.lines import PASSED_ON
from estimator.pricing.problems import MARGIN_TOO_HIGH, NO_METHOD, UNKNOWN_ROW, at, stop
from estimator.tables.price_shares import firm_share
from estimator.tables.rows import PriceClass
from estimator.tables.tables import Tables


def sell(cost: Decimal, margin_percent: Decimal, contingency_percent: Decimal = Decimal(0)) -> Decimal:
    """cost × (1 + contingency) ÷ (1 − margin), rounded once, to the cent.

    >>> sell(Decimal("2310.75"), Decimal(40), Decimal(5))
    Decimal('4043.81')
    """
    return cents(cost * (1 + contingency_percent / 100) / (1 - margin_percent / 100))


def contingency_percent(takeoffs: Iterable[Takeoff], tables: Tables) -> Decimal:
    """The highest of the scope's methods, plus what each unknown of the scope asks for. Errors: CannotGoOn for a method without a row."""
    takeoffs = tuple(takeoffs)
    methods = {t.repair.method for t in takeoffs} - {JOB}
    rows = {row: tables.method(row) for row in methods if _known(row, tables)}
    stop([NO_METHOD(Place(table="methods", cell="method"), method=m) for m in sorted(methods - set(rows))])
    facts = frozenset[str]().union(*(t.facts for t in takeoffs))
    unknown = sum((c.percent for c in tables.contingencies if c.fact in facts), Decimal(0))
    return max((row.contingency_percent for row in rows.values()), default=Decimal(0)) + unknown


def _known(method: str, tables: Tables) -> bool:
    try:
        tables.method(method)
    except KeyError:
        return False
    return True


def class_rows(classes: Sequence[str], tables: Tables) -> dict[str, PriceClass]:
    """The pricing row of each class. Errors: CannotGoOn for a missing row or a margin of 100 % or more."""
    rows: dict[str, PriceClass] = {}
    problems: list[Problem] = []
    for name in classes:
        try:
            rows[name] = row = tables.price_class(name)
        except KeyError:
            problems.append(
                UNKNOWN_ROW(Place(table="pricing", cell="class"), item=Say.of("a cost"), ref=name, table="pricing")
            )
            continue
        if row.margin_percent >= 100:
            where = at("pricing", row, "margin_percent")
            problems.append(MARGIN_TOO_HIGH(where, price_class=name, margin=f"{row.margin_percent:f}"))
    stop(problems)
    return rows


def class_prices(
    costs: Mapping[str, Decimal], rows: Mapping[str, PriceClass], contingency: Decimal
) -> dict[str, Decimal]:
    """Each class sold at its own margin, contingency only where its row says so."""
    return {
        name: sell(cost, rows[name].margin_percent, contingency if rows[name].contingency else Decimal(0))
        for name, cost in costs.items()
    }


class ByClass(Frozen, kw_only=True):
    """What each price class costs and is sold for, dollars, and the contingency on it, percent."""

    costs: Mapping[str, Decimal]
    rows: Mapping[str, PriceClass]
    contingency: Decimal
    prices: Mapping[str, Decimal]

    @property
    def work(self) -> Decimal:
        """What all of it is sold for but what is passed on at cost."""
        return sum((p for name, p in self.prices.items() if name != PASSED_ON), Decimal(0))

    def share(self, cells: Mapping[str, Decimal], passed_on: bool) -> Decimal:
        """A part's share of each class's price, in proportion to its share of the cost; what is passed on apart."""
        mine = {n: amount for n, amount in cells.items() if (n == PASSED_ON) == passed_on and self.costs[n]}
        return sum((self.prices[n] * amount / self.costs[n] for n, amount in mine.items()), Decimal(0))

    def before(self, adjustment: Decimal, fixed: Decimal, tables: Tables) -> Decimal:
        """Before rounding: all of it with what minimum charges add (`adjustment`) and allowances (`fixed`) ÷ the share that stays."""
        return cents(self._brings(adjustment, fixed) / firm_share(tables))

    def carry(self, adjustment: Decimal, fixed: Decimal, tables: Tables) -> Decimal:
        """Own work × this carries what leaves with the whole price, such as a commission; 1 where nothing does."""
        own = self.work + adjustment
        leaves = self.before(adjustment, fixed, tables) - self._brings(adjustment, fixed)
        return 1 + leaves / own if own else Decimal(1)

    def _brings(self, adjustment: Decimal, fixed: Decimal) -> Decimal:
        return sum(self.prices.values(), Decimal(0)) + adjustment + fixed


def sold_by_class(
    costs: Mapping[str, Decimal], takeoffs: Sequence[Takeoff], tables: Tables, contingency: Decimal | None = None
) -> ByClass:
    """Own work × (1 + contingency) ÷ (1 − margin), subs ÷ (1 − margin), passed on as is. `contingency`, percent, stands in
    place of what the tables give. Errors: CannotGoOn for a class or a method without a row."""
    rows = class_rows(tuple(costs), tables)
    percent = contingency_percent(takeoffs, tables) if contingency is None else contingency
    return ByClass(costs=costs, rows=rows, contingency=percent, prices=class_prices(costs, rows, percent))
