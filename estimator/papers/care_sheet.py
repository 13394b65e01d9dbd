"""Before, during and after the work: each caution once, with the letters of the options it is for. One page.

Of a quote with one option it ends with the questions for other bidders, which else stand beside the options.
"""

from estimator.papers.cautions import grouped
from estimator.papers.compare_bids import compare_bids, empty_page
from estimator.papers.letter import Letter
from estimator.papers.lift import lift_steps
from estimator.sheets.book import Sheet


def care_name(letter: Letter) -> str:
    """The tab's name, as the other tabs point to it."""
    return letter.speak("Before, during, after")


def care_sheet(letter: Letter) -> Sheet:
    """The page."""
    speak = letter.speak
    page = empty_page(care_name(letter))
    letter.not_an_offer(page)
    page.line(speak("Before, during and after the work"), "title")
    if len(letter.quote.options) > 1:
        page.line(speak("Items without a letter apply to every option."), "quiet")
    lift_steps(letter, page)
    before, during, after = grouped(letter)
    page.listing(speak("Before we start"), before, "small")
    page.listing(speak("While we work"), during, "small")
    page.listing(speak("Afterwards"), after, "small")
    if len(letter.quote.options) == 1:
        compare_bids(letter, page)
    return letter.close(page)
