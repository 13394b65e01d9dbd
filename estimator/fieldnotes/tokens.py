"""A log line as typed in; its numbers (in every form a length is written), words and marks out, each with its place."""

import re
from fractions import Fraction

from estimator.model.frozen import Frozen

MOST_INCHES = 12
"""From here on the first of two numbers before `in` is a reading: `44 - 66 inches deep`."""
_LARGE_AND_FRACTION = re.compile(r"([1-9]\d|[7-9]) \d{1,2}/\d")
_INT = r"\d{1,5}"
_DEC = rf"(?:{_INT}\.\d{{1,4}}|\.\d{{1,4}}|{_INT},\d{{1,2}}(?!\d)|{_INT})"
_FRAC = r"\d{1,2}/\d{1,2}"
_MIX = rf"(?:{_INT}[ -]{_FRAC}|{_FRAC}|{_DEC})"
_FT = r"(?:'(?!')|[ -]?(?:ft|feet|foot|pies|pie)(?![^\W\d])\.?)"
_IN_PLACE = (
    "the|water|wtr|it|a|hse|bldg|building|home|bsmt|main|front|back|rear|side|street|yard|lawn|grass|dirt|bed|mulch|patio|hall|hallway|house|kitchen|bath|bathroom|master|guest|"
    r"mh|manhole|septic|tank|basin|pit|laundry|closet|den|garage|drive|driveway|sidewalk|walk|road|alley|city|crawl|basement|slab|concrete|asphalt|(?:left|right)(?:\s+side)?\s*(?:wall|sidewall)"
)
"""`20 in grass` is a place, `20 in down` an amount."""
_IN = rf"(?:\"|''|[ -]?(?:de\s)?(?:inches|inch|pulgadas|pulgada|pulg)\b\.?|in\b\.?(?!\s+(?:the|it|a(?!\s+l[ao]s?\b))\b)|\sin\b\.?(?!\s+(?:{_IN_PLACE})\b))"
_END = r"(?![\w/]|\.\d)"
_TO = r"\s*(?:-|\.\.\.?|\bto\b|\bthru\b|\bthrough\b|\bhasta\b|\ba\b|\btil\b|\btill\b|\b(?:clear|down|up)\sto\b|to(?=\d))\s*"
_PATTERN = re.compile(
    rf"""(?P<phone>\b\d{{3}}[ .-]\d{{4}}\b|\b\d{{3}}[ .-]\d{{3}}[ .-]\d{{4}}\b)
      | (?P<time>\b\d{{1,2}}:\d\d(?::\d\d)?\s?(?:am|pm)?\b)
      | (?P<cross>\b{_DEC}\s?(?:"|in\b)?\s?[x×]\s?{_DEC}\b(?:\s?(?:"|in\b))?)
      | (?P<pct>~?{_DEC}\s?%?(?:\s?(?:-|\.\.|to)\s?{_DEC})?\s?(?:%|pct\b|percent\b|per\s?cent\b|prcnt\b|por\s?ciento\b))
      | (?P<clockwords>\b\d{{1,2}}(?:\s?(?:-|to)\s?\d{{1,2}})?\s?(?:o'?\s?clo?c?k|oclk|oclok|oc\b))
      | (?P<feetin>~?{_INT}\s?(?:'(?!')|(?:ft|feet|foot|pies|pie)(?![^\W\d])\.?)\s?-?\s?(?:{_MIX}\s?(?:"|''|\s?(?:inches|inch|in|pulgadas?|pulg)\b)|(?:10|11|\d(?:\s?{_FRAC})?){_END}(?!\s?(?:'|%|ft|feet|foot|in\b|pct|°|deg))))
      | (?P<feetrange>~?{_DEC}{_FT}?{_TO}~?{_DEC}{_FT}(?!\d))
      | (?P<inchrange>{_MIX}\s?-\s?{_MIX}{_IN})
      | (?P<feet>~?{_MIX}{_FT})
      | (?P<inch>~?{_MIX}{_IN})
      | (?P<deg>{_DEC}\s?(?:°|degrees?\b|deg\b|grados\b))
      | (?P<metric>{_DEC}(?:\s?(?:mm|cm|met(?:er|re|ro)s?)|m(?!['.]))\b)
      | (?P<range>~?{_DEC}{_TO}~?{_DEC}(?![\w/]|\.\d)(?!\s?(?:'|"|°|%|(?:ft|in|inch|deg|degrees?|pct|percent)\b)))
      | (?P<frac>{_FRAC}{_END})
      | (?P<mixed>{_INT}[ -]{_FRAC}{_END})
      | (?P<num>~?{_DEC})(?P<ish>ish\b)?
      | (?P<word>[^\W\d_]+(?:['./&-][^\W\d_]+)*\.?)
      | (?P<mark>[,;:&+>?=!#@~/-]|→)
      | (?P<other>\S)""",
    re.VERBOSE | re.IGNORECASE,
)


