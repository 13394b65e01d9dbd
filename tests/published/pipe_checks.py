"""Pipe sizes and trench widths."""

import math

from estimator.knowledge.pipes import pipe_size
from estimator.knowledge.trench import bedding_in, d2321_width_in
from tests.published.check import Check

D1785 = "ASTM D1785 / D2665"
D3034 = "ASTM D3034"
CISPI = "CISPI 301"
D2321 = "ASTM D2321: larger of OD + 16 in and 1.25 OD + 12 in"

SIZES = (
    *(
        Check(
            id=f"sch40 {n:g} {what}",
            what=f"Schedule 40, {n:g} in, {what}",
            published=value,
            unit="in",
            source=D1785,
            basis="memory",
            ours=ours,
            within=0.0006,
        )
        for n, od, wall, inside in (
            (1.5, 1.900, 0.145, 1.610),
            (2, 2.375, 0.154, 2.067),
            (3, 3.500, 0.216, 3.068),
            (4, 4.500, 0.237, 4.026),
            (6, 6.625, 0.280, 6.065),
        )
        for what, value, ours in (
            ("outside", od, lambda n=n: pipe_size(n).outside_in),
            ("wall", wall, lambda n=n: pipe_size(n).wall_in),
            ("inside", inside, lambda n=n: pipe_size(n).inside_in),
        )
    ),
    *(
        Check(
            id=f"sdr35 {n}",
            what=f"SDR 35, {n} in, outside",
            published=od,
            unit="in",
            source=D3034,
            basis="read",
            ours=lambda n=n: pipe_size(n, "SDR 35").outside_in,
        )
        for n, od in ((4, 4.215), (6, 6.275), (8, 8.4), (10, 10.5), (12, 12.5), (15, 15.3))
    ),
    Check(
        id="sdr35 wall",
        what="SDR 35, 4 in, wall",
        published=0.120,
        unit="in",
        source=D3034,
        basis="read",
        ours=lambda: pipe_size(4, "SDR 35").wall_in,
    ),
    Check(
        id="sdr35 ratio",
        what="SDR 35, 4 in, outside / 35",
        published=0.1204,
        unit="in",
        source="outside / 35",
        basis="computed",
        ours=lambda: pipe_size(4, "SDR 35").outside_in / 35,
        within=0.00005,
    ),
    *(
        Check(
            id=f"no-hub {n:g} {what}",
            what=f"no-hub iron, {n:g} in, {what}",
            published=value,
            unit="in",
            source=CISPI,
            basis="read",
            ours=ours,
            within=0.0005,
        )
        for n, od, inside in (
            (1.5, 1.90, 1.50),
            (2, 2.35, 1.96),
            (3, 3.35, 2.96),
            (4, 4.38, 3.94),
            (5, 5.30, 4.94),
            (6, 6.30, 5.94),
            (8, 8.38, 7.94),
        )
        for what, value, ours in (
            ("outside", od, lambda n=n: pipe_size(n, "no-hub").outside_in),
            ("inside", inside, lambda n=n: pipe_size(n, "no-hub").inside_in),
        )
    ),
    *(
        Check(
            id=f"displaced {od:g}",
            what=f"earth 100 ft of pipe displaces, outside {od:g} in",
            published=cy,
            unit="cu yd",
            source="pi/4 x OD² x 100 / 27",
            basis="computed",
            ours=lambda n=n: math.pi / 4 * (pipe_size(n).outside_in / 12) ** 2 * 100 / 27,
            within=0.0001,
        )
        for n, od, cy in ((3, 3.5, 0.2475), (4, 4.5, 0.4091), (6, 6.625, 0.8866))
    ),
)

_WIDTHS = tuple(
    Check(
        id=f"D2321 {kind} {n:g}",
        what=f"least trench, {kind} {n:g} in",
        published=width,
        unit="in",
        source=D2321,
        basis="computed",
        ours=lambda kind=kind, n=n: d2321_width_in(pipe_size(n, kind).outside_in),
        within=0.0005,
    )
    for kind, rows in (
        ("Schedule 40", ((1.5, 17.9), (2, 18.375), (3, 19.5), (4, 20.5), (6, 22.625))),
        ("SDR 35", ((4, 20.215), (6, 22.275), (8, 24.4))),
        ("no-hub", ((2, 18.35), (3, 19.35), (4, 20.38), (6, 22.3))),
    )
    for n, width in rows
)
WIDTHS = (
    *_WIDTHS,
    Check(
        id="D2321 meet",
        what="where the two rules meet, outside 16 in",
        published=32,
        unit="in",
        source=D2321,
        basis="read",
        ours=lambda: d2321_width_in(16.0),
    ),
    Check(
        id="D2321 below",
        what="just below, outside 15.9 in",
        published=31.9,
        unit="in",
        source=D2321,
        basis="computed",
        ours=lambda: d2321_width_in(15.9),
    ),
    Check(
        id="D2321 above",
        what="just above, outside 16.1 in",
        published=32.125,
        unit="in",
        source=D2321,
        basis="computed",
        ours=lambda: d2321_width_in(16.1),
    ),
    Check(
        id="bedding",
        what="least bedding",
        published=4,
        unit="in",
        source="ASTM D2321",
        basis="read second-hand",
        ours=lambda: bedding_in(False),
    ),
    Check(
        id="bedding rock",
        what="least bedding over rock",
        published=6,
        unit="in",
        source="ASTM D2321",
        basis="read second-hand",
        ours=lambda: bedding_in(True),
    ),
)

PIPES = SIZES + WIDTHS
