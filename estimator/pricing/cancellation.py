"""The day of signing and the place's business days in; the last day on which the homeowner may cancel, out."""

from collections.abc import Callable
from datetime import date, timedelta

SUNDAY = 6


def cancel_until(signed: date, business_days: int) -> date:
    """The homeowner may cancel until midnight of this day: so many business days after the day of signing.

    Business days are Monday to Saturday except federal holidays, on their day and on the weekday they are observed.
    Source: 16 CFR 429.0(f), 429.1(a); the emergency exemption needs the buyer's own signed statement. Check with a lawyer.

    >>> cancel_until(date(2025, 7, 2), 3)
    datetime.date(2025, 7, 7)
    """
    is_holiday = federal_holidays(signed.year, signed.year + 1)
    day = signed
    left = business_days
    while left > 0:
        day += timedelta(days=1)
        left -= day.weekday() != SUNDAY and not is_holiday(day)
    return day


def federal_holidays(*years: int) -> Callable[[date], bool]:
    """Whether a day is a federal holiday, on its own day or as observed."""
    from holidays import country_holidays

    days = set(country_holidays("US", years=years, observed=True))
    return days.__contains__
