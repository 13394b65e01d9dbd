"""Step 7: a Quote in, the homeowner's book out: what leaves the house and nothing that may not."""

from collections.abc import Mapping

from estimator.model.offer import Quote
from estimator.papers.agreement import agreement_sheet
from estimator.papers.answer import answer_sheet
from estimator.papers.cancellation import cancellation_sheets
from estimator.papers.care_sheet import care_sheet
from estimator.papers.compare import compare_sheets
from estimator.papers.letter import Letter
from estimator.papers.option_sheet import option_sheets
from estimator.papers.your_pipe import pipe_sheet
from estimator.sheets.book import Book


def homeowner(quote: Quote, language: str, pictures: Mapping[str, bytes] | None = None) -> Book:
    """The quote as one person reads it. `pictures` are files by the name the notes give them; "logo" is the firm's."""
    letter = Letter(quote, language, pictures or {})
    return Book(
        title=letter.speak("Drain quote {number}", number=letter.number),
        day=quote.day,
        accent=quote.firm.accent,
        sheets=(
            answer_sheet(letter),
            pipe_sheet(letter),
            *compare_sheets(letter),
            *option_sheets(letter),
            agreement_sheet(letter),
            *cancellation_sheets(letter),
            care_sheet(letter),
        ),
    )
