"""A number in; the same number as a person writes it, without trailing zeros or powers of ten, out."""

from decimal import Decimal


def plain(number: Decimal) -> Decimal:
    """Without trailing zeros and without an exponent.

    >>> plain(Decimal("60.00")), plain(Decimal("2.50"))
    (Decimal('60'), Decimal('2.5'))
    """
    short = number.normalize()
    return short.quantize(Decimal(1)) if short == short.to_integral_value() else short
