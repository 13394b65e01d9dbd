"""What people write for a length comes in (12'6", 2 ft 8 in, 30 in, 3.8 m); feet come out, and go back into words exactly."""

import re
from decimal import Decimal, localcontext
from fractions import Fraction
from typing import Literal

from estimator.model.say import Say, Typed

Unit = Literal["ft", "in", ""]
"""What a bare number means; "" refuses it."""

IN_PER_FT = 12
M_PER_FT = Fraction(3048, 10000)  # the international foot, exact by definition
MOST_FT = 10_000
"""Nothing about a house is longer: two miles are a slip of the finger."""
SIXTEENTHS_PER_FT = 16 * IN_PER_FT
_METRES = {"m": Fraction(1), "cm": Fraction(1, 100), "mm": Fraction(1, 1000)}
_VULGAR = {"¼": "1/4", "½": "1/2", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8"}
_PHONE = str.maketrans({"’": "'", "‘": "'", "′": "'", "“": '"', "”": '"', "″": '"', "–": "-", "—": "-", "−": "-"})

_NUMBER = r"(?:\d+(?:\.\d+)?|\.\d+)"
_FRACTION = r"(?:\d+\s?/\s?\d+|[¼½¾⅛⅜⅝⅞])"
_MIXED = rf"(?:{_NUMBER}(?:[ -]?{_FRACTION})?|{_FRACTION})"
_FOOT = r"(?:'(?!')|(?:feet|foot|ft)\.?(?![A-Za-z]))"
_INCH = r"(?:\"|''|(?:inches|inch|in)\.?(?![A-Za-z]))"
_LENGTH = re.compile(
    rf"""(?P<feet>{_MIXED})\s?{_FOOT}(?:\s?-?\s?(?P<inches>{_MIXED})\s?{_INCH}|(?P<bare_inches>\d+)(?![\d.%'/A-Za-z]))?
      | (?P<only_inches>{_MIXED})\s?{_INCH}
      | (?P<metric>{_NUMBER})\s?(?P<unit>mm|cm|m)(?![A-Za-z])
      | (?P<bare>{_MIXED})""",
    re.VERBOSE | re.IGNORECASE | re.ASCII,
)

_INCHES_LEFT_OUT = re.compile(r"(\d\s*(?:feet|foot|ft)\.?\s+\d{1,2})\s*\Z", re.IGNORECASE | re.ASCII)


_THOUSANDS = re.compile(r"(\d{1,3}(?:,\d{3})+(?:\.\d+)?)(?![\d,])")
_QUANTITY = re.compile(r"(\d+(?:\.\d+)?)\s*([A-Za-z][A-Za-z .]*)?", re.ASCII)


def plain_marks(text: str) -> str:
    """The text with a phone's curly quotes and long dashes made plain, each for one character."""
    return text.translate(_PHONE)


def _number(text: str) -> Fraction:
    """A mixed number such as 6 1/2, 6-1/2, 6½ or 6.5. Errors: ZeroDivisionError for a fraction over nothing."""
    for sign, words in _VULGAR.items():
        text = text.replace(sign, f" {words}")
    text = re.sub(r"\s?/\s?", "/", text).replace("-", " ")
    return sum((Fraction(part) for part in text.split()), Fraction(0))


def _too_many_inches(match: re.Match[str]) -> bool:
    """After feet a foot of inches, or more, is a slip: 4'115" is 4 ft 11.5 in or 4 ft 1 in and something."""
    return match["feet"] is not None and _number(match["inches"] or match["bare_inches"] or "0") >= IN_PER_FT


def _feet(match: re.Match[str], bare: Unit) -> Fraction:
    if match["feet"]:
        return _number(match["feet"]) + _number(match["inches"] or match["bare_inches"] or "0") / IN_PER_FT
    if match["only_inches"]:
        return _number(match["only_inches"]) / IN_PER_FT
    if match["metric"]:
        return _number(match["metric"]) * _METRES[match["unit"].lower()] / M_PER_FT
    return _number(match["bare"]) / (IN_PER_FT if bare == "in" else 1)


def unit_written(text: str) -> str:
    """The unit a length was written in: "ft", "in", "m" or "" for a bare number."""
    match = _LENGTH.match(plain_marks(text.strip()))
    if match is None or match["bare"]:
        return ""
    return "ft" if match["feet"] else "in" if match["only_inches"] else "m"


def match_length(text: str, start: int = 0, bare: Unit = "") -> tuple[float, int] | None:
    """A length that begins at `start`, in feet, and where it ends; None when there is none (or a bare number is refused).

    >>> match_length("depth 2ft8in below", 6)
    (2.6666666666666665, 12)
    >>> match_length("4'115 in") is None
    True
    """
    match = _LENGTH.match(plain_marks(text), start)
    if match is None or (match["bare"] and not bare):
        return None
    try:
        if _too_many_inches(match):
            return None
        return float(_feet(match, bare)), match.end()
    except (ZeroDivisionError, OverflowError, ValueError):
        return None


def parse_length(text: str, bare: Unit = "ft") -> float | Say:
    """The length in feet, or in words why it cannot be read. `bare` is the unit of a number that has none.

    >>> parse_length("12' 6 1/2\\""), parse_length("3.8 m"), parse_length("30", bare="in")
    (12.541666666666666, 12.46719160104987, 2.5)
    >>> parse_length("2ft 6")
    2.5
    >>> str(parse_length("38,5"))
    'a comma is no decimal point: write 38.5'
    >>> str(parse_length("1,200 ft")), str(parse_length("4'115 in"))
    ('leave the comma out: 1200 ft', 'inches after feet stay below 12')
    """
    plain = plain_marks(text).strip()
    if not plain:
        return Say.of("it is empty: write a length such as 2 ft 8 in")
    if _THOUSANDS.match(plain):
        return Say.of("leave the comma out: {better}", better=Typed(plain.replace(",", "")))
    if re.fullmatch(r"\d+,\d+.*", plain):
        return Say.of("a comma is no decimal point: write {better}", better=Typed(plain.replace(",", ".", 1)))
    if plain.startswith("-"):
        return Say.of("a length is never below zero")
    match = _LENGTH.fullmatch(_INCHES_LEFT_OUT.sub(r"\1 in", plain))
    if match is None:
        return Say.of("write a length such as 12.5, 12'6\", 2 ft 8 in, 30 in or 3.8 m")
    if match["bare"] and not bare:
        return Say.of("say the unit: ft, in, m, cm or mm")
    try:
        if _too_many_inches(match):
            return Say.of("inches after feet stay below 12")
        feet = float(_feet(match, bare))
        if feet <= MOST_FT:
            return feet
        return Say.of("nothing about a house is longer than {most} ft: look for a slip", most=Typed(f"{MOST_FT:,}"))
    except ZeroDivisionError:
        return Say.of("a fraction cannot be over 0")
    except (OverflowError, ValueError):
        return Say.of("it is too long to be a length")


def parse_quantity(text: str) -> tuple[float, str] | Say:
    """A quantity and the unit written behind it ("" for none), a length in ft; or in words why it cannot be read.

    >>> parse_quantity("1,200 ft"), parse_quantity("408 in"), parse_quantity("12 cu yd"), parse_quantity("3")
    ((1200.0, 'ft'), (34.0, 'ft'), (12.0, 'cu yd'), (3.0, ''))
    >>> parse_quantity("34'6"), parse_quantity("10.4 m")[1], str(parse_quantity("1200,5"))
    ((34.5, 'ft'), 'ft', 'a comma is no decimal point: write 1200.5')
    """
    plain = plain_marks(text).strip()
    if grouped := _THOUSANDS.match(plain):
        plain = grouped[1].replace(",", "") + plain[grouped.end() :]
    counted = _QUANTITY.fullmatch(plain)
    unit = (counted[2] or "").strip() if counted else ""
    if counted and (unit.lower().rstrip(".") in ("ft", "feet", "foot") or not unit_written(plain)):
        return float(counted[1]), "ft" if unit_written(plain) else unit
    feet = parse_length(plain)
    return feet if isinstance(feet, Say) else (feet, "ft")


def _whole_and_sixteenths(sixteenths: int) -> str:
    whole, rest = divmod(sixteenths, 16)
    fraction = Fraction(rest, 16)
    return " ".join(part for part in (str(whole) if whole or not rest else "", str(fraction) if rest else "") if part)


def _decimal(number: float) -> str:
    return format(Decimal(repr(number)), "f").removesuffix(".0")


def show(ft: float) -> str:
    """Feet and inches where they are exact to 1/16 in, else decimal feet; reading it back gives the same float.

    >>> show(12.5), show(2 + 8.5 / 12), show(0.25), show(3.3)
    ('12 ft 6 in', '2 ft 8 1/2 in', '3 in', '3.3 ft')
    """
    if not 0 <= ft < float("inf"):
        raise ValueError(f"no length: {ft}")
    sixteenths = round(Fraction(ft) * SIXTEENTHS_PER_FT)
    if float(Fraction(sixteenths, SIXTEENTHS_PER_FT)) != ft:
        return f"{_decimal(ft)} ft"
    feet, rest = divmod(sixteenths, SIXTEENTHS_PER_FT)
    shown = [f"{feet} ft"] if feet or not rest else []
    return " ".join([*shown, f"{_whole_and_sixteenths(rest)} in"] if rest else shown)


def show_inches(ft: float) -> str:
    """The length in inches alone: to 1/16 where that is exact, else decimal; reading it back gives the same float.

    >>> show_inches(2.5), show_inches(0.03125), show_inches(1 / 7)
    ('30 in', '3/8 in', '1.7142857142857142 in')
    """
    if not 0 <= ft < float("inf"):
        raise ValueError(f"no length: {ft}")
    sixteenths = round(Fraction(ft) * SIXTEENTHS_PER_FT)
    if float(Fraction(sixteenths, SIXTEENTHS_PER_FT)) == ft:
        return f"{_whole_and_sixteenths(sixteenths)} in"
    short = ft * IN_PER_FT
    if short < float("inf") and parse_length(f"{_decimal(short)} in") == ft:
        return f"{_decimal(short)} in"
    with localcontext() as context:
        context.prec = 1200  # enough for any float times 12, exactly
        return f"{Decimal(ft) * IN_PER_FT:f} in"
