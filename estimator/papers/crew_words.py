"""A work line of the quote in, the same work as the crew reads it out: no word to the customer, no money."""

from estimator.model.price import LineItem
from estimator.model.say import Say
from estimator.papers.letter import Letter

FOR_THE_CREW: dict[str, Say] = {
    "Camera inspection when the work is done; you keep the video": Say.of("Camera inspection when the work is done"),
    "Uncover the pipe in one place to inspect it. You get photos and a price for what we find": Say.of(
        "Uncover the pipe in one place, inspect it and take photos"
    ),
    "Remove rust build-up from the iron pipe (descaling) and inspect it again. If it cannot be lined, we stop and show you the video. You pay only for the work done so far": Say.of(
        "Descale the iron pipe and inspect it again. If it cannot be lined: stop, call, show the customer the video"
    ),
    "Concrete patch, doweled to the slab. Left as bare concrete; you arrange flooring": Say.of(
        "Concrete patch, doweled to the slab. Leave bare concrete; flooring is by others"
    ),
    "Camera inspection of the whole drain one year later; you keep the video": Say.of(
        "Camera inspection of the whole drain one year later"
    ),
}
"""Texts of the tables, as they come, that speak to the customer. A firm's own words are read out whole: nothing is cut off."""
BY_OTHERS = ("sub", "pass-through")
"""Classes of price of what others do and the office arranges."""


def crew_words(letter: Letter, line: LineItem) -> str:
    """The same work said to the crew where the text speaks to the customer; else the whole text, whoever wrote it."""
    known = FOR_THE_CREW.get(line.text_en)
    return letter.say(known) if known else letter.text(line)
