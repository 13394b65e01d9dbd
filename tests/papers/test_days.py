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
        (("2", "1"), ["Days 1–2", "Day 3"]),
        (("2.5", "1"), ["Days 1–3", "Days 3–4"]),
        (("2.5", "0.5"), ["Days 1–3", "Day 3 (half day)"]),
        (("0.5", "1.5"), ["Day 1 (half day)", "Days 1–2"]),
        (("0.5",), ["Day 1 (half day)"]),
        (("1.00", "1.0"), ["Day 1", "Day 2"]),
    ],
)
def test_half_days_say_so(lengths: tuple[str, ...], said: list[str]) -> None:
    assert strip(*lengths) == said
