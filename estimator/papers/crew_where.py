"""A repair in, where the crew finds it out: from which station to which, or the legs of a way round that has none."""

from estimator.model.work import Repair, Takeoff
from estimator.papers.letter import Letter
from estimator.papers.page import Page
from estimator.quote.where import on_paper, to_the_step
from estimator.wording.numbers import feet, inches
from estimator.wording.plain import LEGS, LINES, in_plain_words


def signed(ft: float, letter: Letter) -> str:
    """A station, − outside the wall."""
    return feet(ft, letter.language) if ft >= 0 else f"−{feet(-ft, letter.language)}"


def where_it_is(letter: Letter, repair: Repair) -> str:
    """The line with both stations as the customer reads them; a reroute by its name, since it lies on no station of the old line."""
    if repair.reroute:
        return letter.speak("New way {name}", name=_quoted(letter.typed(repair.reroute)))
    line = letter.quote.job.line(repair.line)
    first = to_the_step(line, repair.stretch.from_ft)
    start, end = (signed(at, letter) for at in (first, first + on_paper(line, repair.stretch.length_ft)))
    return letter.speak("{line}: from {start} to {end}", line=in_plain_words(LINES, repair.line), start=start, end=end)


def _quoted(name: str) -> str:
    return name if name.startswith("“") else f"“{name}”"


def new_way(letter: Letter, page: Page, takeoff: Takeoff) -> None:
    """A way round: its length and size, each leg, where it ties in, what becomes of the old pipe."""
    speak, repair = letter.speak, takeoff.repair
    length = feet(takeoff.value("reroute_ft"), letter.language)
    size = inches(takeoff.value("reroute_size_in"))
    way = next((w for w in letter.quote.job.reroutes if w.name == repair.reroute), None)
    told = [speak("{length} of new {size} inch pipe, turns and uprights counted", length=length, size=size)]
    told += [
        speak(
            "Leg {number}: {length}, {zone}",
            number=number,
            length=feet(leg.length_ft, letter.language),
            zone=in_plain_words(LEGS, leg.zone),
        )
        for number, leg in enumerate(way.legs if way else (), start=1)
    ]
    if way and way.ties_into_line:
        at = speak("not said: ask") if way.ties_into_ft is None else signed(way.ties_into_ft, letter)
        told.append(speak("Ties into: {line}, at {place}", line=in_plain_words(LINES, way.ties_into_line), place=at))
    told.append(
        speak("The old pipe it replaces is closed at both ends: {line}", line=in_plain_words(LINES, repair.line))
    )
    page.line("; ".join(told))
