"""The steps of the work in their order, in words; which of them open and close the ground."""

from estimator.model.say import Say

STEPS: dict[str, Say] = {
    "site": Say.of("coming to the house and setting up"),
    "look": Say.of("filming and testing"),
    "uncover": Say.of("pipe and buried lines uncovered by hand"),
    "clean": Say.of("pipe cleaned"),
    "open": Say.of("floor, walk or drive opened"),
    "dig": Say.of("digging to the pipe"),
    "pipe": Say.of("work on the pipe"),
    "join": Say.of("new way joined to the drain"),
    "test": Say.of("water test"),
    "inspect": Say.of("inspector's visit"),
    "film": Say.of("camera video of the finished work"),
    "fill": Say.of("filling and packing"),
    "close": Say.of("floor, paving and grass put back"),
    "return": Say.of("a second visit on another day"),
}
"""The steps of the work in the order in which they are done, in words."""
LATER = "return"
"""A visit long after the rest: it holds nobody up and counts in no days."""
OPENING_STEPS = frozenset({"uncover", "open", "dig"})
