"""Water standing in pipes."""

from estimator.knowledge import flow
from estimator.knowledge import hydrostatics as h
from estimator.knowledge.hydrostatics import PVC_LB_PER_FT, uplift_lb_per_ft
from estimator.knowledge.pipes import pipe_size
from estimator.model.job import WaterTest
from estimator.takeoff.water_test import leak
from tests.published.check import Check


def _all_risers() -> float:
    """Two closet bends and a cleanout of 4 in, a shower of 2 in and a tub of 1 1/2 in, all open: all of them fall together."""
    found = leak(WaterTest(section="house", open_risers_in=(4, 4, 4, 2, 1.5), readings=((0, 0.0), (20, 1.5))))
    assert found is not None
    return found.gal_per_day


WATER = (
    Check(
        id="H psi",
        what="one foot of water",
        published=0.4333,
        unit="psi",
        source="62.4 / 144",
        basis="read",
        ours=lambda: h.head_psi(1),
        within=0.00005,
    ),
    Check(
        id="H 10",
        what="10 ft of water",
        published=4.33,
        unit="psi",
        source="62.4 / 144",
        basis="read",
        ours=lambda: h.head_psi(10),
        within=0.005,
    ),
    Check(
        id="H 3",
        what="3 ft of water",
        published=1.299,
        unit="psi",
        source="62.4 / 144",
        basis="read",
        ours=lambda: h.head_psi(3),
        within=0.0015,
        note="the page uses 0.433; exact is 1.300",
    ),
    Check(
        id="H ft",
        what="one psi",
        published=2.31,
        unit="ft",
        source="144 / 62.4",
        basis="read",
        ours=lambda: 1 / h.head_psi(1),
        within=0.005,
    ),
    Check(
        id="H gal",
        what="one cu ft",
        published=7.48,
        unit="gal",
        source="1728 / 231",
        basis="read",
        ours=lambda: 1728 / h.CUBIC_IN_PER_GAL,
        within=0.005,
    ),
    Check(
        id="H lb",
        what="one gallon",
        published=8.34,
        unit="lb",
        source="62.4 / 7.48",
        basis="read",
        ours=lambda: h.WATER_LB_PER_CF / h.GAL_PER_CF,
        within=0.005,
    ),
    *(
        Check(
            id=f"H fill {d:g}",
            what=f"one ft of {d:g} in pipe, nominal",
            published=gal,
            unit="gal",
            source="0.0408 d²",
            basis="computed",
            ours=lambda d=d: h.pipe_gal_per_ft(d),
            within=0.00005,
        )
        for d, gal in ((1.5, 0.0918), (2, 0.1632), (3, 0.3672), (4, 0.6528), (6, 1.4688))
    ),
    *(
        Check(
            id=f"H bore {d:g}",
            what=f"one ft of {d:g} in Schedule 40, true bore",
            published=gal,
            unit="gal",
            source="0.0408 d²",
            basis="computed",
            ours=lambda d=d: h.pipe_gal_per_ft(pipe_size(d).inside_in),
            within=0.0005,
        )
        for d, gal in ((1.5, 0.1058), (2, 0.1743), (3, 0.3840), (4, 0.6613), (6, 1.5008))
    ),
    *(
        Check(
            id=f"H inch {d}",
            what=f"one inch of fall in a {d} in riser",
            published=gal,
            unit="gal",
            source="0.0408 d² / 12",
            basis="computed",
            ours=lambda d=d: h.gal_per_inch([d]),
            within=0.00005,
        )
        for d, gal in ((2, 0.0136), (3, 0.0306), (4, 0.0544), (6, 0.1224))
    ),
    Check(
        id="H leak",
        what="3 in riser, 1 in in 15 min",
        published=0.122,
        unit="gal/h",
        source="drop x gal/in / time",
        basis="computed",
        ours=lambda: h.leak_gal_per_hour(1, 15, [3]),
        within=0.0005,
    ),
    Check(
        id="H leak day",
        what="the same",
        published=2.94,
        unit="gal/day",
        source="drop x gal/in / time",
        basis="computed",
        ours=lambda: h.leak_gal_per_hour(1, 15, [3]) * 24,
        within=0.005,
    ),
    Check(
        id="H plug",
        what="push on a 4 in plug at 10 ft",
        published=55,
        unit="lb",
        source="pressure x area",
        basis="computed",
        ours=lambda: h.plug_load_lb(4, 10),
        within=1.0,
    ),
    Check(
        id="H five risers",
        what="1 1/2 in in 20 min in a house with five openings",
        published=20,
        unit="gal/day",
        source="42.6 sq in x 1.5 in / 231 / 20 min",
        basis="computed",
        ours=_all_risers,
        within=0.2,
        note="one riser alone would say 6",
    ),
    *(
        Check(
            id=f"M {d}@{fall:g}",
            what=f"full {d} in pipe at {fall:g} in/ft",
            published=fps,
            unit="ft/s",
            source="Manning, n = 0.013",
            basis="computed",
            ours=lambda d=d, fall=fall: flow.full_velocity_fps(d, fall),
            within=0.005,
        )
        for d, fall, fps in ((4, 0.25, 3.15), (4, 0.125, 2.23), (3, 0.125, 1.84), (6, 0.125, 2.92))
    ),
    Check(
        id="F 4 in",
        what="uplift of an empty 4 in pipe in wet fill",
        published=11,
        unit="lb/ft",
        source="a page on flotation (read); 120 lb/cu ft",
        basis="computed",
        ours=lambda: uplift_lb_per_ft(4.5, PVC_LB_PER_FT[4]),
        within=0.5,
    ),
    Check(
        id="F hanger",
        what="the same on one 4 ft hanger",
        published=45,
        unit="lb",
        source="a page on flotation (read)",
        basis="computed",
        ours=lambda: 4 * uplift_lb_per_ft(4.5, PVC_LB_PER_FT[4]),
        within=0.5,
    ),
)
