"""What the notes or a rule know in one word in, the same as the sentence of a rule reads it out."""

from estimator.model.say import Say

RUNS: dict[str, Say] = {
    "nothing": Say.of("nothing"),
    "ducts": Say.of("ducts"),
    "conduit": Say.of("conduit"),
    "copper under slab": Say.of("copper under the slab"),
    "overhead": Say.of("overhead"),
    "unknown": Say.of("not known"),
}
"""What is noted of lines in the slab and of water lines, as it is read out."""


def why_of_type(*, leak: bool, water: bool, classified: bool) -> Say:
    """Why the soil is of that type, the worst reason first."""
    if leak:
        return Say.of("a drain leaks there")
    if water:
        return Say.of("water")
    return Say.of("classified") if classified else Say.of("not classified")
