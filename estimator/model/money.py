"""Money in, money out: Decimal dollars, rounded in one way and spread without losing a cent."""

import math
from collections.abc import Sequence
from decimal import ROUND_CEILING, ROUND_HALF_UP, Decimal

CENT = Decimal("0.01")


def exact(value: Decimal | float | int | str) -> Decimal:
    """A number as Decimal, floats by their shortest written form.

    >>> exact(0.1)
    Decimal('0.1')
    """
    return value if isinstance(value, Decimal) else Decimal(repr(value) if isinstance(value, float) else str(value))


def to_step(value: Decimal | float | int | str, step: Decimal = CENT) -> Decimal:
    """Round to the nearest step, half a step away from zero.

    >>> to_step("0.125"), to_step("-0.125"), to_step("243.50", Decimal(1))
    (Decimal('0.13'), Decimal('-0.13'), Decimal('244'))
    """
    return (exact(value) / step).quantize(Decimal(1), ROUND_HALF_UP) * step


def cents(value: Decimal | float | int | str) -> Decimal:
    """Round to the cent, half a cent away from zero: the one rounding every amount goes through.

    >>> cents("2.675"), cents(1.005)
    (Decimal('2.68'), Decimal('1.01'))
    """
    return exact(value).quantize(CENT, ROUND_HALF_UP)


def up_to(value: Decimal, step: Decimal) -> Decimal:
    """Round up to the next full step.

    >>> up_to(Decimal("4193.81"), Decimal(25)), up_to(Decimal("4200.00"), Decimal(25))
    (Decimal('4200.00'), Decimal('4200.00'))
    """
    return cents((value / step).quantize(Decimal(1), ROUND_CEILING) * step)


def spread(total: Decimal, weights: Sequence[Decimal | float], step: Decimal = CENT) -> tuple[Decimal, ...]:
    """Split a total in proportion to weights >= 0, in whole steps whose sum is the total to the cent.

    Each part gets its rounded-down share; the steps left over go to the largest remainders,
    the earlier part first where two are equal. What is less than a step goes to the largest part.

    >>> spread(Decimal("1.00"), [1, 1, 1])
    (Decimal('0.34'), Decimal('0.33'), Decimal('0.33'))

    Errors: ValueError for no weights, a negative weight, or weights that sum to zero.
    """
    if len(weights) == 1 and weights[0] > 0:
        return (total + 0 * step,)
    if min(weights, default=0) < 0 or not any(weights):
        raise ValueError("spread needs weights of zero or more with a sum above zero")
    sign = Decimal(-1) if total < 0 else Decimal(1)
    size = abs(total)
    shares = _steps_each(size / step, weights)
    parts = [int(share) for share in shares]
    left = int(size / step) - sum(parts)
    for i in sorted(range(len(shares)), key=lambda i: (parts[i] - shares[i], i))[:left]:
        parts[i] += 1
    amounts = [sign * step * part for part in parts]
    amounts[max(range(len(parts)), key=lambda i: parts[i])] += total - sum(amounts, Decimal(0))
    return tuple(amounts)


def _steps_each(steps: Decimal, weights: Sequence[Decimal | float]) -> Sequence[Decimal] | Sequence[float]:
    """The share of each, unrounded: exactly where the weights are exact; measured weights are floats and so are their shares."""
    if any(isinstance(w, float) for w in weights):
        measured = [float(w) for w in weights]
        a_unit = float(steps) / math.fsum(measured)
        return [a_unit * w for w in measured]
    exact_weights = [exact(w) for w in weights]
    whole = sum(exact_weights, Decimal(0))
    return [steps * w / whole for w in exact_weights]


def margin_of_markup(markup_percent: Decimal) -> Decimal:
    """markup ÷ (1 + markup): what “add so much” leaves of the price, in percent.

    >>> margin_of_markup(Decimal(25)) == 20
    True
    """
    return 100 * markup_percent / (100 + markup_percent)


def markup_of_margin(margin_percent: Decimal) -> Decimal:
    """margin ÷ (1 − margin): what must be added on the cost to keep that share of the price, in percent.

    >>> markup_of_margin(Decimal(20)) == 25
    True
    """
    return 100 * margin_percent / (100 - margin_percent)


def plain(number: Decimal) -> Decimal:
    """Without trailing zeros and without an exponent.

    >>> plain(Decimal("60.00")), plain(Decimal("2.50"))
    (Decimal('60'), Decimal('2.5'))
    """
    short = number.normalize()
    return short.quantize(Decimal(1)) if short == short.to_integral_value() else short
