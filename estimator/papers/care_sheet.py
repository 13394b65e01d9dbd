"""What to mind before, while and after the work, and the notices of the place: said once for all options of a quote."""

from estimator.papers import option_words
from estimator.papers.cautions import Groups, of_several
from estimator.papers.letter import Letter
from estimator.papers.page import Page
from estimator.sheets.book import Sheet

WIDTHS = (96.0,)


def care_name(letter: Letter) -> str:
    """The sheet's name, as the other sheets point to it."""
    return letter.speak("Before, while, after")


def see_care_sheet(letter: Letter) -> str:
    """What stands on every option's sheet in place of what is said once."""
    return letter.speak(
        "Please also read the sheet “{care}”: its cautions and notices count for this option too.",
        care=care_name(letter),
    )


def care_sheet(letter: Letter) -> Sheet:
    """Cautions that more than one option has (all of them where there is one option), and the notices."""
    speak, quote = letter.speak, letter.quote
    page = Page(care_name(letter), WIDTHS)
    letter.head(page)
    page.line(speak("Before, while and after the work"), "title")
    page.line(speak("Quote {number} for {site}", number=letter.number, site=quote.job.customer.site), "quiet")
    if len(quote.options) > 1:
        page.line(speak(
            "What has no letter in front counts whichever option you take. What only one option asks for stands on that option's sheet."
        ))  # fmt: skip
    page.gap()
    list_cautions(letter, page, of_several(letter))
    page.gap()
    notices = (*(term for option in quote.options for term in option.terms), *quote.notices)
    page.listing(speak("Notices of your city and state"), letter.terms(notices, "notice"))
    page.line(option_words.check_the_place(letter), "quiet")
    return letter.close(page)


def list_cautions(letter: Letter, page: Page, groups: Groups) -> None:
    """The three groups under their headings; a group that is empty has none."""
    speak = letter.speak
    before, during, after = groups
    page.listing(speak("Please take care before we start"), before, "box", "!")
    page.listing(speak("Please take care while we work"), during, "box", "!")
    page.listing(speak("Please take care afterwards"), after, "box", "!")
