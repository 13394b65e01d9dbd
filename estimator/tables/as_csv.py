"""A value of a row in, the text of its cell in a CSV file out."""

from datetime import date
from decimal import Decimal

from estimator.tables.values import plain_number


def written(value: object) -> str:
    """A value as it stands in a CSV file.

    >>> written(True), written(("tunnel", "trench")), written(None), written(4.0)
    ('yes', 'tunnel, trench', '', '4')
    """
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, int | float | Decimal):
        return plain_number(value)
    if isinstance(value, date):
        return value.isoformat()
    return ", ".join(value) if isinstance(value, tuple) else str(value)
