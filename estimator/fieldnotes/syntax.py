"""The text of a job file comes in; its tables and the place of every key, or what broke it, go out."""

import re
import tomllib
from collections.abc import Mapping
from decimal import Decimal
from typing import Any

from estimator.fieldnotes.places import Path, Spot, positions
from estimator.model.frozen import Frozen
from estimator.model.problem import Place, Problem, error
from estimator.model.say import Say

LOG_ENDS_EARLY = error(
    "job/log-ends-early",
    "your log ends too early at line {line}: a {quotes} inside it closes it.",
    'Put the log into a file of its own (log = "main.txt"), or write 3in instead of the marks.',
)
MARKS_IN_VALUE = error(
    "job/marks-in-value",
    "the inch mark ends the text too early.",
    "In keys write `2 ft 6 in` or `2'6` (the inch mark may be left out after a foot mark).",
)
BROKEN = error(
    "job/toml",
    "the file cannot be read from here on: {reason}.",
    "Write one `key = value` a line, text in double quotes; nothing after this line was read.",
)
PROBLEMS = (LOG_ENDS_EARLY, MARKS_IN_VALUE, BROKEN)

_AT = re.compile(r"\s*\(at (?:line (\d+), column (\d+)|end of document)\)$")
_MARK_IN_VALUE = re.compile(r"""=\s*"[^"\n]*\d\s?['’]?\s?\d*\s?(?:\d/\d)?"(?=\s*"|[^"\n]*\S)""")


class Document(Frozen):
    """A job file that is good TOML. `place` finds the nearest thing written for a path."""

    file: str
    text: str
    data: Mapping[str, Any]
    spots: Mapping[Path, Spot]

    def place(self, *path: str | int) -> Place:
        while path:
            if spot := self.spots.get(path):
                return Place(self.file, spot.line, spot.column)
            path = path[:-1]
        return Place(self.file, 1, 1)


def parse(text: str, file: str) -> Document | Problem:
    """Good TOML, or the one problem that a syntax error is."""
    plain = text.replace("\r\n", "\n")
    if (deep := too_deep(plain)) is not None:
        return BROKEN(Place(file, deep, 1), reason=Say.of("it holds more brackets or dots in a key than any job has"))
    try:
        data = tomllib.loads(plain, parse_float=Decimal)
    except tomllib.TOMLDecodeError as problem:
        return _explained(plain, file, str(problem))
    except (RecursionError, ValueError, ArithmeticError):
        return BROKEN(Place(file, 1, 1), reason=Say.of("it holds more brackets or digits than any job has"))
    return Document(file, plain, data, positions(plain))


MOST_DOTS, MOST_BRACKETS = 8, 40
_KEY = re.compile(r"^[ \t]*\[{0,2}[ \t]*((?:[\w\"'-]+[ \t]*\.[ \t]*)+[\w\"'-]+)", re.MULTILINE)


def too_deep(text: str) -> int | None:
    """The line of the first key with too many dots or of brackets in brackets; None where a reader may be let in.

    A reader of TOML takes minutes and gigabytes over 60 kB of either.

    >>> too_deep("[house]\\nfloor = 'slab'"), too_deep("a." * 9 + "b = 1"), too_deep("x = " + "[" * 50)
    (None, 1, 1)
    """
    for key in _KEY.finditer(text):
        if key[1].count(".") > MOST_DOTS:
            return text.count("\n", 0, key.start(1)) + 1
    nest = re.search(rf"(?:[\[{{]\s*){{{MOST_BRACKETS}}}", text)
    inline = re.search(rf"(?:[\[{{][^\[\]{{}}\n]*){{{MOST_BRACKETS}}}", text) if nest is None else nest
    return None if inline is None else text.count("\n", 0, inline.start()) + 1


def _explained(text: str, file: str, message: str) -> Problem:
    match = _AT.search(message)
    reason = (message[: match.start()] if match else message).rstrip(".").lower()
    lines = text.split("\n")
    line, column = (int(match[1]), int(match[2])) if match and match[1] else (len(lines), len(lines[-1]) + 1)
    if early := _closed_inside(lines, line):
        return LOG_ENDS_EARLY(Place(file, early[0], early[1]), line=early[0], quotes=early[2])
    written = lines[line - 1] if line <= len(lines) else ""
    if _MARK_IN_VALUE.search(written):
        return MARKS_IN_VALUE(Place(file, line, column))
    return BROKEN(Place(file, line, column), reason=reason)


def _closed_inside(lines: list[str], error_line: int) -> tuple[int, int, str] | None:
    """The place of three quote marks that closed a long text in the middle of a line of it, before the error."""
    opened = ""
    last: tuple[int, int, str] | None = None
    for number, line in enumerate(lines[:error_line], start=1):
        for match in re.finditer(r"'''|\"\"\"", line):
            if not opened:
                opened, last = match.group(), None
            elif match.group() == opened:
                opened = ""
                inside = bool(line[: match.start()].strip()) and line[: match.start()].lstrip()[:1].isdigit()
                last = (number, match.start() + 1, match.group()) if inside else None
    return last