class Token(Frozen):
    """A number, word or mark. `kind`: word, mark, other, or of numbers: num, range, ft, in, pct, frac, clock, deg, cross, time.

    `value` (and `to` of a range) are ft, inches, percent, hours or degrees by kind. `plain`: how it was written leaves
    room for another reading (`34 ft 2in` may be a reading and a size).
    """

    kind: str
    text: str
    at: int
    end: int
    value: float = 0.0
    to: float | None = None
    about: bool = False
    plain: bool = False
    point: bool = False  # written with a decimal point
    tight: bool = True  # a range without spaces: 9-11

    @property
    def number(self) -> bool:
        return self.kind not in ("word", "mark", "other", "time", "phone")

    @property
    def may_be_footage(self) -> bool:
        """A bare number, feet, or a range: what a reel may have read."""
        return self.kind in ("num", "ft", "range")

    @property
    def ends(self) -> tuple[float, float | None]:
        """The value, or the two ends of a range, the lower first."""
        return (self.value, None) if self.to is None else (min(self.value, self.to), max(self.value, self.to))


def _value(text: str) -> float:
    text = text.strip("~ ").replace(",", ".")
    parts = re.split(r"[ -]", text) if "/" in text else [text]
    try:
        return float(sum(Fraction(p) for p in parts if p))
    except (ValueError, ZeroDivisionError):
        return 0.0


def tokens(text: str) -> list[Token]:
    """All of the line, in order. `text` has gone through `normal`.

    >>> from estimator.fieldnotes.spoken import normal
    >>> [(t.kind, t.value, t.to) for t in tokens(normal('12-6 hole 1in 30%')) if t.number]
    [('range', 12.0, 6.0), ('in', 1.0, None), ('pct', 30.0, 30.0)]
    """
    out: list[Token] = []
    at = 0
    while at < len(text):
        if text[at] == " ":
            at += 1
            continue
        match = _PATTERN.match(text, at)
        assert match is not None  # `other` takes any character
        mixed = match.lastgroup == "inch" or (match.lastgroup == "mixed" and match.group().endswith("/3"))
        apart = _LARGE_AND_FRACTION.match(text, at) if mixed else _downwards(match)  # no reel reads thirds
        if apart:  # `33 1/2" offset`: a reading and half an inch
            match = _PATTERN.match(text, at, apart.end(1))  # its first number alone
            assert match is not None
        out.append(_token(match))
        at = match.end()
    return out


