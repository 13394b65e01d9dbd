"""A line or a slab as written comes in; measures that no house drain has go out as what must be asked or mended."""

from collections.abc import Iterator

from estimator.fieldnotes.limits import DEEP_FT, MOST_DEPTH_FT, THICK_SLAB_FT
from estimator.model.line import Line, Origin
from estimator.model.problem import Place, Problem, error, question
from estimator.model.profile import Profile

DEEP = question(
    "log/deep",
    "a depth of {feet} ft is deeper than house drains lie.",
    "Look for a slip of the finger or the unit; if it is so, locate it a second time.",
    "Earth, shoring and price grow with it.",
)
OFFSET_ABOVE_BORE = error(
    "log/offset-above-bore",
    "an offset of {size} in cannot be in a pipe of {bore} in.",
    "Look for a slip of the finger or the unit; a joint that far apart is a `collapse` or a `gap`.",
    "A lip is never higher than the bore.",
)
HOLE_ABOVE_BORE = question(
    "log/hole-above-bore",
    "a hole of {size} in is larger than the bore of {bore} in.",
    "Look for a slip of the finger or the unit; if a piece of the wall is gone, `collapse` or a stretch says it better.",
    "A hole that size loses the soil over the pipe.",
)
THICK_SLAB = error(
    "job/thick-slab",
    "slab_thickness is {inches} in, and no floor slab of a house is that thick.",
    'Write the slab alone, such as slab_thickness = "4 in"; a beam in it goes into the log or edge_beam.',
    "What is sawn, broken and hauled hangs on it.",
)
PROBLEMS = (DEEP, OFFSET_ABOVE_BORE, HOLE_ABOVE_BORE, THICK_SLAB)

_ABOVE_BORE = {"offset": OFFSET_ABOVE_BORE, "hole": HOLE_ABOVE_BORE}


def unlikely(line: Line, profile: Profile) -> Iterator[Problem]:
    """Depths below house drains, offsets and holes larger than the bore they are in."""
    for mark in line.marks:
        if DEEP_FT < (mark.depth_ft or 0.0) <= MOST_DEPTH_FT:
            yield DEEP(_place(mark.origin), feet=mark.depth_ft)
    for finding in (*line.findings, *line.superseded):
        bore = profile.bore_in(finding.stretch.middle_ft).value
        if finding.kind in _ABOVE_BORE and (finding.size_in or 0.0) > bore > 0:
            yield _ABOVE_BORE[finding.kind](_place(finding.origin), size=finding.size_in, bore=bore)


def thick_slab(thickness_ft: float | None, place: Place) -> Iterator[Problem]:
    """18 in is the limit, itself allowed."""
    if thickness_ft is not None and thickness_ft > THICK_SLAB_FT:
        yield THICK_SLAB(place, inches=round(thickness_ft * 12, 2))


def _place(origin: Origin) -> Place:
    return Place(origin.file, origin.row, origin.column)
