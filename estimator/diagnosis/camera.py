"""What the camera itself tells: fiber pipe, a stop with no flow, passes that disagree, percents judged by eye (D17, D19, D24).

Common practice: a camera head that only just goes into a 2 in cleanout may not come back out.
"""

from collections.abc import Iterable

from estimator.diagnosis.case import Case
from estimator.diagnosis.reading import Hit, Reading, each
from estimator.diagnosis.severity import REPAIR, WATCH, severity
from estimator.model.line import Finding
from estimator.model.obstructions import run_to_from_both_ends
from estimator.model.pump import pumped
from estimator.model.say import Feet, Say

LIMITS = {"roots": "roots_3_percent", "offset": "offset_3_percent", "scale": "scale_3_percent", "grease": "scale_3_percent", "sag": "sag_3_percent", "oval": "oval_3_percent"}  # fmt: skip
"""The limit from which a finding must be repaired, by kind."""


def fibre_trouble(case: Case) -> tuple[Finding, ...]:
    return tuple(f for f in case.line.findings if case.family_at(f) == "fibre" and severity(f, case) >= WATCH)


def closed(case: Case) -> Iterable[Hit]:
    """The camera could not pass and nothing flows, or nobody knows what it is."""
    stops = [f for f in case.line.findings if f.kind in ("blocked", "collapse") or "cannot pass" in f.signs]
    hard = (f for f in stops if severity(f, case) >= REPAIR and "soft" not in f.signs and "still flows" not in f.signs)
    return tuple(
        Hit(f.stretch, (f,), confirm=DIG_TO_SEE if run_to_from_both_ends(case.line, f) else None) for f in hard
    )


DIG_TO_SEE = Say.of("The camera has come up to this from both ends: dig to see.")


def passes_disagree(case: Case) -> Iterable[Hit]:
    """What was said to be the same on two passes, and a branch that two passes call by one name."""
    tied = [(what, abs(by_ft)) for one in case.line.passes for what, by_ft in one.ties]
    for what, difference_ft in (*tied, *_named_twice(case, {what.lower() for what, _ in tied})):
        if difference_ft > case.number("passes_differ_ft"):
            yield Hit(None, (), (("what", what), ("difference", Feet(round(difference_ft, 1)))))


def _named_twice(case: Case, tied: set[str]) -> Iterable[tuple[str, float]]:
    seen: dict[str, dict[int, list[float]]] = {}
    for mark in case.profile.marks("branch"):
        if mark.name and mark.name.lower() not in tied:
            seen.setdefault(mark.name.lower(), {}).setdefault(mark.origin.pass_number, []).append(
                mark.stretch.middle_ft
            )
    for name, by_pass in seen.items():
        if all(len(places) == 1 for places in by_pass.values()):  # two wyes of one name in one pass tell nothing
            places = [at for (at,) in by_pass.values()]
            yield name, max(places) - min(places)


def near_a_limit(case: Case) -> Iterable[Hit]:
    reach = case.number("eye_tolerance_percent")
    by_eye = [f for f in case.line.findings if f.kind in LIMITS and f.percent is not None]
    return each(f for f in by_eye if abs((f.worst_percent or 0.0) - case.number(LIMITS[f.kind])) < reach)


def small_access(case: Case) -> Iterable[Hit]:
    least = case.number("camera_access_min_in")
    tight = [m for m in case.profile.marks("cleanout", "access") if m.size_in is not None and m.size_in <= least]
    return tuple(Hit(m.stretch) for m in tight)


def pumped_out(case: Case) -> Iterable[Hit]:
    return (Hit(None),) if pumped(case.job) else ()


READINGS = (
    Reading(
        id="fiber-has-failed",
        numbers=("D17",),
        evidence="fiber pipe with any defect",
        effect="renewal of the whole run is the only right answer",
        meaning=Say.of(
            "Tar-paper pipe with any trouble has failed as a material: no part of it is sound enough to join to."
        ),
        sees=lambda case: each(fibre_trouble(case)),
    ),
    Reading(
        id="camera-cannot-pass",
        numbers=("D19",),
        evidence="the camera cannot pass and nothing flows, or what stops it is hard or unknown",
        effect="a look-and-see dig at a fixed price; everything beyond is not inspected",
        meaning=Say.of("Collapsed, or something hard in the way: nothing beyond it was seen."),
        confirm=Say.of("Come in from the other end, or dig to see."),
        asks=True,
        sees=closed,
    ),
    Reading(
        id="passes-disagree",
        numbers=("D24",),
        evidence="the same thing lies more than 3 ft apart on two camera passes",
        effect="no fixed quantities until it is settled",
        meaning=Say.of("Two camera passes put {what} {difference} apart: a riser or a zero is wrong."),
        confirm=Say.of("Locate it again from above before anything is marked or dug."),
        asks=True,
        not_fixed=Say.of(
            "Our two camera runs do not agree on where the damage is. We can set a firm price after we locate it again from above."
        ),
        source="plain arithmetic",
        sees=passes_disagree,
        reads=("passes_differ_ft",),
    ),
    Reading(
        id="another-line-in-the-bore",
        numbers=(),
        evidence="a foreign pipe or cable through the drain",
        effect="everything stops until its owner has cleared it; urgency 4",
        meaning=Say.of(
            "Another line runs through the drain and may be gas: stop, do not pull the tool back, no flame, no switch; people out, 911 and the gas company from outside."
        ),
        confirm=Say.of("Whose line is it? Its owner must clear it before anyone works in or above this drain."),
        asks=True,
        not_fixed=Say.of(
            "Another pipe or cable runs through your drain. No one works in or above this drain until its owner has cleared it in writing."
        ),
        sees=lambda case: each(case.of("utility")),
    ),
    Reading(
        id="judged-by-eye-near-a-limit",
        numbers=(),
        evidence="a percent judged by eye within 10 points of the limit that makes a repair a must",
        effect="both outcomes are shown; a still picture is asked for",
        meaning=Say.of("Visual estimate, near the limit. Low end: monitor. High end: repair required."),
        confirm=Say.of("Take a photo with a ruler or coin for scale."),
        asks=True,
        sees=near_a_limit,
        reads=("eye_tolerance_percent",),
    ),
    Reading(
        id="small-access-for-the-camera",
        numbers=(),
        evidence="a camera let in through a 2 in cleanout",
        effect="a caution for the next visit",
        meaning=Say.of("A head that only just goes into so small a cleanout may not come back out."),
        confirm=Say.of("Film from a larger access, or with a small head."),
        sees=small_access,
        reads=("camera_access_min_in",),
    ),
    Reading(
        id="pumped-under-pressure",
        numbers=(),
        evidence="a pump, an ejector pit or a force main",
        effect="no camera and no water test tells about the pressure pipe; nothing on it has a fixed price",
        meaning=Say.of(
            "A pump pushes the sewage out through a force main: it is under pressure, it has no fall, and no drain camera or water test speaks for it."
        ),
        confirm=Say.of(
            "Look at the pump, its check valve and the pit first. Then test the force main with pressure and find where it runs."
        ),
        asks=True,
        sees=pumped_out,
    ),
)
