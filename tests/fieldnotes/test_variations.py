"""Lines written from their meaning in many ways (`said.py`): each is read as it was meant, or asked; never another meaning in silence.
What a line says besides is told by the reading too, or asked."""

import re

from said import facts, line, read, verdict

LINES, MORE = 1500, 150
LEAST_RIGHT = 0.95
FIRST = 20_000
"""Seeds of lines that nothing was mended against."""
BESIDES = {
    "37%": "37", "1.25in": "1[.]25", "57.5": "57[.]5", "wibble": "wibble", "cannot pass": "cannot pass|stop", "live": "live", "dead": "dead",
    "void": "void",
}  # fmt: skip
"""What is said besides, and what a reading has that tells it already: a cable's end cannot be passed."""


def test_a_meaning_in_any_words_is_read_so_or_asked() -> None:
    found = [(said := line(FIRST + n), *verdict(said)) for n in range(LINES)]
    assert [(said.text, said.rows, read) for said, how, read in found if how == "wrong"] == []
    assert sum(how == "right" for _, how, _ in found) / LINES >= LEAST_RIGHT


def test_whatever_is_said_besides_is_told_or_asked() -> None:
    dropped = []
    for said in (line(FIRST + n) for n in range(MORE)):
        rows = read(said.text)[1]
        for more, told in BESIDES.items() if rows and ";" not in said.text else ():
            for text in (f"{said.text} {more}", f"{more} {said.text}", f"{said.text}, {more}"):
                now = read(text)[1]
                same = now is not None and sorted(facts(now), key=str) == sorted(facts(rows), key=str)
                if (same or now == ()) and not re.search(told, " ".join(rows)):
                    dropped.append((text, now))
    assert dropped == []
