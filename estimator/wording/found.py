"""A finding in, what a homeowner would call it out: a worn bottom in five degrees, everything else by its kind."""

from estimator.model.line import Finding
from estimator.model.say import Say
from estimator.wording.plain import FINDINGS, in_plain_words

WORN_BOTTOM: tuple[tuple[frozenset[str], Say], ...] = (
    (frozenset({"void", "washing"}), Say.of("the bottom of the pipe is gone and the soil under it has washed out, leaving a hollow")),
    (frozenset({"soil seen"}), Say.of("the bottom of the pipe is gone; you can see the soil through it")),
    (frozenset({"gone"}), Say.of("the bottom of the pipe is gone")),
    (frozenset({"sharp"}), Say.of("a groove with sharp edges along the bottom of the pipe, nearly through")),
)  # fmt: skip
"""The worst first; common practice."""


def in_words(finding: Finding) -> Say:
    """What it is, by how far it has gone.

    >>> from estimator.model.stretch import Stretch
    >>> def groove(*signs): return str(in_words(Finding(id="f", kind="channel", stretch=Stretch(8, 21), signs=signs)))
    >>> groove(), groove("gone")
    ('a groove worn into the bottom of the pipe', 'the bottom of the pipe is gone')
    """
    if finding.kind == "channel":
        worst = next((text for signs, text in WORN_BOTTOM if signs & set(finding.signs)), None)
        if worst is not None:
            return worst
    return in_plain_words(FINDINGS, finding.kind)
