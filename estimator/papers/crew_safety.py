"""The crew's first sheet: what can kill, who protects how, what is on paper before the first spade. Never "none required"."""

from estimator.model.offer import Option
from estimator.papers.crew_boxes import DAILY, LOCATED, PAPERS
from estimator.papers.crew_page import blank, box, close, crew_page
from estimator.papers.hazards import hazards
from estimator.papers.hazards_of_a_dig import of_each_dig
from estimator.papers.letter import Letter
from estimator.papers.page import Page
from estimator.sheets.book import Cell, Sheet

WIDTHS = (5.0, 38.0, 38.0, 22.0)
PRINT_SCALE = 84  # of the size on the screen: the part for all options is one page


def safety_sheet(letter: Letter, options: tuple[Option, ...]) -> Sheet:
    """First what counts for every option, with the boxes; then what is special to some, and every dig with its depth."""
    speak = letter.speak
    page = crew_page(letter, speak("Safety"), WIDTHS, speak("Safety first: read before work, each day"))
    (before, daily, working), some = hazards(letter, options)
    digs = of_each_dig(letter, options)
    page.heading(speak("Before anyone goes in"))
    _say(page, before or [speak("Ask the competent person before you begin.")])
    _papers(letter, page)
    page.heading(speak("Every day"), starts=True)
    _say(page, daily)
    _daily(letter, page)
    page.heading(speak("While working"), starts=True)
    _say(page, working)
    _ask(letter, page)
    page.heading(speak("How the dig is held"), starts=True)
    _protection(letter, page)
    if digs:
        page.line(speak("Each dig, with its depth"), "bold", starts=True)
        _say(page, digs)
    if some:
        page.heading(speak("Only for the options named in front"), starts=True)
        _say(page, some)
    return close(letter, page, scale=PRINT_SCALE)


def _say(page: Page, texts: list[str]) -> None:
    for text in texts:
        page.line(f"! {text}", "box")


def _protection(letter: Letter, page: Page) -> None:
    speak, site = letter.speak, letter.quote.job.site
    page.line(
        speak(
            "The competent person decides at every dig, tunnel and pit at a wall, whatever its depth. Depths on these sheets can be off by the locator's tolerance: inside that band take the stricter rule. Soil around an old pipe has been dug before: never type A; with a leak, water, fill or no classification: type C."
        )
    )
    blank(page, speak("Protective system"))
    blank(page, speak("Designed by (competent person, tabulated data, engineer)"))
    page.add(
        Cell(speak("Competent person"), "label", 2), Cell(site.competent_person, "write", 2, open=True), height_pt=21.0
    )
    blank(page, speak("Soil type, by which test"))
    blank(page, speak("Spoil goes where, how far from the edge"))
    blank(page, speak("Way out: ladder or second pit, where"))


def _daily(letter: Letter, page: Page) -> None:
    """Before each shift, after rain, after anything that shook the ground: 29 CFR 1926.651(k)."""
    speak = letter.speak
    page.line(speak("Each shift, after rain, after shaking: name and hour"), "bold")
    for text in map(letter.say, DAILY):
        box(page, text)


def _papers(letter: Letter, page: Page) -> None:
    speak, job = letter.speak, letter.quote.job
    page.line(speak("On paper before the first spade: number and day"), "bold")
    for what in PAPERS:
        marked = what is LOCATED and job.site.located
        box(page, f"{letter.say(what)} ({speak('said to be marked')})" if marked else letter.say(what))


def _ask(letter: Letter, page: Page) -> None:
    """Who to ask when it is worse; what was agreed beforehand stands on the work sheet of the option."""
    speak, quote = letter.speak, letter.quote
    page.line(speak("When it is worse than shown: stop and call"), "bold")
    page.line(speak("{name}, {phone}", name=quote.job.prepared_by, phone=quote.firm.phone), "bold")
