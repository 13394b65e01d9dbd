"""Steps 6 and 7: what each class is sold for in; what each work item is sold for before rounding, out."""

from collections.abc import Mapping, Sequence
from decimal import Decimal

from estimator.model.frozen import Frozen
from estimator.model.price import LineItem
from estimator.model.say import Say
from estimator.model.work import Takeoff
from estimator.pricing.amounts import Owner
from estimator.pricing.markup import ByClass
from estimator.pricing.minimum import minimum_adjustments
from estimator.pricing.shares import Allocated
from estimator.tables.rows import PriceClass
from estimator.tables.tables import Tables

ZERO = Decimal(0)


class Sale(Frozen, kw_only=True):
    """Costs and prices by class, prices by work item, and what they sum to before rounding."""

    costs: Mapping[str, Decimal]
    prices: Mapping[str, Decimal]
    rows: Mapping[str, PriceClass]
    contingency: Decimal
    work: Mapping[Owner, Decimal]  # without what is passed on, what minimum charges add included
    passed: Mapping[Owner, Decimal]
    adjustment: Decimal
    minimum_charges: tuple[Say, ...]
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
    by_class: ByClass,
    takeoffs: Sequence[Takeoff],
    allocated: Allocated,
    fixed: Sequence[LineItem],
    tables: Tables,
) -> Sale:
    """The classes allocated to work items, then the methods' least charges.

    All of it ÷ the share of a price that stays, where commission, card fee or a warranty reserve leave with it.
    """
    work = {owner: by_class.share(cells, passed_on=False) for owner, cells in allocated.items()}
    added, said = minimum_adjustments(work, takeoffs, tables)
    adjustment = sum(added.values(), ZERO)
    standing = sum((f.amount for f in fixed), ZERO)
    carry = by_class.carry(adjustment, standing, tables)
    return Sale(
        costs=by_class.costs,
        prices=by_class.prices,
        rows=by_class.rows,
        contingency=by_class.contingency,
        work={owner: (price + added.get(owner, ZERO)) * carry for owner, price in work.items()},
        passed={owner: by_class.share(cells, passed_on=True) for owner, cells in allocated.items()},
        adjustment=adjustment,
        minimum_charges=said,
        fixed=standing,
        carry=carry,
        before=by_class.before(adjustment, standing, tables),
        spent=sum(by_class.costs.values(), ZERO) + sum((f.cost_share for f in fixed), ZERO),
    )
