"""The picture of each line as coloured cells with words, its side view to scale, and the figures behind the view."""

from collections.abc import Sequence

from estimator.model.judgement import Need
from estimator.model.line import Line
from estimator.model.offer import Option
from estimator.papers.letter import Letter
from estimator.papers.page import Page
from estimator.papers.segments import Segment, all_repairs, gives_up, segments
from estimator.papers.side_view import side_view
from estimator.sheets.book import Cell, Sheet
from estimator.wording.found import in_words
from estimator.wording.numbers import feet, inches
from estimator.wording.plain import LINES, PIPES, ROOMS, ZONES, in_plain_words

PLACE_WIDTH, STATE_WIDTH, LETTER_WIDTH = 36.0, 40.0, 7.0
MANY, NARROW = 5, (32.0, 34.0, 3.4)  # options, and the same widths where there are more of them
FIGURE_WIDTHS = (30.0, 24.0, 24.0)
VIEW_WIDTHS = (28.0, 28.0, 28.0)
FIGURES_SCALE = 71  # of the size on the screen: nobody reads them but who doubts the picture
UNSURE = frozenset({"suspected", "not inspected"})
HARD_GROUND = ("slab", "drive", "walk", "street", "basement")


def pipe_sheets(letter: Letter) -> tuple[Sheet, ...]:
    """The coloured cells of all lines; the side views; and the figures that these are drawn from, if any is drawn."""
    speak = letter.speak
    page = Page(speak("Your pipe"), _widths(len(letter.quote.options)))
    letter.head(page)
    page.line(speak("A picture of your pipe"), "title")
    page.line(
        speak(
            "Each row is a piece of the pipe, in the order the camera went. Red must be put right. Yellow: something was found that may stay, or is only suspected. A box with a dashed edge was not seen. A letter on color: that option renews this piece."
        )
    )
    if any(gives_up(r) for o in letter.quote.options for r in all_repairs(o.scope.repairs)):
        page.line(
            speak("A letter on gray: that option takes another way, and this piece is capped and left in the ground.")
        )
    for line in letter.quote.job.lines:
        _line(letter, page, line)
    return letter.close(page), *_views(letter)


def _widths(options: int) -> tuple[float, ...]:
    place, state, one = NARROW if options > MANY else (PLACE_WIDTH, STATE_WIDTH, LETTER_WIDTH)
    return (place, state, *(one for _ in range(options)))


def _views(letter: Letter) -> tuple[Sheet, ...]:
    """The side views, each whole on its page, and their figures."""
    speak = letter.speak
    page, figures = Page(speak("Side views"), VIEW_WIDTHS), Page(speak("Figures"), FIGURE_WIDTHS)
    figures.line(speak("The figures behind the side views"), "title")
    figures.add(
        Cell(speak("What"), "head"),
        Cell(speak("Feet along the pipe"), "head right"),
        Cell(speak("Feet above ground"), "head right"),
    )
    for line in letter.quote.job.lines:
        page.heading(title(letter, line), starts=True)
        page.line(counted_from(letter, line), "quiet")
        side_view(letter, page, figures, line)
    if not page.charts:
        return ()
    return letter.close(page), letter.close(figures, repeat=(1, 1), scale=FIGURES_SCALE)


def title(letter: Letter, line: Line) -> str:
    name, pipe = in_plain_words(LINES, line.name), in_plain_words(PIPES, line.pipe)
    text = letter.speak("{name}: {size} inch {pipe}", name=name, size=inches(line.size_in), pipe=pipe)
    return text[:1].upper() + text[1:]


def _line(letter: Letter, page: Page, line: Line) -> None:
    speak, options = letter.speak, letter.quote.options
    page.heading(title(letter, line), starts=True)
    page.line(counted_from(letter, line), "quiet")
    letters = (Cell(o.letter, "head centre") for o in options)
    page.add(Cell(speak("Where"), "head"), Cell(speak("The pipe there"), "head"), *letters)
    needs = tuple(n for n in letter.quote.diagnosis.needs if n.line == line.name)
    for piece in segments(line, options):
        marks = (_mark(letter, o, piece) for o in options)
        page.add(
            Cell(place(letter, line, piece), ground(piece)), Cell(state(letter, piece), colour(piece, needs)), *marks
        )
    for text in _given_up(letter, line):
        page.line(text, "quiet")
    page.gap()


