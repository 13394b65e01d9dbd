"""The picture of each line as coloured cells with words, and its side view to scale as a chart."""

from estimator.model.line import Line
from estimator.papers.letter import Letter
from estimator.papers.page import Page
from estimator.papers.segments import Segment, segments
from estimator.papers.side_view import side_view
from estimator.sheets.book import Cell, Sheet
from estimator.wording.numbers import feet, inches
from estimator.wording.plain import FINDINGS, PIPES, ZONES, in_plain_words

PLACE_WIDTH, STATE_WIDTH, LETTER_WIDTH = 30.0, 40.0, 7.0


def pipe_sheet(letter: Letter) -> Sheet:
    """All lines, one under another."""
    options, speak = letter.quote.options, letter.speak
    page = Page(speak("Your pipe"), (PLACE_WIDTH, STATE_WIDTH, *(LETTER_WIDTH for _ in options)))
    letter.head(page)
    page.line(speak("A picture of your pipe"), "title")
    page.line(
        speak(
            "Each row is a piece of the pipe, in the order the camera went. Red is broken, yellow to watch, dashed was not seen. A coloured letter: that option renews this piece."
        )
    )
    page.gap()
    for line in letter.quote.job.lines:
        _line(letter, page, line)
    return letter.close(page)


def _line(letter: Letter, page: Page, line: Line) -> None:
    speak, options = letter.speak, letter.quote.options
    page.line(
        speak(
            "{name}: {size} inch {pipe}",
            name=line.name,
            size=inches(line.size_in),
            pipe=in_plain_words(PIPES, line.pipe),
        ),
        "heading",
    )
    page.add(
        Cell(speak("Where"), "head"),
        Cell(speak("The pipe there"), "head"),
        *(Cell(o.letter, "head centre") for o in options),
    )
    for piece in segments(line, options):
        marks = (
            Cell(o.letter, "segment done") if o.letter in piece.renewed else Cell("", "segment none") for o in options
        )
        page.add(Cell(place(letter, piece), ground(piece)), Cell(state(letter, piece), colour(piece)), *marks)
    page.gap()
    side_view(letter, page, line)


def place(letter: Letter, piece: Segment) -> str:
    """From which foot to which, and under what."""
    speak = letter.speak
    span = speak(
        "{start} to {end}",
        start=feet(piece.stretch.from_ft, letter.language),
        end=feet(piece.stretch.to_ft, letter.language),
    )
    where = [span]
    if piece.zone:
        where.append(letter.say(in_plain_words(ZONES, piece.zone)))
    return ", ".join([*where, piece.room] if piece.room else where)


def state(letter: Letter, piece: Segment) -> str:
    """What is wrong there, or that nothing was seen."""
    speak = letter.speak
    if piece.findings:
        named = dict.fromkeys(
            letter.say(in_plain_words(FINDINGS, f.kind))
            + (f" ({speak('suspected')})" if f.grade == "suspected" else "")
            for f in piece.findings
        )
        text = "; ".join(named)
        return text if piece.filmed else f"{text} ({speak('not seen by the camera')})"
    return speak("nothing wrong seen") if piece.filmed else speak("not seen by the camera")


def colour(piece: Segment) -> str:
    if piece.findings:
        serious = {"hole", "collapse", "gap", "channel", "crack", "leak", "reverse fall", "backfall"}
        bad = any(f.kind in serious and f.grade != "suspected" for f in piece.findings)
        return "segment bad" if bad else "segment watch"
    return "segment good" if piece.filmed else "segment unseen"


def ground(piece: Segment) -> str:
    return "segment slab" if piece.zone in ("slab", "drive", "walk", "street", "basement") else "segment ground"
