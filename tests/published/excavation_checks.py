"""Excavation and silica: every limit at its edge and one step off."""

import math

from estimator.knowledge import excavation as x
from estimator.knowledge import houses, silica
from estimator.works.earth import section_sf, top_width_ft
from tests.published.check import Check

P = "29 CFR 1926 Subpart P"


def _yes(answer: bool) -> float:
    return 1.0 if answer else 0.0


LIMITS = (
    Check(
        id="O1a",
        what="system at 4.99 ft, no sign of caving",
        published=0,
        unit="yes = 1",
        source=f"{P} 1926.652(a)(1)",
        basis="read",
        ours=lambda: _yes(x.needs_system(4.99, "B", False)),
        note="the competent person decides",
    ),
    Check(
        id="O1b",
        what="system at 5.00 ft",
        published=1,
        unit="yes = 1",
        source=f"{P} 1926.652(a)(1)",
        basis="read",
        ours=lambda: _yes(x.needs_system(5.0, "B", False)),
    ),
    Check(
        id="O1c",
        what="system at 3 ft with a sign of caving",
        published=1,
        unit="yes = 1",
        source=f"{P} 1926.652(a)(1)",
        basis="read",
        ours=lambda: _yes(x.needs_system(3.0, "B", True)),
    ),
    Check(
        id="O1d",
        what="system at 9 ft in stable rock",
        published=0,
        unit="yes = 1",
        source=f"{P} 1926.652(a)(1)",
        basis="read",
        ours=lambda: _yes(x.needs_system(9.0, "rock", False)),
    ),
    Check(
        id="O6a",
        what="engineer at 20.0 ft",
        published=0,
        unit="yes = 1",
        source=f"{P} App. B table B-1 note 3",
        basis="read second-hand",
        ours=lambda: _yes(x.needs_engineer(20.0)),
    ),
    Check(
        id="O6b",
        what="engineer at 20.01 ft",
        published=1,
        unit="yes = 1",
        source=f"{P} App. B table B-1 note 3",
        basis="read second-hand",
        ours=lambda: _yes(x.needs_engineer(20.01)),
    ),
    Check(
        id="O7a",
        what="ladder at 3.99 ft",
        published=0,
        unit="yes = 1",
        source=f"{P} 1926.651(c)(2)",
        basis="read",
        ours=lambda: _yes(x.needs_ladder(3.99)),
    ),
    Check(
        id="O7b",
        what="ladder at 4.00 ft",
        published=1,
        unit="yes = 1",
        source=f"{P} 1926.651(c)(2)",
        basis="read",
        ours=lambda: _yes(x.needs_ladder(4.0)),
    ),
    Check(
        id="O7c",
        what="most sideways travel to a ladder",
        published=25,
        unit="ft",
        source=f"{P} 1926.651(c)(2)",
        basis="read",
        ours=lambda: x.LADDER_TRAVEL_FT,
    ),
    Check(
        id="O8a",
        what="ladders in 50 ft",
        published=1,
        unit="each",
        source="from 1926.651(c)(2)",
        basis="computed",
        ours=lambda: x.ladders(50),
    ),
    Check(
        id="O8b",
        what="ladders in 51 ft",
        published=2,
        unit="each",
        source="from 1926.651(c)(2)",
        basis="computed",
        ours=lambda: x.ladders(51),
    ),
    Check(
        id="O8c",
        what="ladders in 120 ft",
        published=3,
        unit="each",
        source="from 1926.651(c)(2)",
        basis="computed",
        ours=lambda: x.ladders(120),
    ),
    Check(
        id="O9",
        what="spoil back from the edge",
        published=2,
        unit="ft",
        source=f"{P} 1926.651(j)(2)",
        basis="read second-hand",
        ours=lambda: x.SPOIL_BACK_FT,
    ),
    Check(
        id="O10a",
        what="air test at 4.0 ft, bad air expected",
        published=0,
        unit="yes = 1",
        source=f"{P} 1926.651(g); OSHA letter of 19 Nov 1991",
        basis="read",
        ours=lambda: _yes(x.air_test(4.0, True)),
    ),
    Check(
        id="O10b",
        what="air test at 4.01 ft, bad air expected",
        published=1,
        unit="yes = 1",
        source=f"{P} 1926.651(g)",
        basis="read",
        ours=lambda: _yes(x.air_test(4.01, True)),
    ),
    Check(
        id="O10c",
        what="air test at 9 ft, none expected",
        published=0,
        unit="yes = 1",
        source=f"{P} 1926.651(g)",
        basis="read",
        ours=lambda: _yes(x.air_test(9.0, False)),
        note="in a tunnel beside an open drain the firm's own rule is always",
    ),
    Check(
        id="O12a",
        what="guardrail at 5.99 ft",
        published=0,
        unit="yes = 1",
        source="29 CFR 1926.501(b)(7)",
        basis="read second-hand",
        ours=lambda: _yes(x.needs_guardrail(5.99)),
    ),
    Check(
        id="O12b",
        what="guardrail at 6.0 ft",
        published=1,
        unit="yes = 1",
        source="29 CFR 1926.501(b)(7)",
        basis="read second-hand",
        ours=lambda: _yes(x.needs_guardrail(6.0)),
    ),
)

