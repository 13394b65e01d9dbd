"""A wage and what comes on top of it in; what an hour of work costs the firm, out."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from estimator.model.money import cents


def loaded_rate(wage: Decimal, burden_percent: Decimal) -> Decimal:
    """wage × (1 + burden), dollars an hour, to the cent.

    >>> loaded_rate(Decimal("38"), Decimal("32"))
    Decimal('50.16')
    """
    return cents(wage * (1 + burden_percent / 100))


@dataclass(frozen=True, slots=True)
class OnTop:
    """One thing paid on top of wages: a share of them up to a limit, or a sum for the year."""

    text: str
    percent: Decimal = Decimal(0)
    of_first: Decimal | None = None
    a_year: Decimal = Decimal(0)

    def cost(self, pay: Decimal) -> Decimal:
        """Dollars a year on this much pay."""
        base = pay if self.of_first is None else min(pay, self.of_first)
        return base * self.percent / 100 + self.a_year


def hour_worked(pay: Decimal, taxed_extras: Decimal, on_top: Sequence[OnTop], hours_worked: Decimal) -> Decimal:
    """(pay + extras + what comes on top) ÷ hours worked: leave is paid and not worked, so it is not in the divisor.

    `pay` is a year's wages, overtime and paid leave included; `taxed_extras` are bonuses and allowances on which the
    percentages count too. Dollars an hour, to the cent. Errors: ValueError when nobody worked.

    >>> hour_worked(Decimal(40000), Decimal(0), [OnTop("taxes", Decimal(25))], Decimal(2000))
    Decimal('25.00')
    """
    if hours_worked <= 0:
        raise ValueError("hours worked must be above 0")
    gross = pay + taxed_extras
    return cents((gross + sum((x.cost(gross) for x in on_top), Decimal(0))) / hours_worked)


def burden_percent(wage: Decimal, hour: Decimal) -> Decimal:
    """What to write in the column burden_percent of roles so that a wage comes to this cost of an hour, to 0.1 %.

    >>> burden_percent(Decimal("23.00"), Decimal("34.45"))
    Decimal('49.8')
    """
    return ((hour / wage - 1) * 100).quantize(Decimal("0.1"))
