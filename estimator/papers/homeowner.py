"""Step 7: a Quote in, the homeowner's book out: what leaves the house and nothing that may not."""

from collections.abc import Mapping

from estimator.model.offer import Quote
from estimator.papers.agreement import agreements
from estimator.papers.care_sheet import care_sheet
from estimator.papers.compare_bids import compare_bids
from estimator.papers.first_sheet import first_sheet
from estimator.papers.letter import Letter
from estimator.papers.option_sheet import option_sheet
from estimator.papers.photos import photo_sheets
from estimator.papers.pipe_sheet import pipe_sheets
from estimator.papers.side_by_side import side_by_side
from estimator.sheets.book import Book


def homeowner(quote: Quote, language: str, pictures: Mapping[str, bytes] | None = None) -> Book:
    """The quote as one person reads it. `pictures` are files by the name the notes give them; "logo" is the firm's.

    >>> from estimator.papers.example import example_quote
    >>> [sheet.name for sheet in homeowner(example_quote(), "en_US").sheets][:3]
    ['Start here', 'Your pipe', 'Side by side']
    """
    letter = Letter(quote, language, pictures or {})
    pipe, *views = pipe_sheets(letter)
    return Book(
        title=letter.speak("Drain quote {number}", number=letter.number),
        day=quote.day,
        accent=quote.firm.accent,
        sheets=(
            first_sheet(letter),
            pipe,
            *side_by_side(letter),
            care_sheet(letter),
            *(option_sheet(letter, option) for option in quote.options),
            compare_bids(letter),
            *agreements(letter),
            *views,
            *photo_sheets(letter),
        ),
    )
