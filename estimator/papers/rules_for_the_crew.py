"""What a rule says to who writes the quote comes in; the same for who does the work, without the money, goes out."""

from dataclasses import replace

from estimator.model.say import Say

FOR_THE_CREW: dict[str, Say] = {
    "Cleaning only: the opening stays; say so, film after, and offer the repair beside it.": Say.of(
        "Cleaning only: the opening stays; film after."
    ),
    "Crawl space under the firm's clearance or muddy: surcharge; second person, light, way out known.": Say.of(
        "Crawl space under the firm's clearance or muddy: second person, light, way out known."
    ),
    "No depth on this line: locate it, say from which surface, before a fixed price for digging.": Say.of(
        "No depth on this line: locate it, say from which surface, before you dig."
    ),
    "Iron with scale or a groove: descale to bare wall, inspect, check that it holds shape; have the stop-gap price ready if it opens.": Say.of(
        "Iron with scale or a groove: descale to bare wall, inspect, check that it holds shape; if it opens, stop and call."
    ),
    "No levels at both ends: run-out taken as {allowance}; take levels before a fixed price.": Say.of(
        "No levels at both ends: run-out taken as {allowance}; take levels before you dig."
    ),
    "Dip from {low} to {high} stays; offer only with “the dip stays” in writing.": Say.of(
        "Dip from {low} to {high} stays."
    ),
    "Depth with tolerance {depth}, the machine digs {reach}: a larger machine and its access, boxes one on another, priced apart; by hand it is not dug so deep without an engineer.": Say.of(
        "Depth with tolerance {depth}, the machine digs {reach}: a larger machine and its access, boxes one on another; by hand it is not dug so deep without an engineer."
    ),
    "Suspected or not filmed between {low} and {high}: confirm before a fixed price.": Say.of(
        "Suspected or not filmed between {low} and {high}: confirm before you cut or dig."
    ),
    "One bathroom, lived in, drains off over a day: portable toilet or hotel allowance.": Say.of(
        "One bathroom, lived in, drains off over a day: portable toilet on site, or nobody sleeps there."
    ),
    "Test was the trigger: unlined branches, risers and liner ends can still leak; price end seals or promise “main lined” only.": Say.of(
        "Test was the trigger: unlined branches, risers and liner ends can still leak."
    ),
    "Under {what}: off and on as an allowance; tunnel or reroute may be easier.": Say.of(
        "Under {what}: take off before cutting, set back after."
    ),
    "Closed by dirt: clean, re-inspect, then price. The opening stays.": Say.of(
        "Closed by dirt: clean and re-inspect. The opening stays."
    ),
    "Sound pipe beyond the end of this repair was not seen: film from the other end, or a look-and-see dig, before a fixed price.": Say.of(
        "Sound pipe beyond the end of this repair was not seen: if it is not sound where you cut, stop and call."
    ),
    "The levels say that the line climbs {rise} in a foot with the flow: a lower tie-in, levels taken again, or the inspector's word before a fixed price.": Say.of(
        "The levels say that the line climbs {rise} in a foot with the flow: read them again before you lay pipe."
    ),
    "Falls {fall} in; {needed} in are needed: nearer than two readings can tell apart. Take the levels again, or go on to a lower tie-in, before a fixed price.": Say.of(
        "Falls {fall} in; {needed} in are needed: nearer than two readings can tell apart. Take the levels again before you lay pipe."
    ),
    "New wye, no note of where the line joins. Locate it (joins) before a fixed price.": Say.of(
        "New wye, no note of where the line joins. Locate it."
    ),
    "{opening} is assumed: {why}. Measure the way in (beside, joins) before a fixed price.": Say.of(
        "{opening} is assumed: {why}. Measure the way in before you dig."
    ),
    "Void under slab or paving: engineer first, keep people and machines off; the fill is priced as an allowance (void_fill_cy).": Say.of(
        "Void under slab or paving: engineer first, keep people and machines off."
    ),
}
"""Each sentence of the rules that speaks of money beside the work, and its half that is for the crew."""

FOR_THE_OFFICE = frozenset({
    "A line of the log there is asked back and not answered: answer it (estimator check) before a fixed price.",
    "Cheap floor, shallow and short: the least charge of a tunnel is more than the spot.",
    "Failed test, clean camera: price the isolation, no repair.",
    "Inside the tolerances the price may rise by {percent}%, more than your {limit}%; most of it: {fact}.",
    "The tables have no price for {size} in pipe here: add the row, or leave this way out.",
})  # fmt: skip
"""Sentences about money alone."""
MONEY = ("price", "offer", "allowance", "surcharge", "charge", "cheap")
"""Words of money: a sentence of a rule that has one is in one of the two lists above (a test asks)."""


def for_the_crew(what: Say) -> Say:
    """The sentence itself, or its half for the crew."""
    known = FOR_THE_CREW.get(what.text)
    return replace(what, text=known.text) if known else what
