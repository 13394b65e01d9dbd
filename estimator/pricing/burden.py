"""A wage and what comes on top of it in; what an hour of work costs the firm, out."""

from decimal import Decimal

from estimator.model.money import cents


def loaded_rate(wage: Decimal, burden_percent: Decimal) -> Decimal:
    """wage × (1 + burden), dollars an hour, to the cent.

    >>> loaded_rate(Decimal("38"), Decimal("32"))
    Decimal('50.16')
    """
    return cents(wage * (1 + burden_percent / 100))
