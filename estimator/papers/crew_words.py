"""A work line of the quote in, the same work as the crew reads it out: no word to the customer, no money."""

from estimator.model.price import LineItem
from estimator.model.say import Say
from estimator.papers.letter import Letter

FOR_THE_CREW: dict[str, Say] = {
    "Coming to your house with crew, tools and machines, and getting the site ready": Say.of(
        "Set up: crew, tools and machines to the house, the site made ready"
    ),
    "Finding your private buried lines (pool, sprinklers, gas to the grill) before anyone digs": Say.of(
        "Private buried lines found before anyone digs: pool, sprinklers, gas to the grill"
    ),
    "Finding the water, gas and power lines in and under the floor before we cut or dig there": Say.of(
        "Water, gas and power lines in and under the floor found before cutting or digging"
    ),
    "Running water at your fixtures to learn which side drains are in use, so that none is closed by mistake": Say.of(
        "Water run at every fixture, to learn which side drains are in use"
    ),
    "Closing the lane safely while we work in the street": Say.of(
        "Lane closed safely while anybody works in the street"
    ),
    "A portable toilet at your house while your only bathroom has no drain": Say.of(
        "Portable toilet set up while the only bathroom has no drain"
    ),
    "Camera video before the work, from the access we name to where the camera can go": Say.of(
        "Film before the work, from the access named to where the camera can go"
    ),
    "Camera video when the work is done; the video is yours": Say.of("Film when the work is done"),
    "Uncovering the pipe in one place to see it with our own eyes; you get photos and a price for what we find": Say.of(
        "Pipe uncovered in one place to be looked at; pictures taken"
    ),
    "A second visit after your house has been lifted: water test and camera video of the drain": Say.of(
        "Second visit after the house was lifted: water test and film"
    ),
    "A drawing of your drains on the plan of your house: where they run, how deep, where each one joins": Say.of(
        "Drawing of the drains on the plan of the house: where they run, how deep, where each one joins"
    ),
    "A visit after a year: the whole drain filmed again, and the video is yours": Say.of(
        "Visit after a year: the whole drain filmed again"
    ),
    "Clean dirt brought in where what we dug is not enough": Say.of(
        "Clean dirt brought in where the soil that was dug is not enough"
    ),
    "Filling the hollow in the ground under your floor or paving: an allowance, since nobody can see how large it is until it is open": Say.of(
        "Hollow under the floor or the paving filled"
    ),
    "City plumbing permit and inspection: the city's own fee, nothing added": Say.of(
        "City plumbing permit and inspection"
    ),
    "Scraping the rust out of the old iron and filming it again. Old iron can have holes under the rust; if it cannot be lined we stop, show you the video, and you owe only the work done up to there": Say.of(
        "Scraping the rust out of the old iron and filming it again. Old iron can have holes under the rust; if it cannot be lined: stop, call, show the customer the video"
    ),
    "Pouring the floor back, tied to the old slab with steel pins. You get bare concrete; tile, wood or carpet is not included": Say.of(
        "Pouring the floor back, tied to the old slab with steel pins. It is left as bare concrete; tile, wood or carpet is not included"
    ),
}
"""Texts of the tables, as they come, that speak to the customer. A firm's own words are read out whole: nothing is cut off."""
BY_OTHERS = ("sub", "pass-through")
"""Classes of price of what others do and the office arranges."""


def crew_words(letter: Letter, line: LineItem) -> str:
    """The same work said to the crew where the text speaks to the customer; else the whole text, whoever wrote it."""
    known = FOR_THE_CREW.get(line.text_en)
    return letter.say(known) if known else letter.text(line)
