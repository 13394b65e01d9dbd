"""A price, a life and a rate in; what it comes to a year, out: an aid to compare ways of repair, not a promise of life."""

from dataclasses import replace
from decimal import Decimal

from estimator.model.money import cents
from estimator.model.offer import Quote
from estimator.tables.tables import Tables


def single_present_worth(rate: float, years: int) -> float:
    """(1 + d)^−n: what a dollar in n years is worth today.

    >>> round(single_present_worth(0.03, 10), 4)
    0.7441
    """
    return (1 + rate) ** -years


def uniform_present_worth(rate: float, years: int) -> float:
    """[1 − (1 + d)^−n] ÷ d: what a dollar a year for n years is worth today; n where the rate is 0.

    >>> round(uniform_present_worth(0.03, 10), 3), uniform_present_worth(0, 10)
    (8.53, 10.0)
    """
    return float(years) if rate == 0 else (1 - single_present_worth(rate, years)) / rate


def cost_a_year(price: Decimal, years: int, rate_percent: Decimal) -> Decimal | None:
    """price ÷ uniform present worth, dollars a year, to the cent; None where no life is stated.

    >>> cost_a_year(Decimal("4200.00"), 50, Decimal(3))
    Decimal('163.24')
    """
    if years <= 0:
        return None
    return cents(float(price) / uniform_present_worth(float(rate_percent) / 100, years))


def cost_a_year_of_life(
    price: Decimal, life_low: int, life_high: int, tables: Tables
) -> tuple[Decimal, Decimal] | None:
    """Dollars a year over the stated life, the longest first: least and most, at the firm's rate. None where no life is stated."""
    rate = tables.amount("present_worth_rate_percent")
    least, most = cost_a_year(price, life_high, rate), cost_a_year(price, life_low, rate)
    return None if least is None or most is None else (least, most)


def with_cost_a_year(quote: Quote, tables: Tables) -> Quote:
    """The quote with what each option costs a year over its stated life, at the firm's rate."""
    options = tuple(
        replace(o, cost_a_year=cost_a_year_of_life(o.price.total, o.life_low, o.life_high, tables))
        for o in quote.options
    )
    return replace(quote, options=options)
