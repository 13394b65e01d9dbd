"""Lines written from their meaning in many ways (`said.py`): each is read as it was meant, or asked; never another meaning in silence."""

from said import line, verdict

LINES = 1500
LEAST_RIGHT = 0.95
FIRST = 20_000
"""Seeds of lines that nothing was mended against."""


def test_a_meaning_in_any_words_is_read_so_or_asked() -> None:
    found = [(said := line(FIRST + n), *verdict(said)) for n in range(LINES)]
    assert [(said.text, said.rows, read) for said, how, read in found if how == "wrong"] == []
    assert sum(how == "right" for _, how, _ in found) / LINES >= LEAST_RIGHT
