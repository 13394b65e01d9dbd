"""A line in, how the papers name it and count its feet out."""

from estimator.model.line import Line
from estimator.model.stretch import Stretch
from estimator.papers.letter import Letter
from estimator.quote import where
from estimator.wording.numbers import inches
from estimator.wording.plain import LINES, PIPES, in_plain_words
from estimator.wording.say import capital


def title(letter: Letter, line: Line) -> str:
    name, pipe = in_plain_words(LINES, line.name), in_plain_words(PIPES, line.pipe)
    text = letter.speak("{name}: {size}-inch {pipe}", name=name, size=inches(line.size_in), pipe=pipe)
    return capital(text)


def counted_from(letter: Letter, line: Line) -> str:
    return letter.speak("Feet counted from {point}.", point=where.counted_from(line))


def as_counted(letter: Letter, line: Line, at_ft: float) -> str:
    """How far along a place is, counted as the feet of its line are."""
    return letter.say(where.distance(line, Stretch(at_ft, at_ft)))