SLOPES = (
    *(
        Check(
            id=f"O3 {kind}",
            what=f"steepest side, type {kind}",
            published=slope,
            unit="across to 1 down",
            source=f"{P} App. B table B-1",
            basis="read second-hand",
            ours=lambda kind=kind: x.SLOPE_H_TO_V[kind],
        )
        for kind, slope in (("rock", 0.0), ("A", 0.75), ("B", 1.0), ("C", 1.5))
    ),
    *(
        Check(
            id=f"O4 {kind}",
            what=f"its angle, type {kind}",
            published=degrees,
            unit="degrees",
            source="geometry: atan(1 / slope)",
            basis="computed",
            ours=lambda kind=kind: math.degrees(math.atan(1 / x.SLOPE_H_TO_V[kind])),
            within=0.001,
            note="the rule prints whole degrees",
        )
        for kind, degrees in (("A", 53.130), ("B", 45.0), ("C", 33.690))
    ),
    Check(
        id="O4 top",
        what="top width, 2 ft bottom, 6 ft deep, type B",
        published=14,
        unit="ft",
        source="a worked example of the slope table",
        basis="read",
        ours=lambda: top_width_ft(2, 6, 1.0),
    ),
    Check(
        id="O4 area",
        what="its area",
        published=48,
        unit="sq ft",
        source="A = d (b + s d)",
        basis="computed",
        ours=lambda: section_sf(2, 6, 1.0),
    ),
    Check(
        id="O4 100 ft",
        what="100 ft of it",
        published=177.78,
        unit="cu yd",
        source="A x L / 27",
        basis="computed",
        ours=lambda: section_sf(2, 6, 1.0) * 100 / 27,
        within=0.005,
    ),
    Check(
        id="O4 vertical",
        what="the same with upright sides, 100 ft",
        published=44.44,
        unit="cu yd",
        source="A x L / 27",
        basis="computed",
        ours=lambda: section_sf(2, 6) * 100 / 27,
        within=0.005,
    ),
    Check(
        id="O4 12 ft",
        what="set back each side, 12 ft deep, type B",
        published=12,
        unit="ft",
        source="a worked example of the slope table",
        basis="read",
        ours=lambda: (top_width_ft(0, 12, x.slope("B"))) / 2,
    ),
    Check(
        id="O4 10 ft",
        what="set back each side, 10 ft deep, type B",
        published=10,
        unit="ft",
        source="a worked example of the slope table",
        basis="read",
        ours=lambda: (top_width_ft(0, 10, x.slope("B"))) / 2,
    ),
)

S1 = "29 CFR 1926.1153(c)(1) table 1"
_SILICA = tuple(
    Check(
        id=f"O13 {tool} {n}",
        what=f"mask factor, {tool}, {where}",
        published=factor,
        unit="factor",
        source=S1,
        basis="read",
        ours=lambda tool=tool, n=n: silica.protection_factor(tool, enclosed=n > 1, hours=4.0 if n % 2 == 0 else 4.01),
    )
    for tool, factors in (
        ("handheld saw", (0, 10, 10, 10)),
        ("walk-behind saw", (0, 0, 10, 10)),
        ("rig-mounted core drill", (0, 0, 0, 0)),
        ("handheld drill", (0, 0, 0, 0)),
        ("breaker", (0, 10, 10, 10)),
    )
    for n, (factor, where) in enumerate(
        zip(factors, ("outdoors to 4 h", "outdoors longer", "enclosed to 4 h", "enclosed longer"), strict=True)
    )
)
SILICA = (*_SILICA,)

UNDER_A_SLAB = (
    Check(
        id="beams",
        what="inner beams of a slab lie about so far apart",
        published=15,
        unit="ft",
        source="a regional contractor's page on slab types",
        basis="read",
        ours=lambda: houses.INNER_BEAM_EVERY_FT,
        note="1950s slabs have none; the drawing or a scan decides",
    ),
    Check(
        id="pit off lines",
        what="a tunnel's pit from gas and electric lines",
        published=3,
        unit="ft",
        source="common practice",
        basis="common practice",
        ours=lambda: x.PIT_OFF_LINES_FT,
    ),
)

EXCAVATION = LIMITS + SLOPES + SILICA + UNDER_A_SLAB
