"""What is done on a return visit so that a price can be fixed: the kinds of it, each with what the papers call it."""

from estimator.model.say import Say

KINDS: dict[str, Say] = {
    "film": Say.of("inspect it with the camera from each open end"),
    "locate": Say.of("locate the pipe and its depth from the ground over it"),
    "pothole": Say.of("uncover the pipe from above in one place, with nobody in the hole, and measure its depth"),
    "level": Say.of("take levels of the pipe bottom at both ends and beyond"),
    "measure": Say.of("measure the way in: walls, open ground, where the lines join"),
    "test": Say.of("water-test all drains under the floor together, filled no higher than the top of the slab"),
    "smoke": Say.of("test drains and vents with smoke, with every trap full"),
    "scan": Say.of("scan the slab for steel cables"),
    "engineer": Say.of("have an engineer look at the footing and the slab"),
}
"""Every kind of visit; a repair of this way names its kinds among its facts, as `visit film`."""


def fact(kind: str) -> str:
    """
    >>> fact("film")
    'visit film'
    """
    return f"visit {kind}"


def kinds_in(facts: frozenset[str]) -> tuple[str, ...]:
    """Return the kinds of visit these facts name, in the order of KINDS."""
    return tuple(kind for kind in KINDS if fact(kind) in facts)
