"""Options with their unknowns in, lines about what the next visit is worth out: dollars moved, and what to find out."""

from collections.abc import Iterable, Sequence

from estimator.cli.views.screen import Row
from estimator.cli.views.table import indented, table
from estimator.cli.views.words import ENGLISH, dollars, sentence
from estimator.model.offer import Option
from estimator.studies.sensitivity import Unknown
from estimator.wording.say import speaker

Found = Sequence[tuple[Option, tuple[Unknown, ...]]]


def rows(found: Found, columns: int, language: str = ENGLISH) -> list[Row]:
    """A block an option; one line when nothing moves its price."""
    return [row for option, unknown in found for row in _option(option, unknown, columns, language)]


def _option(option: Option, unknown: Sequence[Unknown], columns: int, language: str) -> Iterable[Row]:
    speak = speaker(language)
    price = dollars(option.price.total, whole=True, language=language)
    head = f"{option.letter}  {sentence(option.title, language)}, {price}"
    yield from (Row(text, "head") for text in indented(head, columns, by=0, hanging=3))
    if not unknown:
        yield Row(speak("Nothing that is still open moves this price."))
    else:
        body = [
            (dollars(u.swing, True, language), sentence(u.what, language), sentence(u.question, language))
            for u in unknown
        ]
        heads = (speak("moves the price by"), speak("what is not known"), speak("what to find out"))
        yield from (Row(text) for text in table(heads, body, columns, right=(0,)))
    yield Row("")


def as_data(found: Found) -> list[dict[str, object]]:
    """The same for --json; dollars as text."""
    return [
        {
            "option": option.letter,
            "unknowns": [
                {
                    "what": str(u.what),
                    "low": str(u.low),
                    "high": str(u.high),
                    "swing": str(u.swing),
                    "find out": str(u.question),
                }
                for u in unknown
            ],
        }
        for option, unknown in found
    ]
