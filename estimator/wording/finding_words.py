"""A finding and its line in, what a homeowner would call it out: by its kind, its signs and what the pipe is made of."""

from estimator.model.line import Finding, Line
from estimator.model.profile import Profile
from estimator.model.say import Say
from estimator.wording.plain import FINDINGS, in_plain_words

WORN_BOTTOM: tuple[tuple[frozenset[str], Say], ...] = (
    (frozenset({"void", "washing"}), Say.of("the bottom of the pipe is gone and the soil below it has washed out")),
    (frozenset({"soil seen"}), Say.of("the bottom of the pipe is gone and soil is visible")),
    (frozenset({"gone"}), Say.of("the bottom of the pipe is gone")),
    (frozenset({"sharp"}), Say.of("pipe bottom worn nearly through, with sharp edges")),
)
"""The worst first; common practice."""
SIGNS: dict[tuple[str, str], Say] = {
    ("sag", "never ends"): Say.of("standing water; its cause is downstream or not known yet"),
    ("leak", "running in"): Say.of("groundwater leaks into the pipe"),
    ("leak", "running out"): Say.of("water leaks out of the pipe"),
    ("fitting", "catches paper"): Say.of("a fitting that does not belong in a drain; it catches paper"),
}
"""What a sign makes of a finding."""
RUST = Say.of("rust build-up")
DEPOSITS = Say.of("mineral deposits inside the pipe")
RUSTS, NEVER_RUSTS = ("iron", "steel", "galv"), ("pvc", "abs", "hdpe", "plastic", "clay", "concrete", "cement", "fiber")
"""In the name of a pipe that rusts, and of one that cannot."""


def in_words(finding: Finding, line: Line | None = None) -> Say:
    """Return what it is, by how far it has gone; rust only where the line is said to be iron or steel there.

    >>> from estimator.model.stretch import Stretch
    >>> def groove(*signs): return str(in_words(Finding(id="f", kind="channel", stretch=Stretch(8, 21), signs=signs)))
    >>> groove(), groove("gone")
    ('the bottom of the pipe is worn thin', 'the bottom of the pipe is gone')
    """
    if finding.kind == "channel":
        worst = next((text for signs, text in WORN_BOTTOM if signs & set(finding.signs)), None)
        if worst is not None:
            return worst
    if finding.kind == "scale" and line is not None:
        pipe = Profile(line).pipe(finding.stretch.middle_ft).value.lower()
        if any(word in pipe for word in RUSTS):
            return RUST
        if any(word in pipe for word in NEVER_RUSTS):
            return DEPOSITS
    signed = (SIGNS[finding.kind, sign] for sign in finding.signs if (finding.kind, sign) in SIGNS)
    return next(signed, in_plain_words(FINDINGS, finding.kind))
