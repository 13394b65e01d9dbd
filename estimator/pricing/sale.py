"""Steps 6 and 7: cost lines in; what each class and each work item is sold for before rounding, out."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal

from estimator.model.money import cents
from estimator.model.price import CostLine, LineItem
from estimator.model.say import Say
from estimator.model.work import Takeoff
from estimator.pricing.lines import PASSED_ON
from estimator.pricing.markup import class_prices, class_rows, contingency_percent
from estimator.pricing.minimum import lifts
from estimator.pricing.shares import Laid, by_class
from estimator.pricing.spread_on import Owner
from estimator.tables.price_shares import kept
from estimator.tables.rows import PriceClass
from estimator.tables.tables import Tables

ZERO = Decimal(0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Sale:
    """Costs and prices by class, prices by work item, and what they sum to before rounding."""

    costs: Mapping[str, Decimal]
    prices: Mapping[str, Decimal]
    rows: Mapping[str, PriceClass]
    contingency: Decimal
    work: Mapping[Owner, Decimal]  # without what is passed on, lifts included
    passed: Mapping[Owner, Decimal]
    lift: Decimal
    lifts: tuple[Say, ...]
    fixed: Decimal  # allowances
    carry: Decimal  # own work × this carries what leaves with the whole price; 1 where nothing does
    before: Decimal
    spent: Decimal

    def shown(self, total: Decimal, by_hand: bool) -> dict[Owner, Decimal]:
        """Prices by work item: as they are, or the firm's own scaled to a total that the owner set by hand.

        What rounding alone adds is left to the line that takes the rest.
        """
        own = sum(self.work.values(), ZERO)
        scale = (own + total - self.before) / own if by_hand and own else Decimal(1)
        return {o: self.work.get(o, ZERO) * scale + self.passed.get(o, ZERO) for o in {**self.work, **self.passed}}


def sale_of(
    takeoffs: Sequence[Takeoff],
    lines: Sequence[CostLine],
    laid: Laid,
    fixed: Sequence[LineItem],
    tables: Tables,
    contingency: Decimal | None = None,
) -> Sale:
    """Own work × (1 + contingency) ÷ (1 − margin), subs ÷ (1 − margin), passed on as is; then the methods' least charges.

    All of it ÷ the share of a price that stays, where commission, card fee or a warranty reserve leave with it.
    """
    costs = by_class(lines)
    rows = class_rows(tuple(costs), tables)
    contingency = contingency_percent(takeoffs, tables) if contingency is None else contingency
    prices = class_prices(costs, rows, contingency)
    work = {owner: _share(cells, costs, prices, passed_on=False) for owner, cells in laid.items()}
    lifted, said = lifts(work, takeoffs, tables)
    lift = sum(lifted.values(), ZERO)
    standing = sum((f.amount for f in fixed), ZERO)
    brings = sum(prices.values(), ZERO) + lift + standing
    before = cents(brings / kept(tables))
    work = {owner: price + lifted.get(owner, ZERO) for owner, price in work.items()}
    own = sum(work.values(), ZERO)
    carry = 1 + (before - brings) / own if own else Decimal(1)
    return Sale(
        costs=costs,
        prices=prices,
        rows=rows,
        contingency=contingency,
        work={owner: price * carry for owner, price in work.items()},
        passed={owner: _share(cells, costs, prices, passed_on=True) for owner, cells in laid.items()},
        lift=lift,
        lifts=said,
        fixed=standing,
        carry=carry,
        before=before,
        spent=sum((line.amount for line in lines), ZERO) + sum((f.cost_share for f in fixed), ZERO),
    )


def _share(
    cells: Mapping[str, Decimal], costs: Mapping[str, Decimal], prices: Mapping[str, Decimal], passed_on: bool
) -> Decimal:
    """A work item's share of each class's price, in proportion to its share of the cost."""
    wanted = {name: amount for name, amount in cells.items() if (name == PASSED_ON) == passed_on and costs[name]}
    return sum((prices[name] * amount / costs[name] for name, amount in wanted.items()), ZERO)