def _mark(letter: Letter, option: Option, piece: Segment) -> Cell:
    """The letter where the option renews the piece; the letter and a word where it caps it and leaves it."""
    if option.letter in piece.renewed:
        return Cell(option.letter, "segment done")
    if option.letter in piece.closed:
        few = len(letter.quote.options) <= MANY
        return Cell(letter.speak("{letter} capped", letter=option.letter) if few else option.letter, "segment closed")
    return Cell("", "segment none")


def _given_up(letter: Letter, line: Line) -> list[str]:
    """Which options give up old pipe of this line, and by which new way the water goes then."""
    speak, out = letter.speak, []
    for option in letter.quote.options:
        new_ft = {t.repair.id: t.value("reroute_ft") for t in option.takeoffs}
        for repair in (r for r in all_repairs(option.scope.repairs) if r.line == line.name and gives_up(r)):
            if not repair.reroute:
                out.append(
                    speak("Option {letter}: the old pipe is capped and stays in the ground.", letter=option.letter)
                )
                continue
            length = feet(new_ft.get(repair.id, 0.0), letter.language)
            way = letter.typed(repair.reroute)
            out.append(speak(
                "Option {letter}: {length} of new pipe goes another way ({way}); the old pipe is capped and stays in the ground.",
                letter=option.letter, length=length, way=way,
            ))  # fmt: skip
    return list(dict.fromkeys(out))


def counted_from(letter: Letter, line: Line) -> str:
    speak = letter.speak
    if line.zero == "slab edge":
        return speak("Feet are counted from the outside wall where the pipe leaves the house.")
    return speak("Feet are counted from where the camera went in.")


def as_counted(letter: Letter, line: Line, at_ft: float) -> str:
    """How far along a place is, counted as the feet of its line are: from the wall, inside or outside, or along the pipe."""
    speak = letter.speak
    if line.zero != "slab edge":
        return speak("{distance} along the pipe", distance=feet(at_ft, letter.language))
    if at_ft < 0:
        return speak("{distance} outside the wall", distance=feet(-at_ft, letter.language))
    return speak("{distance} inside the wall", distance=feet(at_ft, letter.language))


def place(letter: Letter, line: Line, piece: Segment) -> str:
    """From which foot to which, and under what."""
    speak = letter.speak
    low, high = piece.stretch.from_ft, piece.stretch.to_ft
    if line.zero == "slab edge" and high <= 0:
        span = speak("outside, {start} to {end}", start=feet(-low, letter.language), end=feet(-high, letter.language))
    else:
        start, end = (feet(at, letter.language) for at in (low, high))
        span = speak("at {place}", place=start) if start == end else speak("{start} to {end}", start=start, end=end)
    zone = [letter.say(in_plain_words(ZONES, piece.zone))] if piece.zone else []
    room = (
        [letter.say(in_plain_words(ROOMS, piece.room))]
        if piece.room and piece.zone in ("slab", "crawl", "basement")
        else []
    )
    return ", ".join([span, *zone, *room])


def state(letter: Letter, piece: Segment) -> str:
    """What is wrong there, or that nothing was seen."""
    speak = letter.speak
    if not piece.findings:
        return speak("nothing wrong seen") if piece.filmed else speak("not seen by the camera")
    unsure = speak("suspected")
    named = [(letter.say(in_words(f)), f.grade == "suspected") for f in piece.findings]
    text = "; ".join(dict.fromkeys(f"{name} ({unsure})" if doubt else name for name, doubt in named))
    return text if piece.filmed else f"{text} ({speak('not seen by the camera')})"


def colour(piece: Segment, needs: Sequence[Need]) -> str:
    """Red where what was surely found must be put right; yellow where it may stay, or is only suspected."""
    if not piece.findings:
        return "segment good" if piece.filmed else "segment unseen"
    must = {f.id for n in needs if n.must and n.grade not in UNSURE for f in n.findings if f.grade not in UNSURE}
    return "segment bad" if any(f.id in must for f in piece.findings) else "segment watch"


def ground(piece: Segment) -> str:
    return "segment slab" if piece.zone in HARD_GROUND else "segment ground"
