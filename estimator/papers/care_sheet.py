"""Before, during and after the work: each caution once, with the letters of the options it is for. One page.

Of a quote with one option it ends with the questions for other bidders, which else stand beside the options.
"""

from estimator.papers.cautions import grouped
from estimator.papers.compare_bids import compare_bids
from estimator.papers.letter import Letter
from estimator.papers.lift import lift_steps
from estimator.papers.option_terms import work_in_common
from estimator.papers.page import grid_page
from estimator.sheets.book import Sheet

GAS_TERM = "cau-gas"
"""The firm's own sentence on a smell of gas; where its tables have none, the program says it."""


def care_sheet(letter: Letter) -> Sheet:
    """The page."""
    speak = letter.speak
    page = grid_page(speak("Before, during, after"))
    letter.not_an_offer(page)
    page.line(speak("Before, during and after the work"), "title")
    if not any(term.id == GAS_TERM for option in letter.quote.options for term in option.terms):
        page.line(speak("If you smell gas, leave. Do not touch any switch. Call 911 and the gas company from outside."))
    lift_steps(letter, page)
    headings = (speak("Before we start"), speak("While we work"), speak("Afterwards"))
    for heading, by_letters in zip(headings, grouped(letter), strict=True):
        for letters, texts in by_letters.items():
            page.listing(f"{heading}: {letters}" if letters else heading, texts, "small")
    work_in_common(letter, page)
    if len(letter.quote.options) == 1:
        compare_bids(letter, page)
    return letter.close(page)
