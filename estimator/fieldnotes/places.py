"""A TOML text that reads well comes in; the line and column of every key and value in it go out.

The standard reader gives values without places, so this small scanner walks the same text once more.
"""

import re

from estimator.model.frozen import Frozen

Path = tuple[str | int, ...]

_BARE = re.compile(r"[A-Za-z0-9_-]+")
_SPACE = re.compile(r"(?:[ \t\r\n]|#[^\n]*)*")
_BLANK = re.compile(r"[ \t]*")
_SCALAR = re.compile(r"[^,\]}#\n\r]+")
_ESCAPED = re.compile(r"\\(u[0-9A-Fa-f]{4}|U[0-9A-Fa-f]{8}|.)", re.DOTALL)
_ESCAPES = {"b": "\b", "t": "\t", "n": "\n", "f": "\f", "r": "\r", '"': '"', "\\": "\\", "e": "\x1b"}


class Spot(Frozen):
    """Line and column, both from 1, of a key and of its value."""

    line: int
    column: int
    value_line: int
    value_column: int


class _Scanner:
    def __init__(self, text: str) -> None:
        self.text = text
        self.at = 0
        self.spots: dict[Path, Spot] = {}
        self.counts: dict[Path, int] = {}
        self.starts = [0, *(m.end() for m in re.finditer("\n", text))]

    def place(self, at: int) -> tuple[int, int]:
        import bisect

        line = bisect.bisect_right(self.starts, at)
        return line, at - self.starts[line - 1] + 1

    def note(self, path: Path, key_at: int, value_at: int) -> None:
        self.spots.setdefault(path, Spot(*self.place(key_at), *self.place(value_at)))

    def skip(self, pattern: re.Pattern[str]) -> None:
        match = pattern.match(self.text, self.at)
        self.at = match.end() if match else self.at

    def document(self) -> None:
        base: Path = ()
        while True:
            self.skip(_SPACE)
            if self.at >= len(self.text):
                return
            if self.text[self.at] == "[":
                base = self.header()
            else:
                self.pair(base)

    def header(self) -> Path:
        start = self.at
        many = self.text.startswith("[[", self.at)
        self.at += 2 if many else 1
        keys = self.keys()
        self.at = self.text.index("]", self.at) + (2 if many else 1)
        path: Path = ()
        for number, key in enumerate(keys):
            path = (*path, key)
            last = number == len(keys) - 1
            if last and many:
                self.counts[path] = self.counts.get(path, 0) + 1
                self.note(path, start, start)
            if path in self.counts:
                path = (*path, self.counts[path] - 1)
            self.note(path, start, start)
        return path

    def keys(self) -> list[str]:
        out = []
        while True:
            self.skip(_BLANK)
            if self.text[self.at] in "\"'":
                out.append(self.string())
            else:
                match = _BARE.match(self.text, self.at)
                assert match is not None  # the standard reader took it
                out.append(match.group())
                self.at = match.end()
            self.skip(_BLANK)
            if self.text[self.at : self.at + 1] != ".":
                return out
            self.at += 1

    def pair(self, base: Path) -> None:
        start = self.at
        keys = self.keys()
        self.at += 1  # the =
        self.skip(_BLANK)
        path = base
        for key in keys:
            path = (*path, key)
            self.note(path, start, self.at)
        self.value(path)

    def value(self, path: Path) -> None:
        first = self.text[self.at]
        if first in "\"'":
            self.string()
        elif first == "[":
            self.array(path)
        elif first == "{":
            self.inline(path)
        else:
            self.skip(_SCALAR)

    def array(self, path: Path) -> None:
        self.at += 1
        number = 0
        while True:
            self.skip(_SPACE)
            if self.text[self.at] == "]":
                self.at += 1
                return
            if self.text[self.at] == ",":
                self.at += 1
                continue
            here = (*path, number)
            self.note(here, self.at, self.at)
            self.value(here)
            number += 1

    def inline(self, path: Path) -> None:
        self.at += 1
        while True:
            self.skip(_SPACE)
            if self.text[self.at] == "}":
                self.at += 1
                return
            if self.text[self.at] == ",":
                self.at += 1
                continue
            self.pair(path)

    def string(self) -> str:
        quote = self.text[self.at]
        if self.text.startswith(quote * 3, self.at):
            return self.long_string(quote)
        start = self.at = self.at + 1
        while self.text[self.at] != quote:
            self.at += 2 if quote == '"' and self.text[self.at] == "\\" else 1
        body = self.text[start : self.at]
        self.at += 1
        return _unescaped(body) if quote == '"' else body

    def long_string(self, quote: str) -> str:
        start = self.at = self.at + 3
        while not self.text.startswith(quote * 3, self.at):
            self.at += 2 if quote == '"' and self.text[self.at] == "\\" else 1
        while self.text.startswith(quote * 4, self.at):  # up to two quotes may belong to the text
            self.at += 1
        body = self.text[start : self.at]
        self.at += 3
        return body


def _unescaped(body: str) -> str:
    def one(match: re.Match[str]) -> str:
        code = match.group(1)
        return chr(int(code[1:], 16)) if code[0] in "uU" and len(code) > 1 else _ESCAPES.get(code, code)

    return _ESCAPED.sub(one, body)


def positions(text: str) -> dict[Path, Spot]:
    """The place of every table, key and array member of a text that tomllib reads.

    >>> positions('[job]\\nnumber = "7"')[("job", "number")]
    Spot(line=2, column=1, value_line=2, value_column=10)
    """
    scanner = _Scanner(text)
    scanner.document()
    return scanner.spots
