"""Any line, any stretch, any method: a takeoff with finite amounts, never a trace; and what must hold for all of them."""

import math
from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from estimator.model.job import Job, Leg, Reroute, Site
from estimator.model.line import FINDING_WORDS, ZONES, Join, Line, Mark, Pass
from estimator.model.stretch import Stretch
from estimator.model.work import Repair
from estimator.tables.tables import Tables
from estimator.takeoff import take_off, take_off_job
from estimator.takeoff.case import Case
from estimator.takeoff.quantities import FACTS
from estimator.works.methods import names
from tests.takeoff.houses import at, hole, house

stations = st.integers(-10, 60).map(float)
feet = st.sampled_from([0.5, 1.0, 1.5, 2.6, 3.4, 4.5, 6.0, 9.0, 21.0])


@st.composite
def marks(draw: st.DrawFn) -> Mark:
    low = draw(stations)
    high = low + draw(st.sampled_from([0.0, 0.0, 5.0, 30.0]))
    word = draw(
        st.sampled_from(
            [
                *ZONES,
                "depth",
                "loc",
                "invert",
                "pothole",
                "beam",
                "branch",
                "bend",
                "crossing",
                "clear",
                "edge",
                "footing",
                "beside",
                "room",
                "size",
                "soil",
                "cleanout",
                "water table",
                "crawl",
                "under",
            ]
        )
    )
    deep = draw(feet)
    slots: dict[str, object] = {}
    if word in ("depth", "loc", "invert", "pothole", "water table"):
        slots = {
            "depth_ft": deep,
            "surface": draw(st.sampled_from([None, "slab", "lawn"])),
            "to": "invert" if word == "invert" else "centre",
        }
    elif word == "branch":
        slots = {
            "size_in": draw(st.sampled_from([1.5, 2.0, 3.0])),
            "live": draw(st.sampled_from([None, "live", "dead"])),
            "lengths": draw(st.sampled_from([(), (("away", 3.0),)])),
        }
    elif word == "size":
        slots = {"size_in": draw(st.sampled_from([2.0, 3.0, 4.0, 6.0]))}
    elif word == "bend":
        slots = {"degrees": draw(st.sampled_from([None, 45.0, 90.0]))}
    else:
        slots = {
            "lengths": draw(
                st.sampled_from([(), (("", deep),), (("away", deep), ("deep", 1.5)), (("wide", 1.0), ("deep", 2.0))])
            ),
            "choice": draw(st.sampled_from([None, "lawn", "gas", "bare", "concrete"])),
            "name": "hall",
        }
    return at(word, low, high, holds=draw(st.booleans()) if word in ZONES else False, **slots)


@st.composite
def jobs(draw: st.DrawFn) -> Job:
    findings = tuple(
        hole(draw(st.sampled_from(FINDING_WORDS)), draw(stations), percent=draw(st.sampled_from([None, (10.0, 30.0)])))
        for _ in range(draw(st.integers(0, 3)))
    )
    downstream = draw(st.sampled_from([1, -1]))
    passes = (
        Pass(
            number=1, access="cleanout", flow="with flow", riser_ft=2.0, start_ft=0.0, sign=1, seen=Stretch(0.0, 60.0)
        ),
    )
    main = Line(
        name="main",
        size_in=draw(st.sampled_from([2.0, 3.0, 4.0, 6.0])),
        pipe=draw(st.sampled_from(["cast iron", "clay", "PVC"])),
        downstream=downstream,
        marks=tuple(draw(st.lists(marks(), max_size=9))),
        findings=findings,
        passes=draw(st.sampled_from([(), passes])),
    )
    side = Line(
        name="side",
        size_in=2,
        pipe="cast iron",
        joins=Join("main", draw(stations)),
        length_ft=12.0,
        marks=(at("end", 0.0),),
    )
    way = Reroute(
        name="round",
        replaces_line="main",
        legs=(Leg(zone="yard", length_ft=20.0),),
        fall_available_ft=draw(st.sampled_from([None, 0.1, 2.0])),
        serves=draw(st.sampled_from([(), (("toilet", 2),), (("fish pond", 1),)])),
        size_in=draw(st.sampled_from([None, 2.0])),
    )
    site = Site(
        machine=draw(st.booleans()),
        caving_signs=draw(st.sampled_from([None, True, False])),
        water_table_ft=draw(st.sampled_from([None, 2.0])),
        carry_ft=draw(st.sampled_from([None, 60.0])),
    )
    job = house(
        main,
        site=site,
        soil=draw(st.sampled_from([None, "firm clay", "rock", "sand", "fill", "green cheese"])),
        jurisdiction=draw(st.sampled_from(["demo", "unknown", "nowhere"])),
        built=draw(st.sampled_from([None, 1960, 1990])),
        floor=draw(
            st.sampled_from(["slab", "post-tensioned slab", "slab, tendons unknown", "crawl space", "basement"])
        ),
        job={"reroutes": (way,)},
    )
    return replace(job, lines=(main, side))


@st.composite
def repairs(draw: st.DrawFn) -> Repair:
    low = draw(stations)
    return Repair(
        id="r",
        method=draw(st.sampled_from(names())),
        line=draw(st.sampled_from(["main", "main", "side"])),
        stretch=Stretch(low, low + draw(st.sampled_from([0.0, 1.0, 9.0, 40.0]))),
        entry=draw(st.sampled_from(["", "exit", "wall"])),
        reroute="round",
    )


@settings(max_examples=400, deadline=None)
@given(jobs(), repairs())
def test_any_repair_of_any_line_ends_in_amounts(tables: Tables, job: Job, wanted: Repair) -> None:
    found = take_off(wanted, job, tables)
    for quantity in found.quantities:
        assert math.isfinite(quantity.value) and quantity.value > 0, quantity
    assert found.facts <= set(FACTS)
    once = take_off_job(job, [found], tables)
    assert once.value("jobs") == 1


@settings(max_examples=200, deadline=None)
@given(jobs(), repairs())
def test_what_is_dug_is_put_back_or_hauled(tables: Tables, job: Job, wanted: Repair) -> None:
    """Bank yards balance: dug + brought in = gone back + hauled, all in the bank."""
    found = take_off(wanted, job, tables)
    dug = sum(found.value(n) for n in ("dig_bcy", "hand_dig_bcy", "tunnel_bcy", "pit_bcy", "inside_dig_bcy"))
    if not dug:
        return
    soil = Case.of(wanted, job, tables).soil
    by_hand = "hand_only" in found.facts or wanted.method in ("tunnel", "break-through", "slab spot")
    shrink = soil.shrink_hand if by_hand else soil.shrink_machine
    swell = 1 + soil.swell_percent / 100
    back = found.value("native_ccy") / shrink
    assert math.isclose(dug + found.value("import_lcy") / swell, back + found.value("export_lcy") / swell, rel_tol=1e-9)


@settings(max_examples=200, deadline=None)
@given(jobs(), repairs())
def test_the_sides_are_held_wherever_the_depth_asks_for_it(tables: Tables, job: Job, wanted: Repair) -> None:
    found = take_off(wanted, job, tables)
    rock = job.house.soil == "rock"
    if found.value("safety_depth_ft") >= 5.0 and found.value("dig_cf") and not rock:
        assert found.facts & {"boxed", "sloped", "hand_shored"}
    if found.value("safety_depth_ft") >= 4.0:
        assert found.value("ladders") >= 1
