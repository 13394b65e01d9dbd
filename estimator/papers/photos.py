"""Pictures named in the notes and handed in as bytes in, a sheet of them with their place in plain words out."""

from estimator.model.line import Finding, Line, Mark
from estimator.papers.letter import Letter
from estimator.papers.page import Page
from estimator.sheets.book import Sheet
from estimator.wording.found import in_words
from estimator.wording.numbers import feet
from estimator.wording.plain import LINES, MARKS, in_plain_words

WIDTHS = (84.0,)
HEIGHT_PX, A_PAGE = 330, 2


def photo_sheets(letter: Letter) -> tuple[Sheet, ...]:
    """One sheet with two pictures a page; none where no picture was handed in."""
    shown: list[tuple[Finding | Mark, Line]] = []
    for line in letter.quote.job.lines:
        shown += [(finding, line) for finding in line.findings if finding.photo_file in letter.pictures]
        shown += [(mark, line) for mark in line.marks if mark.photo_file in letter.pictures]
    if not shown:
        return ()
    page = Page(letter.speak("Pictures"), WIDTHS)
    page.line(letter.speak("Pictures of your pipe"), "title")
    for number, (one, line) in enumerate(shown):
        if number and number % A_PAGE == 0:
            page.add(new_page=True, height_pt=6.0)
        page.picture(letter.pictures[str(one.photo_file)], caption(letter, one, line), HEIGHT_PX)
    return (letter.close(page),)


def caption(letter: Letter, one: Finding | Mark, line: Line) -> str:
    """What it shows and where, in the homeowner's words."""
    what = in_words(one) if isinstance(one, Finding) else in_plain_words(MARKS, one.word)
    where = feet(one.stretch.from_ft, letter.language)
    text = letter.speak("{what}, {line}, at {where}", what=what, line=in_plain_words(LINES, line.name), where=where)
    return text[:1].upper() + text[1:]
