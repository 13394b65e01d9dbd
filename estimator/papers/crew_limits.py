"""When the crew of an option stops and calls, and how far it may go on its own: what the customer agreed to, as limits."""

from itertools import zip_longest

from estimator.model.offer import Extra, Option
from estimator.model.say import Say
from estimator.papers.crew_boxes import SHOWN, boxes
from estimator.papers.hazards import notes
from estimator.papers.letter import Letter
from estimator.papers.page import Page, ended
from estimator.sheets.book import Cell

LIMITS: dict[str, Say] = {
    "more-pipe-yard": Say.of("sound pipe farther along: {limit} ft"),
    "more-pipe-floor": Say.of("sound pipe farther along under the floor: {limit} ft"),
    "more-tunnel": Say.of("sound pipe farther in: {limit} ft of tunnel"),
    "more-liner": Say.of("longer liner: {limit} ft"),
    "more-burst": Say.of("longer pull: {limit} ft"),
    "more-crawl": Say.of("more pipe in the crawl space: {limit} ft"),
    "deeper": Say.of("pipe deeper than measured: {limit} ft"),
    "rock": Say.of("rock or buried concrete: {limit} cu yd"),
    "thick-concrete": Say.of("slab thicker than 4 in: {limit} sq ft for each inch"),
    "water-day": Say.of("days of pumping groundwater: {limit}"),
    "side-drain": Say.of("unseen branch drains to reconnect: {limit}"),
    "reopen": Say.of("unseen branch drains to reopen: {limit}"),
    "more-cleaning": Say.of("hours of longer cleaning: {limit}"),
    "return-trip": Say.of("extra trips: {limit}"),
    "utility-moved": Say.of("hours of moving an unmarked line: {limit}"),
    "second-pit": Say.of("second pits: {limit}"),
}
"""Unit prices by their code in the tables. A firm's own is read out whole."""


def stop_and_call(letter: Letter, page: Page, option: Option) -> None:
    """Whom to call, when, and the limits agreed."""
    speak, quote = letter.speak, letter.quote
    page.heading(speak("Stop and call {name}, {phone}", name=quote.job.prepared_by, phone=quote.firm.phone))
    page.line(
        speak("Stop for pipe or soil worse than shown, an unmarked line or cable, water in the excavation, a crack in slab or wall."),
        "box",
    )  # fmt: skip
    limits = [_limit(letter, extra) for extra in option.extras]
    if limits:
        page.line(speak("Agreed with the customer, once you called and showed it. No farther than:"), "bold")
        page.line("; ".join(limits))


def job_notes(letter: Letter, page: Page, option: Option) -> None:
    """What else the rules and the takeoff say of this job, a row each."""
    assumed = (what for takeoff in option.takeoffs for what in takeoff.assumptions)
    told = list(dict.fromkeys([*notes(letter, option), *letter.all(assumed)]))
    if told:
        page.line(letter.speak("Job notes"), "bold")
        for text in told:
            page.line(f"• {ended(text)}", "small")


def _limit(letter: Letter, extra: Extra) -> str:
    limit = f"{extra.cap_quantity.normalize():f}"
    known = LIMITS.get(extra.code)
    if known:
        return letter.speak(known.text, limit=limit)
    return letter.speak("{what}: up to {limit}", what=letter.text(extra), limit=limit)


def tests_and_pictures(letter: Letter, page: Page, option: Option) -> None:
    """Boxes for what must be shown of the work, by whom and when."""
    page.heading(letter.speak("Tests and pictures: name and time"))
    texts = letter.all(boxes(letter.quote, option, SHOWN))
    for left, right in zip_longest(texts[::2], texts[1::2], fillvalue=""):
        second = (Cell(f"☐ {right}", "cell", page.columns - HALF),) if right else ()
        page.add(Cell(f"☐ {left}", "cell", HALF), *second)


HALF = 3
"""Columns of the sheet of hours that make half its width."""
