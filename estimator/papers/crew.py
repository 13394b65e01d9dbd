"""Step 7: a Quote in, the crew's book out: where, how deep, how protected, what to bring. No money on it."""

from dataclasses import replace

from estimator.model.offer import Quote
from estimator.papers.competent_person import nobody_named, notice_sheet
from estimator.papers.crew_line import line_sheet
from estimator.papers.crew_option import hours_sheet, work_sheet
from estimator.papers.crew_page import NAME_LENGTH
from estimator.papers.crew_safety import safety_sheet
from estimator.papers.letter import Letter
from estimator.sheets.book import Book, Sheet


def crew(quote: Quote, language: str = "en_US", letter: str = "") -> Book:
    """The sheets to work from, for one option by its letter or, while none is accepted, for all.

    An option that needs a competent person whom nobody has named gets a notice in place of its sheets.

    >>> from estimator.papers.example import example_quote
    >>> [sheet.name for sheet in crew(example_quote(), letter="A").sheets]
    ['Safety', 'Work A', 'Hours A', 'main']

    Errors: ValueError for a letter that the quote does not have.
    """
    options = tuple(o for o in quote.options if not letter or o.letter == letter)
    if not options:
        raise ValueError(f"the quote has no option {letter}")
    reader = Letter(quote, language)
    waiting = [o for o in options if nobody_named(quote, o)]
    ready = tuple(o for o in options if o not in waiting)
    return Book(
        title=reader.speak("Crew sheet {number}", number=reader.number),
        day=quote.day,
        accent=quote.firm.accent,
        sheets=named_apart(
            *(notice_sheet(reader, option) for option in waiting),
            *([safety_sheet(reader, ready)] if ready else []),
            *(work_sheet(reader, option) for option in ready),
            *(hours_sheet(reader, option) for option in ready),
            *(line_sheet(reader, line) for line in (quote.job.lines if ready else ())),
        ),
    )


def named_apart(*sheets: Sheet) -> tuple[Sheet, ...]:
    """The same sheets, a name that came before (whatever its capitals) with a number behind it: lines are named by people."""
    taken: set[str] = set()
    out = []
    for sheet in sheets:
        name, number = sheet.name, 2
        while name.lower() in taken:
            name, number = f"{sheet.name[: NAME_LENGTH - 3]} {number}", number + 1
        taken.add(name.lower())
        out.append(replace(sheet, name=name))
    return tuple(out)
