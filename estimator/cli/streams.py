"""The output as it was handed over in, one that takes every letter out: plain letters where the terminal has no others."""

import codecs
import os
import sys
import unicodedata
from pathlib import Path
from typing import TextIO

PLAIN = {
    "’": "'", "‘": "'", "“": '"', "”": '"', "′": "'", "″": '"', "–": "-", "—": "-", "−": "-", "‑": "-", "…": "...",
    "×": "x", "÷": "/", "·": ".", "•": "*", "½": "1/2", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "°": " deg", "±": "+/-",
    "≤": "<=", "≥": ">=", "≈": "~", "→": ">", "←": "<", "↑": "^", "↓": "v", "¿": "", "¡": "", "§": "section ",
    "─": "-", "━": "-", "═": "=", "│": "|", "┃": "|", "▔": "#", "▁": "_", "█": "#", "▓": "#", "▒": "+", "░": ".",
    "■": "#", "□": ".",
}  # fmt: skip
"""What a terminal without the sign shows instead; accented letters lose the accent, box corners become a plus."""

HANDLER = "estimator-plain"


def ready_streams() -> None:
    """Make both outputs take whatever is printed; one that was closed before the start is written to nowhere."""
    if sys.stdout is None:
        sys.stdout = _nowhere()
    if sys.stderr is None:
        sys.stderr = _nowhere()
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors=HANDLER)


def _nowhere() -> TextIO:
    return Path(os.devnull).open("w", encoding="utf-8")


def _plainly(error: UnicodeError) -> tuple[str, int]:
    if not isinstance(error, UnicodeEncodeError):
        raise error
    return "".join(map(plain, error.object[error.start : error.end])), error.end


def plain(letter: str) -> str:
    """Return letters of plain ASCII for one that the output has no sign for.

    >>> "".join(map(plain, "3″ × 4½ ft – señal"))
    '3" x 41/2 ft - senal'
    """
    if letter.isascii():
        return letter
    if letter in PLAIN:
        return PLAIN[letter]
    if unicodedata.name(letter, "").startswith("BOX DRAWINGS"):
        return "+"
    return unicodedata.normalize("NFKD", letter).encode("ascii", "ignore").decode() or "?"


codecs.register_error(HANDLER, _plainly)
