"""Words of the trade in, the words a homeowner knows them by out: findings, zones, pipe, classes of work, units."""

from estimator.model.say import Say

FINDINGS: dict[str, Say] = {
    "roots": Say.of("roots"),
    "offset": Say.of("pipe ends that do not line up"),
    "gap": Say.of("an open joint"),
    "crack": Say.of("a crack"),
    "hole": Say.of("a hole"),
    "collapse": Say.of("the pipe has collapsed"),
    "channel": Say.of("the bottom of the pipe is worn thin"),
    "scale": Say.of("scale build-up"),
    "grease": Say.of("grease"),
    "sag": Say.of("a dip (belly) that holds water"),
    "reverse fall": Say.of("the pipe slopes the wrong way"),
    "backfall": Say.of("the pipe slopes the wrong way"),
    "oval": Say.of("the pipe is out of round"),
    "blister": Say.of("the pipe wall is blistering"),
    "blocked": Say.of("the drain is blocked"),
    "intruding": Say.of("a branch pipe sticks into the drain"),
    "utility": Say.of("a gas or other utility line runs through the drain"),
    "fitting": Say.of("a fitting that does not belong in a drain"),
    "leak": Say.of("a leak"),
    "mud": Say.of("soil in the pipe"),
    "opening": Say.of("an opening"),
    "failed test": Say.of("failed water test, leak not located"),
    "insects": Say.of("insects or rodents in the pipe, a sign of an opening"),
}
"""What the camera found, by its word in the notes."""

ZONES: dict[str, Say] = {
    "slab": Say.of("under the house"),
    "yard": Say.of("under the yard"),
    "drive": Say.of("under the driveway"),
    "walk": Say.of("under the walkway"),
    "street": Say.of("under the street"),
    "crawl": Say.of("in the crawl space"),
    "basement": Say.of("in the basement"),
}

ROOMS: dict[str, Say] = {
    "kitchen": Say.of("kitchen"),
    "hall": Say.of("hall"),
    "hall bath": Say.of("hall bath"),
    "master bath": Say.of("master bath"),
    "bath": Say.of("bathroom"),
    "bathroom": Say.of("bathroom"),
    "laundry": Say.of("laundry"),
    "garage": Say.of("garage"),
    "bedroom": Say.of("bedroom"),
    "closet": Say.of("closet"),
    "living room": Say.of("living room"),
    "dining room": Say.of("dining room"),
    "den": Say.of("den"),
    "entry": Say.of("entry"),
    "pantry": Say.of("pantry"),
    "utility room": Say.of("utility room"),
}
"""Rooms people name; any other name stands as it was typed."""

LINES: dict[str, Say] = {
    "main": Say.of("main line"),
    "kitchen": Say.of("kitchen line"),
    "kitchen branch": Say.of("kitchen line"),
    "laundry": Say.of("laundry line"),
    "yard": Say.of("yard line"),
    "yard line": Say.of("yard line"),
    "bath": Say.of("bathroom line"),
}
"""Lines by the name in the notes; any other name stands as it was typed."""

PIPES: dict[str, Say] = {
    "cast iron": Say.of("cast iron"),
    "clay": Say.of("clay"),
    "pvc": Say.of("PVC plastic"),
    "abs": Say.of("ABS plastic"),
    "fiber": Say.of("bituminous fiber (tar paper)"),
    "orangeburg": Say.of("bituminous fiber (tar paper)"),
    "concrete": Say.of("concrete"),
    "lead": Say.of("lead"),
    "liner": Say.of("liner"),
}

CLASSES: dict[str, Say] = {
    "find": Say.of("Investigation and testing"),
    "reach": Say.of("Access and excavation"),
    "pipe": Say.of("Pipe work"),
    "put back": Say.of("Backfill and restoration"),
}
"""The four classes of work, in the order in which they are done."""

CREWS: dict[str, Say] = {
    "plumbing": Say.of("plumbing crew"),
    "tunnel": Say.of("tunnel crew"),
    "labor": Say.of("laborers"),
    "excavation": Say.of("excavation crew"),
    "lining": Say.of("lining crew"),
}
"""Crews by their name in the tables; any other name stands as the firm wrote it."""

UNITS: dict[str, Say] = {
    "ft": Say.of("ft"),
    "lf": Say.of("ft"),
    "sq ft": Say.of("sq ft"),
    "sf": Say.of("sq ft"),
    "each": Say.of("each"),
    "job": Say.of("job"),
    "cy": Say.of("cu yd"),
    "cu yd": Say.of("cu yd"),
    "lcy": Say.of("cu yd"),
    "ton": Say.of("tons"),
    "load": Say.of("loads"),
    "day": Say.of("days"),
    "bag": Say.of("bags"),
    "gal": Say.of("gallons"),
    "hour": Say.of("hours"),
}

LEGS: dict[str, Say] = {
    **ZONES,
    "wall": Say.of("along a wall"),
    "attic": Say.of("through the attic"),
    "ceiling": Say.of("along a ceiling"),
}
"""Where a leg of a way round runs: over a pipe in the ground lies a zone, a wall is none."""


def in_plain_words(words: dict[str, Say], word: str) -> Say:
    """The plain word; the trade's own where the list has none.

    >>> str(in_plain_words(FINDINGS, "sag")), str(in_plain_words(ZONES, "barn"))
    ('a dip (belly) that holds water', 'barn')
    """
    return words.get(word) or Say("{word}", (("word", word),))


ONE: dict[str, Say] = {
    "ton": Say.of("ton"),
    "load": Say.of("load"),
    "loads": Say.of("load"),
    "day": Say.of("day"),
    "bag": Say.of("bag"),
    "gal": Say.of("gallon"),
    "hour": Say.of("hour"),
}
"""Units of which there is just one."""
PER: dict[str, Say] = {**ONE, "ft": Say.of("foot"), "sq ft": Say.of("square foot"), "cu yd": Say.of("cubic yard")}
"""Units after "per": singular."""


HOW: dict[str, Say] = {
    "read": Say.of("located"),
    "between": Say.of("interpolated"),
    "carried": Say.of("extended from the nearest located depth"),
    "assumed": Say.of("assumed"),
}
"""How a depth is known."""

GRADES: dict[str, Say] = {
    "seen": Say.of("seen"),
    "inferred": Say.of("inferred"),
    "suspected": Say.of("suspected"),
    "not inspected": Say.of("not inspected"),
}
