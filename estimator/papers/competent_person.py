"""A quote in, which of its options no crew may begin before somebody is named who answers for the dig, out."""

from estimator.knowledge.excavation import needs_ladder
from estimator.model.offer import Option, Quote
from estimator.model.work import Takeoff
from estimator.papers.crew_page import blank, close, crew_page
from estimator.papers.letter import Letter
from estimator.sheets.book import Sheet

WIDTHS = (26.0, 34.0, 34.0)
DEPTHS = ("safety_depth_ft", "dig_depth_ft", "pit_depth_ft")
HELD = ("tunnel_ft", "pits")


def goes_in(takeoff: Takeoff) -> bool:
    """People go into a tunnel, a pit at a wall, or a dig of 4 ft and more with the locator's error on top.

    Source: 29 CFR 1926.651(k), 1926.32(f); the 4 ft are those of 1926.651(c)(2), (g).
    """
    depth_ft = max(takeoff.value(name) for name in DEPTHS)
    return any(takeoff.value(name) for name in HELD) or needs_ladder(depth_ft)


def digs(option: Option) -> bool:
    """Anybody stands in a dig, a pit or a tunnel of this option, however shallow."""
    return any(takeoff.value(name) for takeoff in option.takeoffs for name in (*DEPTHS, *HELD))


def nobody_named(quote: Quote, option: Option) -> bool:
    """The crew may not begin: the option needs a competent person, and the notes name none."""
    return not quote.job.site.competent_person.strip() and any(map(goes_in, option.takeoffs))


def notice_sheet(letter: Letter, option: Option) -> Sheet:
    """In place of the sheets of an option: who must be named first, and where the name is written."""
    speak = letter.speak
    page = crew_page(
        letter,
        speak("Work {letter}", letter=option.letter),
        WIDTHS,
        speak("Option {letter}: no crew sheet yet", letter=option.letter),
    )
    page.line(
        speak(
            "This option has a tunnel, a pit at a wall, or a dig of 4 ft and more (locator's error added). Nobody starts it before a competent person is named."
        ),
        "alarm",
    )
    page.line(
        speak(
            "The competent person knows soils and protection, looks at every dig each day, after rain and after shaking, and may stop the work at once (29 CFR 1926.32(f), 1926.651(k))."
        )
    )
    page.line(speak("Write the name into the job file and make the quote again:"))
    page.line("[site] competent_person = …", "box")
    blank(page, speak("Competent person"))
    blank(page, speak("Agreed on, by"))
    return close(letter, page)
