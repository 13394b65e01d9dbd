"""A work line of the quote in, the same work as the crew reads it out: no word to the customer, no money."""

import re

from estimator.model.price import LineItem
from estimator.model.say import Say
from estimator.papers.letter import Letter

FOR_THE_CREW: dict[str, Say] = {
    "mobilisation": Say.of("Set up: crew, tools and machines to the house, the site made ready"),
    "private locate": Say.of("Private buried lines found before anyone digs: pool, sprinklers, gas to the grill"),
    "service scan": Say.of("Water, gas and power lines in and under the floor found before cutting or digging"),
    "side drains proven": Say.of("Water run at every fixture, to learn which side drains are in use"),
    "street closure": Say.of("Lane closed safely while anybody works in the street"),
    "portable toilet": Say.of("Portable toilet set up while the only bathroom has no drain"),
    "film before": Say.of("Film before the work, from the access named to where the camera can go"),
    "film after": Say.of("Film when the work is done"),
    "look and see": Say.of("Pipe uncovered in one place to be looked at; pictures taken"),
    "test after lift": Say.of("Second visit after the house was lifted: water test and film"),
    "drain plan": Say.of(
        "Drawing of the drains on the plan of the house: where they run, how deep, where each one joins"
    ),
    "film in a year": Say.of("Visit after a year: the whole drain filmed again"),
    "fill dirt": Say.of("Clean dirt brought in where the soil that was dug is not enough"),
    "void fill": Say.of("Hollow under the floor or the paving filled"),
    "permit": Say.of("City plumbing permit and inspection"),
}
"""Work items whose text for the homeowner speaks to the homeowner."""
FIRST_SENTENCE = re.compile(r"(?<=[\w)])(?:[.;] ).*", re.DOTALL)
BY_OTHERS = ("sub", "pass-through")
"""Classes of price of what others do and the office arranges."""


def crew_words(letter: Letter, line: LineItem) -> str:
    """The firm's own words for its crew, else the first sentence of the text: what follows is said to the customer."""
    known = FOR_THE_CREW.get(line.work_item)
    return letter.say(known) if known else FIRST_SENTENCE.sub("", letter.text(line))
