"""The crew's first sheet: who decides, every dig with its depth, documents, and what can kill. Never "none required"."""

from estimator.model.offer import Option
from estimator.model.say import Say
from estimator.papers.competent_person import digs
from estimator.papers.crew_boxes import SHIFT, boxes
from estimator.papers.crew_page import Widths, close, crew_page, on_one_page
from estimator.papers.hazards import hazards
from estimator.papers.hazards_of_a_dig import of_each_dig
from estimator.papers.letter import Letter
from estimator.papers.page import Page, ended
from estimator.sheets.book import Cell, Sheet

WIDTHS = ((4.0, 16.0, 38.0, 4.0, 21.0, 21.0), (4.0, 13.0, 46.0, 4.0, 29.0, 30.0))


def safety_sheet(letter: Letter, option: Option) -> Sheet:
    """Return the page to read before each shift."""
    return on_one_page(lambda widths: _safety(letter, option, widths), *WIDTHS)


def _safety(letter: Letter, option: Option, widths: Widths) -> Sheet:
    speak, quote = letter.speak, letter.quote
    page = crew_page(letter, speak("Safety"), widths, speak("Safety first: read before each shift"))
    page.line(
        speak("Worse than shown: stop, take a picture, call {name}, {phone}", name=quote.job.prepared_by, phone=quote.firm.phone),
        "box",
    )  # fmt: skip
    if digs(option) or option.works.openings:
        _protection(letter, page, option)
    else:
        page.line(
            speak(
                "No one goes into an excavation for this work. If one is needed, stop and call: the competent person decides first."
            ),
            "box",
        )
    page.heading(speak("Before anyone goes in, and while working"))
    for topic, texts in hazards(letter, option).items():
        _topic(letter, page, topic, texts)
    _topic(letter, page, Say.of("Every shift"), letter.all(boxes(quote, option, SHIFT)))
    return close(letter, page)


def _topic(letter: Letter, page: Page, topic: Say, texts: list[str]) -> None:
    """What belongs together, a row each with its box."""
    for number, text in enumerate(texts):
        label = letter.say(topic) if number == 0 else ""
        page.add(Cell(label, "cell bold", 2), Cell(f"☐ {ended(text)}", "cell", page.columns - 2))


def _protection(letter: Letter, page: Page, option: Option) -> None:
    """29 CFR 1926.651(k), 1926.652: the competent person and the protective system of each dig; who designed it once, in the firm's sentence where it has one."""
    speak = letter.speak
    page.heading(
        speak("Protective system: the competent person decides at every dig, tunnel and pit, whatever its depth")
    )
    rows = (
        (speak("Competent person"), letter.quote.job.site.competent_person, speak("Soil type, by which test")),
        (speak("Protective system"), "", speak("Designed by")),
        (speak("Egress: ladder, ramp"), "", speak("Spoil pile, from the edge")),
    )
    said = any(term.id == "crw-protective" for term in option.terms)
    for label, name, other in rows[: 1 if said else 2] + rows[2:]:
        page.add(
            Cell(label, "label", 2), Cell(name, "write", open=True), Cell(other, "label", 2), Cell("", "write", open=True), height_pt=19.0
        )  # fmt: skip
    for text in of_each_dig(letter, option):
        page.line(f"! {text}", "box")
    page.line(
        speak("Locator depths: off by a tenth or half a foot, whichever is more. Distances are from the camera reel, not taped. Locate before you cut."),
        "quiet",
    )  # fmt: skip
