"""A warranty's words and the day it begins in; its last day, and when the work should be looked at again, out."""

import re
from calendar import monthrange
from collections.abc import Sequence
from datetime import date, timedelta

from estimator.model.frozen import Frozen

_TERM = re.compile(r"^\s*(\d+)\s+(day|month|year)s?\b", re.IGNORECASE)


class Warranty(Frozen):
    """What a way of repair is warranted for: the words in both languages, first and last day, None where not known yet or no term is stated."""

    method: str
    text_en: str
    text_es: str
    begins: date | None
    ends: date | None


def last_day(text: str, begins: date) -> date | None:
    """Return the last day of a warranty whose words begin with its term, such as "5 years on the new pipe"; None where they do not.

    >>> last_day("5 years on the new pipe", date(2026, 11, 29)), last_day("30 days on it", date(2027, 1, 31))
    (datetime.date(2031, 11, 29), datetime.date(2027, 3, 2))
    >>> last_day("1 year", date(2028, 2, 29)), last_day("A test is not a warranty.", date(2026, 1, 1))
    (datetime.date(2029, 2, 28), None)
    """
    found = _TERM.match(text)
    if found is None:
        return None
    count, unit = int(found[1]), found[2].lower()
    if unit == "day":
        return begins + timedelta(days=count)
    return months_later(begins, count * (12 if unit == "year" else 1))


def months_later(day: date, months: int) -> date:
    """Return the same day so many months later, the month's last where it has no such day.

    >>> months_later(date(2027, 1, 31), 1), months_later(date(2027, 3, 31), -1)
    (datetime.date(2027, 2, 28), datetime.date(2027, 2, 28))
    """
    number = day.year * 12 + day.month - 1 + months
    year, month = divmod(number, 12)
    return date(year, month + 1, min(day.day, monthrange(year, month + 1)[1]))


def looks_due(begins: date, looked: Sequence[date], ends: Sequence[date], months: int) -> tuple[date, ...]:
    """Return when to film again: so many months after the last look, and a month before each warranty that still runs then ends.

    >>> looks_due(date(2026, 12, 1), [], [date(2028, 12, 1)], 12)
    (datetime.date(2027, 12, 1), datetime.date(2028, 11, 1))
    """
    last = max((begins, *looked))
    before_ends = {months_later(end, -1) for end in ends if months_later(end, -1) > last}
    return tuple(sorted({months_later(last, months), *before_ends}))
