"""What leaves with the price, a share of it: commission, card fee, warranty reserve. Each is a setting, 0 where a firm has none."""

from decimal import Decimal

from estimator.model.money import cents
from estimator.model.price import PriceShare
from estimator.model.remembered import remembered
from estimator.tables.tables import Tables

SETTINGS = (
    ("commission", "commission_percent"),
    ("card fee", "card_fee_percent"),
    ("warranty reserve", "warranty_reserve_percent"),
)


def shares_of_price(net: Decimal, tables: Tables) -> tuple[PriceShare, ...]:
    """Each share of a price before sales tax, to the cent; those of 0 % are left out."""
    percents = ((name, tables.amount(key)) for name, key in SETTINGS)
    return tuple(PriceShare(name=n, percent=p, amount=cents(net * p / 100)) for n, p in percents if p)


@remembered
def firm_share(tables: Tables) -> Decimal:
    """The share of a price that stays with the firm, 1 where nothing leaves. A price is what it must bring ÷ this."""
    return 1 - sum((tables.amount(key) for _, key in SETTINGS), Decimal(0)) / 100
