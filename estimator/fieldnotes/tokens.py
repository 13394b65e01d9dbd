"""A log line as typed in; its numbers (in every form a length is written), words and marks out, each with its place."""

import re
import unicodedata
from dataclasses import dataclass
from fractions import Fraction

from estimator.model.lengths import plain_marks

_UNITS = ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"]  # fmt: skip
_TENS = ["zero", "ten", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"]
_SPOKEN = {w: n for n, w in enumerate(_UNITS)} | {w: n * 10 for n, w in enumerate(_TENS) if n > 1}
_SPOKEN_WORD = "|".join(sorted(_SPOKEN, key=len, reverse=True))
_SPOKEN_NUMBER = re.compile(
    rf"\b(?:{_SPOKEN_WORD})(?:[ -](?:hundred|(?:and )?(?:{_SPOKEN_WORD}))\b)*(?: point(?: (?:{_SPOKEN_WORD})\b)+| and (?:a |one )?(?:half|quarter)\b)?\b",
    re.IGNORECASE,
)
_ONE = re.compile(r"one\b(?!\s*(?:inch|in\b|ft|feet|foot|percent|pct|and a))", re.IGNORECASE)
_ZERO = re.compile(r"zero\b(?!\s*(?:inch|ft|feet|foot|yard|slab))", re.IGNORECASE)
_WORD_INCHES = (
    (re.compile(r"\b(?:an? |one )?inch and (?:a |one )?half\b", re.IGNORECASE), '1.5"'),
    (re.compile(r"\b(?:a |one )?half (?:an? )?(?:inch|in)\b|\bhalf inch\b|\bmedia pulgada\b", re.IGNORECASE), '0.5"'),
    (re.compile(r"\bthree quarters? (?:of )?(?:an? )?inch\b|\bthree quarter inch\b", re.IGNORECASE), '0.75"'),
    (re.compile(r"\b(?:a |one )?quarter (?:of )?(?:an? )?inch\b|\bquarter in\b", re.IGNORECASE), '0.25"'),
    (re.compile(r"\ban inch\b|\ba inch\b|\buna pulgada\b", re.IGNORECASE), '1"'),
    (re.compile(r"\b(?:a )?couple (?:of )?inch(?:es)?\b", re.IGNORECASE), '2"'),
)
_AND_A_HALF = re.compile(r"(\d) ?(?:&|\+|and|n) (?:a |one )?(half|quarter)\b", re.IGNORECASE)
_WORDS_FOR = (
    (re.compile(r"\b(quarter|1 quarter) (?=bend|turn)"), "1/4 "),
    (re.compile(r"\b(eighth|1 eighth) (?=bend|turn)"), "1/8 "),
    (re.compile(r"\b(sixteenth) (?=bend|turn)"), "1/16 "),
    (re.compile(r"(?<![/\d.])(\d+) (?=1/(?:4|8|16|6|5) (?:bend|turn|ell|elbow))"), r"\1 the "),
    (re.compile(r"\b(?:2|two|double|dbl|back to back) (45|22\.5|22|90)s?\b(?!\s?(?:ft|in|'|\"))"), r"\1deg bend"),
    (re.compile(r"\b(45|90|22)s\b"), r"\1"),
    (re.compile(r"\b(?:the )?first (\d[\d.]*) ?(?:ft\b|feet\b|foot\b|')"), r"0-\1"),
    (re.compile(r"\b(?:los )?primeros (\d[\d.]*) ?(?:pies\b)?"), r"0-\1"),
    (re.compile(r"\ba (foot|ft)\b"), "1 ft"),
    (re.compile(r"\b(?:h2o|wtr|watr)\b"), "water"),
    (re.compile(r"(\d) y (?=\d[\d.]*(?![\d.]| ?(?:in|pulg|\"|')))"), r"\1 and "),
    (re.compile(r"\b(?:between|entre) (\d[\d.]*) (?:and|&|y) (?=\d)"), r"\1-"),
)
_ES = {
    "dos": 2, "tres": 3, "cuatro": 4, "cinco": 5, "seis": 6, "siete": 7, "ocho": 8, "nueve": 9, "diez": 10, "once": 11, "doce": 12,
    "quince": 15, "veinte": 20, "veinticinco": 25, "treinta": 30, "cuarenta": 40, "cincuenta": 50, "sesenta": 60, "setenta": 70,
    "ochenta": 80, "noventa": 90,
}  # fmt: skip
_ES_WORD = "|".join(_ES)
_ES_NUMBER = re.compile(rf"\b({_ES_WORD})(?: y ({_ES_WORD}|un|uno))?(?= (?:por ?ciento|%|pulgadas?|pulg|pies?)\b)")
"""Spanish number words, only before what they measure: `once` is English too."""
_LARGE_AND_FRACTION = re.compile(r"([1-9]\d|[7-9]) \d{1,2}/\d")
_TWO_WAY = re.compile(r"\b(?:2|two)[ -]?way\b", re.IGNORECASE)
_VULGAR = {"¼": "1/4", "½": "1/2", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8", "⅓": "1/3", "⅔": "2/3"}

_INT = r"\d{1,5}"
_DEC = rf"(?:{_INT}\.\d{{1,4}}|\.\d{{1,4}}|{_INT},\d{{1,2}}(?!\d)|{_INT})"
_FRAC = r"\d{1,2}/\d{1,2}"
_MIX = rf"(?:{_INT}[ -]{_FRAC}|{_FRAC}|{_DEC})"
_FT = r"(?:'(?!')|\s?(?:ft|feet|foot|pies|pie)\b\.?)"
_IN_PLACE = (
    "the|it|a|main|front|back|rear|side|street|yard|lawn|grass|dirt|bed|mulch|patio|hall|hallway|house|kitchen|bath|bathroom|master|guest|"
    "laundry|closet|den|garage|drive|driveway|sidewalk|walk|road|alley|city|crawl|basement|slab|concrete|asphalt"
)
"""`20 in grass` is a place, `20 in down` an amount."""
_IN = rf"(?:\"|''|\s?(?:inches|inch|pulgadas|pulgada|pulg)\b\.?|in\b\.?(?!\s+(?:the|it|a)\b)|\sin\b\.?(?!\s+(?:{_IN_PLACE})\b))"
_END = r"(?![\w/]|\.\d)"
_TO = r"\s*(?:-|\.\.\.?|\bto\b|\bthru\b|\bthrough\b|\bhasta\b|\ba\b|\btil\b|\btill\b|\bclear to\b|to(?=\d))\s*"
_PATTERN = re.compile(
    rf"""(?P<phone>\b\d{{3}}[ .-]\d{{4}}\b|\b\d{{3}}[ .-]\d{{3}}[ .-]\d{{4}}\b)
      | (?P<time>\b\d{{1,2}}:\d\d(?::\d\d)?\s?(?:am|pm)?\b)
      | (?P<cross>\b{_DEC}\s?(?:"|in\b)?\s?[x×]\s?{_DEC}\b(?:\s?(?:"|in\b))?)
      | (?P<pct>~?{_DEC}\s?%?(?:\s?(?:-|\.\.|to)\s?{_DEC})?\s?(?:%|pct\b|percent\b|per\s?cent\b|prcnt\b|por\s?ciento\b))
      | (?P<clockwords>\b\d{{1,2}}(?:\s?(?:-|to)\s?\d{{1,2}})?\s?(?:o'?\s?clo?c?k|oclk|oclok|oc\b))
      | (?P<feetin>~?{_INT}\s?(?:'(?!')|(?:ft|feet|foot|pies|pie)\b\.?)\s?-?\s?(?:{_MIX}\s?(?:"|''|\s?(?:inches|inch|in|pulg)\b)|(?:10|11|\d(?:\s?{_FRAC})?){_END}(?!\s?(?:'|%|ft|feet|foot|in\b|pct|°|deg))))
      | (?P<feetrange>~?{_DEC}{_FT}?{_TO}~?{_DEC}{_FT}(?!\d))
      | (?P<inchrange>{_MIX}\s?-\s?{_MIX}{_IN})
      | (?P<feet>~?{_MIX}{_FT})
      | (?P<inch>~?{_MIX}{_IN})
      | (?P<deg>{_DEC}\s?(?:°|degrees?\b|deg\b|grados\b))
      | (?P<metric>{_DEC}\s?(?:mm|cm|m)\b)
      | (?P<range>~?{_DEC}{_TO}~?{_DEC}(?![\w/]|\.\d)(?!\s?(?:'|"|ft\b|in\b)\s?\d?))
      | (?P<frac>{_FRAC}{_END})
      | (?P<mixed>{_INT}[ -]{_FRAC}{_END})
      | (?P<num>~?{_DEC})(?P<ish>ish\b)?
      | (?P<word>[^\W\d_]+(?:['./&-][^\W\d_]+)*\.?)
      | (?P<mark>[,;:&+>?=!#@~/-]|→)
      | (?P<other>\S)""",
    re.VERBOSE | re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class Token:
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


def fold(text: str) -> str:
    """Lower case, without accents and apostrophes inside words; as long as the text."""
    plain = plain_marks(text)
    out = []
    for c in plain:
        low = unicodedata.normalize("NFD", c)[0].lower() if c not in _VULGAR else c
        out.append(" " if c.isspace() else low if len(low) == 1 else c)
    return "".join(out)


def _value(text: str) -> float:
    text = text.strip("~ ").replace(",", ".")
    parts = re.split(r"[ -]", text) if "/" in text else [text]
    try:
        return float(sum(Fraction(p) for p in parts if p))
    except (ValueError, ZeroDivisionError):
        return 0.0


def _spoken(match: re.Match[str]) -> str:
    text = match.group().lower()
    if _ONE.match(text) and text.strip() == "one":
        return match.group()
    whole, _, part = text.partition(" point ")
    half = ""
    for word, value in (("half", ".5"), ("quarter", ".25")):
        if re.search(rf" and (?:a |one )?{word}$", whole):
            whole, half = re.sub(rf" and (?:a |one )?{word}$", "", whole), value
    total = last = 0
    for word in re.split(r"[ -]", whole):
        count = _SPOKEN.get(word, 0)
        if word == "hundred":
            total = max(total, 1) * 100
        elif word == "and":
            continue
        elif count < 10 and 20 <= last <= 90:
            total += count
        elif last and count >= 10 and total < 100 and last >= 10:
            return match.group()  # `twenty thirty` is no number
        elif last and last < 20:
            return match.group()
        else:
            total += count
        last = 0 if word == "hundred" else count
    if part:
        return f"{total}.{''.join(str(_SPOKEN[w]) for w in part.split())}"
    return f"{total}{half}"


def normal(text: str) -> str:
    """The line with spoken numbers and inches in digits; what it means does not change.

    >>> normal("thirty one and a half roots light"), normal("offset about an inch 44")
    ('31.5 roots light', 'offset about 1" 44')
    """
    text = fold(text)
    for sign, words in _VULGAR.items():
        text = re.sub(rf"(\d)\s?{sign}", rf"\1 {words}", text).replace(sign, words)
    for pattern, new in _WORD_INCHES:
        text = pattern.sub(new, text)
    text = _ES_NUMBER.sub(lambda m: str(_ES[m[1]] + (_ES.get(m[2], 1) if m[2] else 0)), text)
    text = _TWO_WAY.sub("twoway", text)
    text = _AND_A_HALF.sub(lambda m: m[1] + {"half": ".5", "quarter": ".25"}[m[2].lower()], text)
    for pattern, new in _WORDS_FOR:
        text = pattern.sub(new, text)

    def number(match: re.Match[str]) -> str:
        alone = match.group().strip().lower()
        if alone in ("one", "zero") and (_ONE.match(text, match.start()) or _ZERO.match(text, match.start())):
            return match.group()
        if re.match(r"(?:thirds?|quarters?|fourths?)\b", text[match.end() :].lstrip()):
            return match.group()
        return _spoken(match)

    return _SPOKEN_NUMBER.sub(number, text)


def tokens(text: str) -> list[Token]:
    """All of the line, in order. `text` has gone through `normal`.

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
        apart = _LARGE_AND_FRACTION.match(text, at) if match.lastgroup == "inch" else None
        if apart:  # `33 1/2" offset`: a reading and half an inch
            match = _PATTERN.match(text, at, apart.end(1))
            assert match is not None
        out.append(_token(match))
        at = match.end()
    return out


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
        feet, rest = re.split(r"'|(?:ft|feet|foot|pies|pie)\b\.?", text, maxsplit=1, flags=re.IGNORECASE)
        inches = re.findall(_MIX, rest)
        inch = _value(inches[-1]) if inches else 0.0
        spaced = bool(re.search(r"(?:ft|feet|foot|')\.?\s", text)) and bool(re.search(r"\d\s?(?:\"|in)", rest))
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
        unit = {"mm": 0.001, "cm": 0.01}.get(re.sub(r"[\d., ~]", "", text).lower(), 1.0)
        return made("ft", _value(re.findall(_DEC, text)[0]) * unit / 0.3048)
    if kind == "range":
        pair = [_value(p) for p in re.findall(_DEC, text.replace("..", " "))]
        return made("range", pair[0], pair[-1], tight=bool(re.fullmatch(rf"~?{_DEC}-{_DEC}", text)))
    if kind in ("frac", "mixed"):
        return made("frac" if kind == "frac" else "num", _value(text))
    if kind == "num":
        return made("num", _value(re.sub("ish$", "", text)))
    return Token(kind, text, at, end)
