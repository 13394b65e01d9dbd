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
    page.listing(speak("Notices of your city and state"), _notices(letter))
    page.line(option_words.check_the_place(letter), "quiet")
    return letter.close(page)


def _notices(letter: Letter) -> list[str]:
    """Those that count for every option, then those of some options' methods, their letters in front."""
    options, whole = letter.quote.options, letter.terms(letter.quote.notices, "notice")
    of_option = {option.letter: letter.terms(option.terms, "notice") for option in options}
    texts = dict.fromkeys([*(text for texts in of_option.values() for text in texts), *whole])
    letters = {text: [by for by, said in of_option.items() if text in said] for text in texts}
    every = [text for text in texts if text in whole or len(letters[text]) == len(options)]
    return [*every, *(f"{', '.join(letters[text])}: {text}" for text in texts if text not in every)]


def list_cautions(letter: Letter, page: Page, groups: Groups) -> None:
    """The three groups under their headings; a group that is empty has none."""
    speak = letter.speak
    before, during, after = groups
    page.listing(speak("Please take care before we start"), before, "box", "!")
    page.listing(speak("Please take care while we work"), during, "box", "!")
    page.listing(speak("Please take care afterwards"), after, "box", "!")
