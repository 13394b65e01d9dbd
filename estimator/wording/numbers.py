"""Numbers, lengths, money and days in, text as people of the language write it out. Amounts come rounded or are rounded half up first."""

from datetime import date
from decimal import Decimal
from fractions import Fraction
from functools import lru_cache

from estimator.model.money import cents, exact, to_step

HALF = Decimal("0.5")
INCHES_IN_FT = 12
MANY = 4000
"""So many figures are kept as written: the same ones stand on every paper."""
SHOW_INCHES_BELOW_FT = 20.0  # from here on half a foot is as near as anybody reads a drain
FEET = {"en": ("ft", "in"), "es": ("pies", "pulg")}
DAYS = {"en": ("day", "days"), "es": ("día", "días")}


def family(language: str) -> str:
    """ "en" of "en_US"."""
    return language.split("_")[0]


@lru_cache(maxsize=MANY)
def money(amount: Decimal, language: str) -> str:
    """Dollars, with cents only where there are any.

    >>> money(Decimal("4200.00"), "en_US"), money(Decimal("0.125"), "es_US")
    ('$4,200', '$0.13')
    """
    from babel.numbers import format_currency

    rounded = cents(amount)
    if rounded == rounded.to_integral_value():
        return format_currency(rounded, "USD", "¤#,##0", locale=language, currency_digits=False)
    return format_currency(rounded, "USD", locale=language)


@lru_cache(maxsize=MANY)
def number(value: Decimal | float | int, language: str, places: int = 2) -> str:
    """A plain number with at most so many places, none where there are none."""
    from babel.numbers import format_decimal

    rounded = to_step(exact(value), Decimal(1).scaleb(-places))
    return format_decimal(rounded, "#,##0." + "#" * places if places else "#,##0", locale=language)


def halves(value: Decimal) -> str:
    """A number with its half written the short way.

    >>> halves(Decimal("7.5")), halves(Decimal("0.5")), halves(Decimal(3))
    ('7½', '½', '3')
    """
    whole, half = divmod(to_step(value, HALF), 1)
    return (f"{whole:f}" if whole or not half else "") + ("½" if half else "")


def days(value: Decimal, language: str) -> str:
    """Days with their word.

    >>> days(Decimal(1), "en_US"), days(Decimal("2.5"), "es_US")
    ('1 day', '2½ días')
    """
    one, many = DAYS[family(language)]
    return f"{halves(value)} {one if Decimal(0) < value <= 1 else many}"


def feet(ft: float, language: str) -> str:
    """A length as people read it: to the inch where it is short, to the half foot where it is long.

    >>> feet(29.0, "en_US"), feet(14.17, "en_US"), feet(2.5, "es_US"), feet(71.7, "es_US"), feet(0.25, "en_US")
    ('29 ft', '14 ft 2 in', '2 pies 6 pulg', '71 pies 6 pulg', '3 in')
    """
    foot, inch = FEET[family(language)]
    sign = "-" if ft < 0 else ""
    step = HALF if abs(ft) >= SHOW_INCHES_BELOW_FT else Decimal(1) / INCHES_IN_FT
    whole, inches = divmod(
        int(to_step(to_step(exact(abs(ft)) / step, Decimal(1)) * step * INCHES_IN_FT, Decimal(1))), INCHES_IN_FT
    )
    parts = [f"{number(whole, language, 0)} {_one_foot(whole, foot)}"] if whole or not inches else []
    return sign + " ".join([*parts, f"{inches} {inch}"] if inches else parts)


def _one_foot(count: int, word: str) -> str:
    return "pie" if count == 1 and word == "pies" else word


def inches(value: float) -> str:
    """A pipe size or an opening in inches, with a fraction where one fits.

    >>> inches(4.0), inches(1.5), inches(2.375)
    ('4', '1½', '2⅜')
    """
    signs = {
        Fraction(1, 8): "⅛", Fraction(1, 4): "¼", Fraction(3, 8): "⅜", Fraction(1, 2): "½",
        Fraction(5, 8): "⅝", Fraction(3, 4): "¾", Fraction(7, 8): "⅞",
    }  # fmt: skip
    whole, part = divmod(Fraction(round(value * 8), 8), 1)
    return (str(whole) if whole or not part else "") + signs.get(part, "")


@lru_cache(maxsize=MANY)
def long_date(day: date, language: str) -> str:
    """A day written out.

    >>> long_date(date(2026, 11, 18), "en_US"), long_date(date(2026, 11, 18), "es_US")
    ('November 18, 2026', '18 de noviembre de 2026')
    """
    from babel.dates import format_date

    return format_date(day, "long", locale=language)


def listed(parts: list[str], language: str) -> str:
    """Words as a list: commas, and the last with its "and"."""
    from babel.lists import format_list

    return format_list(parts, locale=language)
