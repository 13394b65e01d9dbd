"""Roots: they mean an opening, and at most joints of a clay run they mean its end (D01, D18).

Common practice: where roots get in, water gets out.
"""

from collections.abc import Iterable

from estimator.diagnosis.case import Case, Run
from estimator.diagnosis.reading import Hit, Reading, each
from estimator.model.say import Say


def opening_at_roots(case: Case) -> Iterable[Hit]:
    return each(case.of("roots"))


def root_places(case: Case, run: Run) -> int:
    """Joints with roots on a run: the count given with a finding, else one for each."""
    return sum(f.count or 1 for f in case.of("roots") if run.stretch.holds(f.stretch.middle_ft))


def joints_in_view(case: Case, run: Run) -> int:
    """Joints filmed on a run: as recorded, else its filmed length over the lay length (a setting), 0 when none was filmed."""
    seen = [part for piece in case.profile.filmed if (part := piece.common(run.stretch)) is not None]
    marks = {
        m.stretch.from_ft
        for m in case.profile.marks("joint")
        if m.stretch.length_ft == 0 and run.stretch.holds(m.stretch.from_ft)
    }
    if marks:
        return len(marks)
    return round(sum(part.length_ft for part in seen) / case.number("clay_lay_length_ft"))


def most_joints_have_roots(case: Case, run: Run) -> bool:
    """Roots at the share of the joints in view that ends a clay run, or more."""
    joints = joints_in_view(case, run)
    roots = root_places(case, run)
    return (
        run.family == "clay"
        and joints > 0
        and roots > 1
        and 100.0 * roots >= case.number("clay_roots_joints_percent") * joints
    )


def clay_at_its_end(case: Case) -> Iterable[Hit]:
    for run in case.runs:
        if most_joints_have_roots(case, run):
            words = (("roots", root_places(case, run)), ("joints", joints_in_view(case, run)))
            yield Hit(run.stretch, tuple(f for f in case.of("roots") if run.stretch.holds(f.stretch.middle_ft)), words)


READINGS = (
    Reading(
        id="roots-mean-an-opening",
        numbers=("D01",),
        evidence="roots anywhere",
        effect="adds an opening (inferred) to the need; cleaning alone is maintenance",
        meaning=Say.of("Roots get in only where the pipe is open: water gets out there too."),
        confirm=Say.of("Look again after the roots are cut."),
        sees=opening_at_roots,
    ),
    Reading(
        id="clay-at-its-end",
        numbers=("D18",),
        evidence="clay, roots at half of the joints in view or more",
        effect="renewal of the whole run is the only right answer",
        meaning=Say.of("Roots at {roots} of {joints} joints: every joint of this clay run is at the end of its life."),
        sees=clay_at_its_end,
        reads=("clay_roots_joints_percent", "clay_lay_length_ft"),
    ),
)