def _downwards(m: re.Match[str]) -> re.Match[str] | None:
    """`38 - 10 % rust`, `33 - 4 ft off a tree`: a reading, a dash and an amount; no stretch goes so. `33 ft 51in` is two as well."""
    if (
        m.lastgroup == "feetin"
        and (two := re.match(rf"(~?{_INT}{_FT})\s?-?\s?({_MIX})", m.group()))
        and _value(two[2]) >= 12
    ):
        return re.compile(rf"({re.escape(two[1])})").match(m.string, m.start())
    if m.lastgroup == "inchrange" and (two := re.match(rf"({_MIX})\s?-", m.group())) and _value(two[1]) > MOST_INCHES:
        return re.compile(rf"({re.escape(two[1])})").match(m.string, m.start())
    two = (
        re.match(rf"~?({_DEC})(?:{_FT})? - ({_DEC})", m.group())
        if m.lastgroup in ("pct", "feetrange", "feetin", "inchrange")
        else None
    )
    return (
        re.compile(rf"({re.escape(m.group()[: two.end(1)])})").match(m.string, m.start())
        if two and _value(two[2]) < _value(two[1])
        else None
    )


def _token(m: re.Match[str]) -> Token:
    kind, text, at, end = m.lastgroup or "other", m.group(), m.start(), m.end()
    if kind == "ish":
        kind = "num"
    about = text.startswith("~") or bool(m["ish"])
    two = [_value(p) for p in re.findall(rf"{_MIX}", text)]
    point = "." in text

    def made(kind: str, value: float, to: float | None = None, plain: bool = False, tight: bool = True) -> Token:
        return Token(kind, text, at, end, value, to, about, plain, point, tight)

    if kind in ("phone", "time"):
        clock = re.fullmatch(r"(\d{1,2}):00", text.strip())
        if kind == "time" and clock and 1 <= int(clock[1]) <= 12:
            return Token("time", text, at, end, float(clock[1]))
        return Token(kind, text, at, end)
    if kind == "cross":
        pair = re.findall(_DEC, text)
        return made("cross", _value(pair[0]), _value(pair[1]))
    if kind == "pct":
        pair = [_value(p) for p in re.findall(_DEC, text.replace("..", " "))]
        return made("pct", min(pair), max(pair))
    if kind == "clockwords":
        hours = [float(h) for h in re.findall(r"\d{1,2}", text)]
        return made("clock", hours[0], hours[-1]) if all(1 <= h <= 12 for h in hours) else made("num", hours[0])
    if kind == "feetin":
        feet, rest = re.split(r"'|(?:ft|feet|foot|pies|pie)\.?", text, maxsplit=1, flags=re.IGNORECASE)
        inches = re.findall(_MIX, rest)
        inch = _value(inches[-1]) if inches else 0.0
        spaced = bool(re.search(r"(?:ft|feet|foot|pies?|')\.?\s", text)) and bool(
            re.search(r"\d\s?(?:\"|''|in|pulg)", rest)
        )
        if inch >= 12:  # 34 ft 18in: two lengths, read one by one
            return Token("ft", text, at, end, _value(feet), None, about, True, point)
        return made("ft", _value(feet) + inch / 12, plain=spaced)
    if kind == "feetrange":
        pair = [_value(p) for p in re.findall(_DEC, text)]
        one_side = not re.search(rf"^~?{_DEC}\s?(?:'|ft|feet|foot)", text)
        return made("range", pair[0], pair[-1], plain=one_side)
    if kind == "inchrange":
        return made("in", max(two) if two else 0.0)
    if kind == "feet":
        return made("ft", two[0] if two else 0.0, plain=True)
    if kind == "inch":
        return made("in", two[0] if two else 0.0)
    if kind == "deg":
        return made("deg", _value(re.findall(_DEC, text)[0]))
    if kind == "metric":
        unit = {"mm": 0.001, "cm": 0.01}.get(re.sub(r"[\d., ~]", "", text).lower(), 1.0)  # else meters
        return made("ft", _value(re.findall(_DEC, text)[0]) * unit / 0.3048)
    if kind == "range":
        pair = [_value(p) for p in re.findall(_DEC, text.replace("..", " "))]
        return made("range", pair[0], pair[-1], tight=bool(re.fullmatch(rf"~?{_DEC}-{_DEC}", text)))
    if kind in ("frac", "mixed"):
        return made("frac" if kind == "frac" else "num", _value(text))
    if kind == "num":
        return made("num", _value(re.sub("ish$", "", text)))
    return Token(kind, text, at, end)
