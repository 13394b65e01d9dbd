"""A log line as typed comes in; the same line in plain marks, whole words and digits goes out, with its columns kept."""

import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from functools import cache, lru_cache

from estimator.fieldnotes.lexicon import lexicon_data
from estimator.fieldnotes.words import ALL_SIGNS, BY_NAME, MATERIALS, PLURALS, SURFACES
from estimator.model.lengths import plain_marks

_UNITS = ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"]  # fmt: skip
_TENS = ["zero", "ten", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"]
SPOKEN: dict[str, int] = {w: n for n, w in enumerate(_UNITS)} | {w: n * 10 for n, w in enumerate(_TENS) if n > 1}
_SPOKEN_WORD = "|".join(sorted(SPOKEN, key=len, reverse=True))
_SPOKEN_NUMBER = (
    rf"(?:{_SPOKEN_WORD})(?:[ -]hundred)?(?:[ -](?:and )?(?:{_SPOKEN_WORD}))*(?: point(?: (?:{_SPOKEN_WORD}))+)?"
)
_SPOKEN_WHERE = re.compile(rf"(?<![\w]){_SPOKEN_NUMBER}(?![\w]|-[A-Za-z])", re.IGNORECASE)
_UNIT_AFTER = re.compile(r"\s*(?:percent|%|inch|inches|in|foot|feet|ft|degrees?|joints|places)\b|\s*%", re.IGNORECASE)
_NUMBER_THEN = re.compile(r"\s*(?:to|-|no|call)?\s*$", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Tidied:
    """`columns[i]` is the column, from 1, where character i of `text` stood in the line as typed."""

    text: str
    columns: tuple[int, ...]

    def column(self, at: int) -> int:
        if not self.columns:
            return 1
        return self.columns[at] if at < len(self.columns) else self.columns[-1] + 1

    def cut(self, start: int, end: int) -> "Tidied":
        return Tidied(self.text[start:end], self.columns[start:end])

    def replaced(self, pattern: re.Pattern[str], new: Callable[[re.Match[str]], str | None]) -> "Tidied":
        """Each match replaced by what `new` gives (None: left as it is); its characters take the column it began at."""
        text: list[str] = []
        columns: list[int] = []
        done = 0
        for match in pattern.finditer(self.text):
            words = new(match)
            if words is None or match.start() < done:
                continue
            text += [self.text[done : match.start()], words]
            columns += [*self.columns[done : match.start()], *([self.column(match.start())] * len(words))]
            done = match.end()
        text.append(self.text[done:])
        columns += self.columns[done:]
        return Tidied("".join(text), tuple(columns))


@cache
def trade_shortenings() -> Mapping[str, str]:
    """Pure shortenings, which stand for standard words wherever they are: [standard] in fieldnotes/lexicon.toml."""
    return {short: meaning for meaning, shorts in lexicon_data()["standard"].items() for short in shorts}


def shortening_pattern(words: Iterable[str]) -> re.Pattern[str]:
    """All of the words, longest first, each only where it stands alone. Known words stand for themselves."""
    return _any_of(tuple(words))


@lru_cache(maxsize=64)  # every line of a log asks for those of its log
def _any_of(words: tuple[str, ...]) -> re.Pattern[str]:
    known = (*BY_NAME, *PLURALS, *MATERIALS, *SURFACES, *ALL_SIGNS)
    every = sorted({w.lower() for w in (*words, *known)}, key=len, reverse=True)
    return re.compile(rf"(?<![\w'/])(?:{'|'.join(map(re.escape, every))})(?![\w'])", re.IGNORECASE)


def _spoken_value(text: str) -> str:
    whole, _, part = text.lower().partition(" point ")
    total = 0
    for word in re.split(r"[ -]", whole):
        total = total * 100 if word == "hundred" else total + SPOKEN.get(word, 0)
    return f"{total}.{''.join(str(SPOKEN[w]) for w in part.split())}" if part else str(total)


def digits_for_words(line: Tidied) -> Tidied:
    """Dictated numbers as digits where a number belongs: at the start, and before percent, inches, feet.

    >>> digits_for_words(tidied("thirty three point three roots forty percent")).text
    '33.3 roots 40%'
    """

    def number(match: re.Match[str]) -> str | None:
        before = line.text[: match.start()]
        starts = not before.strip() or ((before.strip()[0].isdigit() or before.strip().lower() in ("to",)) and bool(
            _NUMBER_THEN.fullmatch(re.sub(r"^[\d.\s~]+", "", before))
        ))  # fmt: skip
        if not (starts or _UNIT_AFTER.match(line.text, match.end())):
            return None
        return _spoken_value(match.group())

    for _ in range(2):  # the second round sees `16 to seventeen` with its first number in digits
        line = line.replaced(_SPOKEN_WHERE, number)
    return line.replaced(re.compile(r"\s*\bper ?cent\b", re.IGNORECASE), lambda _: "%")


def tidied(line: str) -> Tidied:
    """Curly quotes, long dashes, tabs and no-break spaces made plain, each for one character."""
    plain = "".join(" " if c.isspace() else c for c in plain_marks(line))
    return Tidied(plain, tuple(range(1, len(plain) + 1)))


def whole_words(line: Tidied, shortenings: Mapping[str, str]) -> Tidied:
    """Shortenings written out; a capital L or R alone is a side.

    >>> whole_words(tidied("11.5 wye L 3in"), {"wye": "branch"}).text
    '11.5 branch left 3in'
    """
    meaning = {short.lower(): words for short, words in shortenings.items()}
    line = line.replaced(shortening_pattern(shortenings), lambda m: meaning.get(m.group().lower()))
    return line.replaced(re.compile(r"(?<![\w'])[LR](?![\w'])"), lambda m: {"L": "left", "R": "right"}[m.group()])
