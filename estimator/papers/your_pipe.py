"""The tab with the drawing, each finding with its still beside it, and what was inspected."""

from estimator.model.found import Found
from estimator.model.say import Say
from estimator.papers.house_section import house_section
from estimator.papers.letter import Letter
from estimator.papers.page import Page, run_in
from estimator.sheets.book import Cell, Picture, Row, Sheet
from estimator.wording.say import capital

WIDTHS = (4.0, 65.0, 25.0)
STILL_PX, STILL_PT = 120, 94.0


def pipe_sheet(letter: Letter) -> Sheet:
    """The page."""
    speak, quote = letter.speak, letter.quote
    page = Page(speak("Your pipe"), WIDTHS)
    letter.gas_first(page)
    letter.not_an_offer(page)
    if drawn := house_section(letter):
        data, height, alt = drawn
        page.drawing(data, alt, height)
    for found in quote.found:
        _finding(letter, page, found, found.beside if drawn and found.beside else found.text)
    page.gap(4)
    run_in(page, speak("Inspected"), letter.all(quote.seen))
    return letter.close(page)


def _finding(letter: Letter, page: Page, found: Found, what: Say) -> None:
    """Its sentence; where a still was handed in, that beside it in a row of its height."""
    text, [still, *_] = capital(letter.say(what)), [*stills(letter, found), ""]
    if not still:
        page.add(Cell(found.letter, "letter"), Cell(text, "small", 2))
        return
    page.pictures.append(
        Picture(
            data=letter.pictures[still], alt=letter.say(found.short), row=len(page.rows), column=2, height_px=STILL_PX
        )
    )
    page.rows.append(Row((Cell(found.letter, "letter"), Cell(text, "small"), Cell("", "small")), STILL_PT, starts=True))


def stills(letter: Letter, found: Found) -> list[str]:
    """The pictures of it that were handed in."""
    return [name for name in found.photo_files if name in letter.pictures]
