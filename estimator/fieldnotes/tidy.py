"""A log line as typed comes in; the same line in plain marks, whole words goes out, with its columns kept."""

import re
from collections.abc import Callable, Iterable, Mapping
from functools import lru_cache

from estimator.fieldnotes.lexicon import lexicon
from estimator.fieldnotes.words import ALL_SIGNS, BY_NAME, MATERIALS, PLURALS, SURFACES
from estimator.model.frozen import Frozen
from estimator.model.lengths import plain_marks


class Tidied(Frozen):
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


CALLED = re.compile(
    r"\bcalled\s+([^,;]+?)(?=\s*(?:[,;]|$|\?|\s{3,}|\b(?:live|dead|not proven|proven|photo \d|video \d|suspected|loc)\b))",
    re.IGNORECASE,
)
"""A name that somebody gave, up to what else the line says."""
_OFF = re.compile(r"(?<=\d)\s*(?:ft|in)\s+off\s+[a-z][a-z ]*", re.IGNORECASE)
"""Where a tape is held."""


def trade_shortenings() -> Mapping[str, str]:
    """Pure shortenings, which stand for standard words wherever they are: [standard] in fieldnotes/lexicon.toml."""
    return lexicon().standard


def shortening_pattern(words: Iterable[str]) -> re.Pattern[str]:
    """All of the words, longest first, each only where it stands alone. Known words stand for themselves."""
    return _any_of(tuple(words))


@lru_cache(maxsize=64)  # every line of a log asks for those of its log
def _any_of(words: tuple[str, ...]) -> re.Pattern[str]:
    known = (*BY_NAME, *PLURALS, *MATERIALS, *SURFACES, *ALL_SIGNS)
    every = sorted({w.lower() for w in (*words, *known)}, key=len, reverse=True)
    return re.compile(rf"(?<![\w'/])(?:{'|'.join(map(re.escape, every))})(?![\w'])", re.IGNORECASE)


def tidied(line: str) -> Tidied:
    """Curly quotes, long dashes, tabs and no-break spaces made plain, each for one character."""
    plain = "".join(" " if c.isspace() else c for c in plain_marks(line))
    return Tidied(plain, tuple(range(1, len(plain) + 1)))


def standard_words(line: Tidied) -> Tidied:
    """Shortenings of the trade written out, but for a name that somebody gave.

    >>> standard_words(tidied("44 wye called driveway drain")).text
    '44 branch called driveway drain'
    """
    named = CALLED.search(line.text) or _OFF.search(line.text)
    if named is None:
        return whole_words(line, trade_shortenings())
    first, name, rest = (line.cut(*at) for at in ((0, named.start()), named.span(), (named.end(), len(line.text))))
    parts = (standard_words(first), name, standard_words(rest))
    return Tidied("".join(part.text for part in parts), tuple(c for part in parts for c in part.columns))


def whole_words(line: Tidied, shortenings: Mapping[str, str]) -> Tidied:
    """Shortenings written out; a capital L or R alone is a side.

    >>> whole_words(tidied("11.5 wye L 3in"), {"wye": "branch"}).text
    '11.5 branch left 3in'
    """
    meaning = {short.lower(): words for short, words in shortenings.items()}
    line = line.replaced(shortening_pattern(shortenings), lambda m: meaning.get(m.group().lower()))
    return line.replaced(re.compile(r"(?<![\w'])[LR](?![\w'])"), lambda m: {"L": "left", "R": "right"}[m.group()])


def tape_to(to: str) -> str:
    """Return where a tape is held, as a log line says it: `off` before what a depth may be counted from.

    >>> tape_to("front wall"), tape_to("drive")
    ('front wall', 'off drive')
    """
    return f"off {to}" if trade_shortenings().get(last := to.split()[-1].lower(), last) in SURFACES else to
