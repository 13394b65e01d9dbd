"""A log line as typed in; the same in lower case, with spoken numbers, shares and inches in digits, out."""

import re
import unicodedata
from collections.abc import Iterable

from estimator.fieldnotes.skeleton import with_vowels
from estimator.model.lengths import plain_marks

_UNITS = ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"]  # fmt: skip
_TENS = ["zero", "ten", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"]
_SPOKEN = {w: n for n, w in enumerate(_UNITS)} | {w: n * 10 for n, w in enumerate(_TENS) if n > 1}
_SLIPS = (
    (re.compile(r"\bfou?rth?ys?\b|\bfourty"), "forty"), (re.compile(r"\bnin(?:ty|tey|ety)"), "ninety"), (re.compile(r"\beig(?:th|ht|t)y"), "eighty"),
    (re.compile(r"\btwen(?:ny|ey|tey)"), "twenty"), (re.compile(r"\bthir(?:dy|tey|y)\b"), "thirty"), (re.compile(r"\bfi(?:ve|f|fe)ty"), "fifty"),
    (re.compile(r"\bforteen\b"), "fourteen"), (re.compile(r"\bfiveteen\b"), "fifteen"), (re.compile(r"\beightteen\b"), "eighteen"),
    (re.compile(rf"\b({'|'.join(_TENS[2:])})({'|'.join(_UNITS[1:10])})\b"), r"\1 \2"),
    (re.compile(rf"\b({'|'.join(_TENS[2:])})[ -]too(?= [a-z])"), r"\1 two"), (re.compile(rf"\b({'|'.join(_TENS[2:])})[ -]won\b"), r"\1 one"),
    (re.compile(rf"\b({'|'.join(_TENS[2:])})[ -](?:forth|fore)\b"), r"\1 four"),
)  # fmt: skip
"""Spoken numbers as they are misspelt or run together: `fourty two`, `thirtyfive`."""
_SPOKEN_WORD = "|".join(sorted(_SPOKEN, key=len, reverse=True))
_SPOKEN_NUMBER = re.compile(
    rf"\b(?:{_SPOKEN_WORD})(?:[ -](?:hundred|(?:and )?(?:{_SPOKEN_WORD}))\b)*(?: point(?: (?:{_SPOKEN_WORD})\b)+| and (?:a |one )?(?:half|quarter)\b)?\b",
    re.IGNORECASE,
)
_ONE = re.compile(r"one\b(?!\s*(?:inch|in\b|ft|feet|foot|percent|pct|and a))", re.IGNORECASE)
_ZERO = re.compile(r"zero\b(?!\s*(?:inch|ft|feet|foot|yard|slab))", re.IGNORECASE)
_WORD_INCHES = (
    (re.compile(r"\b(?:an? |one )?inch and (?:a |one )?half\b", re.IGNORECASE), '1.5"'),
    (re.compile(r"\b(?:an? |one )?inch and (?:a |one )?quarter\b", re.IGNORECASE), '1.25"'),
    (re.compile(r"\b(?:an? |one )?inch and three quarters?\b", re.IGNORECASE), '1.75"'),
    (
        re.compile(
            r"\b(?:a |one )?half (?:an? )?(?:inch|in\b(?! (?:the|a|it|its)\b))|\bhalf inch\b|\bmedia pulgada\b",
            re.IGNORECASE,
        ),
        '0.5"',
    ),
    (re.compile(r"\bthree quarters? (?:of )?(?:an? )?inch\b|\bthree quarter inch\b", re.IGNORECASE), '0.75"'),
    (
        re.compile(
            r"\b(?:a |one )?quarter (?:of )?(?:an? )?inch\b|\bquarter in\b(?! (?:the|a|it|its)\b)", re.IGNORECASE
        ),
        '0.25"',
    ),
    (re.compile(r"\ban inch\b|\ba inch\b|\buna pulgada\b", re.IGNORECASE), '1"'),
    (re.compile(r"\b(?:a )?couple (?:of )?inch(?:es)?\b", re.IGNORECASE), '2"'),
)
_IN_WATER = re.compile(r"(?<![\d./-])([1-7](?:\.\d+)?(?:[ -]\d/\d)?|\d/\d) in (?=(?:of )?(?:water|wtr)\b)")
"""`35-45 1 in water`: inches, where the line has its footage besides."""
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
    (re.compile(r"(?<=[^\W\d]) ?[-=]*[>→] ?(?=[^\W\d])"), " to "),  # an arrow between words
    (
        re.compile(r"^(ends?|ended|stops?|stopped) (?:at )?(\d[\d.]*) ?(?:ft\b|feet\b|')? ?(?=at (?:the )?[a-z])"),
        r"\2 \1 ",
    ),
    (re.compile(r"\b(pvc|abs) (?:sch|sched|schedule)\.? ?(?:40|80)\b"), r"\1"),
    (re.compile(r"\bsch(?:ed(?:ule)?)?\.? ?(?:40|80)\b(?! pvc| abs)"), "pvc"),
    (re.compile(r"\b(?:tap|tree) (?=roots?\b)"), ""),
    (re.compile(r"(?<=[a-z] )x ?([2-9])\b(?! ?(?:in\b|[\"'x]))"), r"\1 places"),
    (re.compile(r"(?<=\d\d )x ?([2-9])\b(?! ?(?:in\b|[\"'x.]))(?=$| [a-z])"), r"\1 places"),
    (re.compile(r"(\d) ?: (?=off\b)"), r"\1 "),
    (re.compile(r"\ba (foot|ft)\b"), "1 ft"),
    (re.compile(r"\b(?:h2o|wtr|watr)\b"), "water"),
    (re.compile(r"\bflr (?=drn|drain)"), "floor "),
    (re.compile(r"\bdrn\b"), "drain"),
    (re.compile(r"\bagn\b"), "again"),
    (re.compile(r"\boutta\b"), "out of"),
    (re.compile(r"(?<=[\w\"'%.,] )an(?= [b-df-gj-np-tv-z])"), "and"),  # the article stands before a vowel
    (re.compile(r"\b(?:de|desde) las (\d{1,2}) (?:a|hasta) las (\d{1,2})\b"), r"\1-\2 oclock"),
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
_SENTENCE = re.compile(
    r"((?<!\w)(?!approx|conc\b|galv|abnd|elev|prop\b|elec)[^\W\d_]{4,}|[\d.,']*\d['\"%]?|(?:ft|feet|pies|in|inch|pulg)(?=\. (?:en|at|@|a los|\d)))\. (?=\S)"
)
_TWO_WAY = re.compile(r"\b(?:2|two)[ -]?way\b", re.IGNORECASE)
_VULGAR = {"¼": "1/4", "½": "1/2", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8", "⅓": "1/3", "⅔": "2/3"}


def fold(text: str) -> str:
    """Lower case, without accents and apostrophes inside words; as long as the text."""
    plain = plain_marks(text)
    out = []
    for c in plain:
        low = unicodedata.normalize("NFD", c)[0].lower() if c not in _VULGAR else c
        out.append(" " if c.isspace() else low if len(low) == 1 else c)
    return "".join(out)


def _spoken(match: re.Match[str]) -> str:
    text = match.group().lower()
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


_OPENS = re.compile(
    r"^(?:(?:so|well|alright|um+|uh+|yeah|yep|oh|hey|and|also|ok(?:ay)?(?![ ,]+(?:to|here|thru|til|till|until|from|at|in|on|so)\b))\b[ ,.:-]+)+"
    r"(?=.*[a-z]{2})"
)
"""What a spoken sentence begins with."""
_PARTED = re.compile(r" / |(?<=[a-z%\"')]) -+ (?=[a-z]|\d[\d.-]* ?(?:%|pct|in\b|\"))")
"""A stroke or a dash with room on both sides parts a line as a comma does: `holding 1in / grease light`."""


def normal(text: str, names: Iterable[str] = ()) -> str:
    """The line with the vowels of its words, spoken numbers and inches in digits; what it means does not change.

    >>> normal("thirty one and a half roots light"), normal("offset about an inch 44")
    ('31.5 roots light', 'offset about 1" 44')
    """
    text = _OPENS.sub("", " ".join(fold(text).split()).rstrip(" .,"))
    text = _SENTENCE.sub(r"\1, ", _PARTED.sub(", ", text))
    text = with_vowels(text, (word for name in names for word in fold(name).split()))
    for sign, words in _VULGAR.items():
        text = re.sub(rf"(\d)\s?{sign}", rf"\1 {words}", text).replace(sign, words)
    text = re.sub(r"(?<![\w'.])n(?![\w'.])|\ban(?= a (?:half|quarter)\b)", "and", text)
    for pattern, new in _SLIPS:
        text = pattern.sub(new, text)
    for pattern, new in _WORD_INCHES:
        text = pattern.sub(new, text)
    text = _IN_WATER.sub(lambda m: f'{m[1]}" ' if re.search(r"\d", text[: m.start()] + text[m.end() :]) else m[0], text)
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
