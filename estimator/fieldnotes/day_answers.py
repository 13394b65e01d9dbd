"""Answers about days and years in; the day or the year, or what to ask, out."""

import re
from datetime import date

from estimator.fieldnotes.answers import NO, Got, Known, Unread, whole_number
from estimator.model.lengths import plain_marks

_MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")


def year_built(answer: str, key: str, known: Known) -> Got | Unread:
    """A year; two digits are offered as the year of the last hundred that they end."""
    two = re.fullmatch(r"(?:about|abt|~|c\.?)?\s*'?(\d\d)(?:s|ish)?", answer.strip(), re.ASCII | re.IGNORECASE)
    if two:
        this = known.today.year
        return Unread.of("which hundred", offer=str(this - (this - int(two[1])) % 100))
    return whole_number(1600, 2200)(answer, key, known)


def _year(words: str, today: date) -> int:
    return (2000 + int(words) if len(words) == 2 else int(words)) if words else today.year


def read_day(answer: str, today: date) -> date | None:
    """A day as people write it; a month alone counts from its first day.

    >>> [str(read_day(text, date(2026, 11, 25))) for text in ("today", "11/18", "Nov 18 2026", "2027-01", "jan 2027")]
    ['2026-11-25', '2026-11-18', '2026-11-18', '2027-01-01', '2027-01-01']
    """
    low = plain_marks(answer).lower().replace(",", " ").strip(" .")
    if low in ("today", "now", "hoy"):
        return today
    if low in ("yesterday", "ayer"):
        return date.fromordinal(today.toordinal() - 1)
    try:
        if m := re.fullmatch(r"(\d{4})[-/.](\d{1,2})(?:[-/.](\d{1,2}))?", low, re.ASCII):
            return date(int(m[1]), int(m[2]), int(m[3] or 1))
        if m := re.fullmatch(r"(\d{1,2})[-/.](\d{1,2})(?:[-/.](\d{4}|\d{2}))?", low, re.ASCII):
            return date(_year(m[3], today), int(m[1]), int(m[2]))
        if m := re.fullmatch(r"([a-z]{3,9})\.?(?:\s+(\d{1,2})(?:st|nd|rd|th)?)?(?:\s+(\d{4}))?", low, re.ASCII):
            return date(_year(m[3], today), _MONTHS.index(m[1][:3]) + 1, int(m[2] or 1))
    except ValueError:
        pass
    return None


def day_or_none(answer: str, key: str, known: Known) -> Got | Unread:
    """A day; a no is none."""
    return Got({key: None}) if answer.lower().strip(" .!") in NO else day(answer, key, known)


def day(answer: str, key: str, known: Known) -> Got | Unread:
    found = read_day(answer, known.today)
    if found is None:
        return Unread.of("“{answer}” is no day: write it like 2026-11-18, 11/18 or Nov 18", answer=answer)
    return Got({key: found}, found.isoformat())
