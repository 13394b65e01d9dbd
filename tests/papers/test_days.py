"""The strip of days adds up to the days on site, to the half day."""

from dataclasses import replace
from decimal import Decimal

import pytest

from estimator.model.offer import DaySpan
from estimator.model.say import Say
from estimator.papers import option_words
from estimator.papers.example import example_quote
from estimator.papers.letter import Letter

PIPE = Say.of("work on the pipe")


def strip(*lengths: str) -> list[str]:
    start, spans = Decimal(0), []
    for length in map(Decimal, lengths):
        spans.append(DaySpan(start=start, length=length, text=PIPE))
        start += length
    quote = example_quote()
    letter = Letter(quote, "en_US")
    texts = option_words.day_texts(letter, replace(quote.options[0], day_spans=tuple(spans)))
    return [text.partition(":")[0] for text in texts]


@pytest.mark.parametrize(
    ("lengths", "said"),
    [
        (("2", "1"), ["Days 1 to 2", "Day 3"]),
        (("2.5", "1"), ["Days 1 to 3, until midday", "Days 3 to 4, midday to midday"]),
        (("2.5", "0.5"), ["Days 1 to 3, until midday", "Day 3, from midday"]),
        (("0.5", "1.5"), ["Day 1, until midday", "Days 1 to 2, from midday"]),
        (("0.5",), ["Day 1, until midday"]),
        (("1.00", "1.0"), ["Day 1", "Day 2"]),
    ],
)
def test_halves_are_told_and_no_day_is_told_twice_over(lengths: tuple[str, ...], said: list[str]) -> None:
    assert strip(*lengths) == said
