"""Step 7: a Quote in, the crew's book for one option out: safety, work, drawing, load list (under the work where both fit a page), hours. No money on it."""

from datetime import date

from estimator.model.offer import Option, Quote
from estimator.papers.competent_person import nobody_named, notice_sheet
from estimator.papers.crew_drawing import drawing_sheet
from estimator.papers.crew_hours import hours_sheet
from estimator.papers.crew_load import load_list, load_sheet
from estimator.papers.crew_safety import safety_sheet
from estimator.papers.crew_work import work_sheet
from estimator.papers.letter import Letter
from estimator.quote.recommend import recommended
from estimator.sheets.book import Book, Sheet
from estimator.sheets.write import pages_of
from estimator.tables.tables import Tables


def crew(
    quote: Quote, language: str = "en_US", letter: str = "", *, tables: Tables | None = None, sold_on: str = ""
) -> Book:
    """The sheets to work from, for the option by its letter; else the one recommended, else the first.

    With the tables of the job the drawing says line and grade. `sold_on` is the day of the signature, as 2026-11-20, "" before it. An option
    that needs a competent person whom nobody has named gets a notice in place of its sheets.

    Errors: ValueError for a letter that the quote does not have.
    """
    option, reader = worked_on(quote, letter), Letter(quote, language)
    speak = reader.speak
    sheets: tuple[Sheet, ...] = (notice_sheet(reader, option),)
    if not nobody_named(quote, option):
        sold = (
            speak("Accepted on {day}", day=date.fromisoformat(sold_on))
            if sold_on
            else speak("Not accepted yet: for planning only")
        )
        marks = drawing_sheet(reader, option, tables)
        work = work_sheet(reader, option, sold, lambda page: load_list(reader, page, option, tables))
        load: tuple[Sheet, ...] = ()
        if pages_of(work) > 1 or not marks.pictures:
            work = work_sheet(reader, option, sold)
            load = (load_sheet(reader, option, tables, drawing=not marks.pictures),)
        sheets = (safety_sheet(reader, option), work, marks, *load, hours_sheet(reader, option))
    return Book(
        title=speak("Crew sheet {number}", number=reader.number), day=quote.day, accent=quote.firm.accent, sheets=sheets
    )


def worked_on(quote: Quote, letter: str = "") -> Option:
    """The option named by its letter; else the one we recommend; else the first.

    Errors: ValueError for a letter that the quote does not have.
    """
    found = next((o for o in quote.options if o.letter == letter.upper()), None)
    if letter and found is None:
        raise ValueError(f"the quote has no option {letter}")
    return found or recommended(quote) or quote.options[0]
