"""Standing water: a dip, a stoppage further down, or a picture of low flow (D02, D03, D04, D25).

Common practice: standing water means a sag or reverse fall.
"""

from collections.abc import Iterable

from estimator.diagnosis.case import Case
from estimator.diagnosis.reading import Hit, Reading, each
from estimator.diagnosis.severity import PLAN, severity
from estimator.model.line import Finding
from estimator.model.say import Say


def is_dip(finding: Finding) -> bool:
    """Standing water that ends: water that never ends downstream is a stoppage, water only in use is no dip."""
    return finding.kind == "sag" and not {"never ends", "only in use"} & set(finding.signs)


def dips(case: Case) -> Iterable[Hit]:
    slopes = case.of("reverse fall", "backfall")
    return each(f for f in (*case.of("sag"), *slopes) if f in slopes or is_dip(f))


def held_back(case: Case) -> Iterable[Hit]:
    return each(f for f in case.of("sag") if "never ends" in f.signs)


def low_flow(case: Case) -> Iterable[Hit]:
    return each(f for f in case.of("sag") if "only in use" in f.signs)


def fed_by_a_dip(case: Case) -> Iterable[Hit]:
    """Anything to be repaired downstream of a dip: if the dip is kept it goes on feeding solids."""
    way = case.line.downstream
    kept = [f for f in case.of("sag") if is_dip(f) and severity(f, case) >= PLAN]
    for dip in kept:
        below = [
            f
            for f in case.line.findings
            if f.kind not in ("sag", "mud", "insects")
            and (f.stretch.middle_ft - dip.stretch.middle_ft) * way > 0
            and severity(f, case) >= PLAN
        ]
        if below:
            yield Hit(dip.stretch, (dip, *below))


READINGS = (
    Reading(
        id="standing-water-is-a-dip",
        numbers=("D02",),
        evidence="standing water, the lens goes under and out again; or pipe that slopes the wrong way",
        effect="a dip: lining and bursting do not cure it",
        meaning=Say.of("Water stands in the pipe: it has sunk, or slopes the wrong way."),
        confirm=Say.of("Run water, then film again with the flow stopped."),
        asks=True,
        sees=dips,
    ),
    Reading(
        id="water-that-never-ends",
        numbers=("D03",),
        evidence="standing water that never ends downstream",
        effect="no dip is priced until it is cleared and filmed",
        meaning=Say.of(
            "The water never ends downstream: something further down holds it back, or the city main is full. It may be no dip."
        ),
        confirm=Say.of("Clear the line downstream and film again."),
        asks=True,
        not_fixed=Say.of(
            "The standing water has no end downstream: something farther down may hold it back. We can set a firm price after we clear the line and inspect it again."
        ),
        sees=held_back,
    ),
    Reading(
        id="water-only-in-use",
        numbers=("D04",),
        evidence="water only while a fixture was used",
        effect="severity one lower",
        meaning=Say.of("Water stood there only while somebody used water: a picture of low flow."),
        confirm=Say.of("Film again with nobody using water."),
        asks=True,
        sees=low_flow,
    ),
    Reading(
        id="dip-feeds-what-lies-below",
        numbers=("D25",),
        evidence="a repair downstream of a dip that is kept",
        effect="said under “what stays old”",
        meaning=Say.of("If the dip upstream stays, it keeps feeding solids to this place."),
        sees=fed_by_a_dip,
    ),
)
