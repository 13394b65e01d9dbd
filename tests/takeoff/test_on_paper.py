"""What `explain` prints is enough to work a quantity out again on paper: the numbers beside a formula give its value."""

import re
from dataclasses import replace
from itertools import pairwise

import pytest

from estimator.model.work import Takeoff
from estimator.tables.tables import Tables
from estimator.takeoff import take_off
from estimator.takeoff.working import up
from estimator.works.methods import names
from tests.takeoff.houses import at, changed, house, maple_line, pecan_house, pecan_line, repair
from tests.takeoff.test_job import everywhere


def numbers(found: Takeoff, name: str) -> dict[str, float]:
    quantity = found.quantity(name)
    assert quantity is not None, name
    return {i.name: float(i.value) for i in quantity.inputs if not isinstance(i.value, str)}


def listed(found: Takeoff, name: str, given: str) -> list[tuple[float, ...]]:
    """An input that lists pairs or more, such as "14 x 2 ft, 11.17 x 2 ft"."""
    quantity = found.quantity(name)
    assert quantity is not None, name
    text = next(str(i.value) for i in quantity.inputs if i.name == given)
    pairs = [re.findall(r"[\d.]+", part) for part in text.split(", ")]
    return [tuple(map(float, numbers)) for numbers in pairs]


@pytest.mark.parametrize("method", names())
@pytest.mark.parametrize("name", ["backfill_ccy", "hand_backfill_ccy", "inside_backfill_ccy"])
def test_fill_is_native_and_pipe_zone(tables: Tables, method: str, name: str) -> None:
    found = take_off(repair(method, -12, 25, reroute="east"), everywhere(), tables)
    if found.value(name):
        assert sum(numbers(found, name).values()) == pytest.approx(found.value(name))


def test_the_depth_of_a_dig_from_its_parts(tables: Tables) -> None:
    found = take_off(repair("yard spot", 36, 45), house(maple_line()), tables)
    given = numbers(found, "dig_depth_ft")
    assert given["depth to center"] == pytest.approx(3.4)
    parts = given["depth to center"] + given["outside of the pipe"] / 2 + given["bedding"]
    assert up(parts, given["dig step"]) == found.value("dig_depth_ft")
    safe = numbers(found, "safety_depth_ft")
    assert sum(safe.values()) == pytest.approx(found.value("safety_depth_ft"))


def test_the_earth_of_a_dig_from_its_parts(tables: Tables) -> None:
    found = take_off(repair("yard spot", 36, 45), house(maple_line()), tables)
    given = numbers(found, "dig_bcy")
    assert given["length"] * given["bottom width"] * given["deepest"] / 27 == pytest.approx(found.value("dig_bcy"))
    assert given["deepest"] == given["shallowest"]


def test_loads_from_what_is_left_over(tables: Tables) -> None:
    found = take_off(repair("trench", 5, 60), house(maple_line()), tables)
    given = numbers(found, "loads")
    assert (given["dug"] - given["goes back, as bank"]) * 1.30 == pytest.approx(
        given["left over, loose, concrete included"]
    )


@pytest.mark.parametrize(("entry", "twice"), [("exit", ()), ("wall", ("working room, each end",))])
def test_the_length_of_a_tunnel_from_its_parts(tables: Tables, entry: str, twice: tuple[str, ...]) -> None:
    line = changed(pecan_line(), at("beside", 20.0, lengths=(("", 6.0),)))
    found = take_off(repair("tunnel", 18, 22, entry=entry), pecan_house(line), tables)
    given = numbers(found, "tunnel_ft")
    given.pop("measured at station", None)
    assert sum(given.values()) + sum(given[name] for name in twice) == pytest.approx(found.value("tunnel_ft"))


def test_the_earth_of_a_tunnel_from_its_parts(tables: Tables) -> None:
    found = take_off(repair("tunnel", -2, 27), pecan_house(), tables)
    g = numbers(found, "tunnel_cf")
    plain = g["width"] * (g["height at the mouth"] + g["height at the face"]) / 2 * g["length"]
    assert plain + g["dips"] - g["beams left in"] + g["side cuts"] == pytest.approx(found.value("tunnel_cf"))
    pit = numbers(found, "pit_bcy")
    assert pit["pits"] * pit["length"] * pit["width"] * pit["depth"] / 27 == pytest.approx(found.value("pit_bcy"))
    assert sum(numbers(found, "safety_depth_ft").values()) == pytest.approx(found.value("safety_depth_ft"))


def test_the_heights_of_a_tunnel_from_their_parts(tables: Tables) -> None:
    found = take_off(repair("tunnel", -2, 27), pecan_house(), tables)
    for name in ("tunnel_mouth_height_ft", "tunnel_face_height_ft"):
        g = numbers(found, name)
        assert up(max(g["least height"], g["invert there"] + g["below the invert"] - g["slab"]), 0.1) == found.value(
            name
        )


def test_hangers_sets_and_bags_from_their_parts(tables: Tables) -> None:
    found = take_off(repair("tunnel", -2, 27), pecan_house(), tables)
    g = numbers(found, "hangers")
    assert up(g["pipe hung"] / g["spacing"]) + 1 + g["side drains and turns"] == found.value("hangers")
    s = numbers(found, "shoring_sets")
    assert up(s["length"] / s["spacing"]) == found.value("shoring_sets")
    strip = take_off(repair("break-through", -2, 27), pecan_house(), tables)
    b = numbers(strip, "patch_bags")
    assert up(b["concrete"] / b["one bag"] * (1 + b["extra"] / 100)) == strip.value("patch_bags")


def test_resin_from_its_parts(tables: Tables) -> None:
    found = take_off(repair("reline", 10, 50), house(maple_line()), tables)
    g = numbers(found, "resin_gal")
    import math

    assert math.pi * (4 - g["wall"]) * g["wall"] * 12 * g["liner cut"] / 231 * g["voids"] / 100 * (
        1 + g["excess"] / 100
    ) == pytest.approx(found.value("resin_gal"))


def test_layers_and_water_from_their_parts(tables: Tables) -> None:
    line = changed(maple_line(), at("depth", 60.0, depth_ft=2.0, surface="lawn"))
    found = take_off(repair("trench", 30, 58), house(line), tables)
    g = numbers(found, "lifts")
    assert g["depth"] == found.value("dig_depth_ft")
    assert up(g["depth"] / g["lift"]) == found.value("lifts")
    w = numbers(found, "test_fill_gal")
    assert 0.0408 * w["bore"] ** 2 * (w["pipe"] + w["riser"]) == pytest.approx(found.value("test_fill_gal"))


def test_the_earth_of_a_dig_of_changing_depth_from_the_depths_along_it(tables: Tables) -> None:
    """Upright sides: width x the area under the depths, piece by piece, (a + b) / 2 x length."""
    line = maple_line()
    marks = tuple(m for m in line.marks if m.word != "depth")
    read = (at("depth", ft, depth_ft=deep, surface="lawn") for ft, deep in ((5.0, 2.4), (20.0, 3.4), (45.0, 2.9)))
    found = take_off(repair("trench", 10, 40), house(replace(line, marks=(*marks, *read))), tables)
    depths = listed(found, "dig_cf", "along the dig: depth")
    area = sum((a + b) / 2 * (y - x) for (x, a), (y, b) in pairwise(depths))
    assert len(depths) == 3
    assert found.value("dig_cf") == pytest.approx(area * numbers(found, "dig_cf")["bottom width"])


def test_the_earth_below_a_strip_from_its_openings(tables: Tables) -> None:
    found = take_off(repair("break-through", -2, 27), pecan_house(), tables)
    given, openings = numbers(found, "inside_dig_bcy"), listed(found, "inside_dig_bcy", "openings, long x wide x deep")
    below = sum(long * wide * deep for long, wide, deep in openings) + given["under beams"]
    assert len(openings) == 3
    assert below / 27 == pytest.approx(found.value("inside_dig_bcy"), rel=1e-3)  # openings are shown to the hundredth


def test_the_pits_of_a_burst_from_their_plans(tables: Tables) -> None:
    found = take_off(repair("burst", 10, 50), house(maple_line()), tables)
    plans = listed(found, "dig_bcy", "pits, as large as what holds their sides")
    by_hand = numbers(found, "dig_bcy")["depth"] * sum(long * wide for long, wide in plans) / 27
    assert by_hand == pytest.approx(found.value("dig_bcy"))


def test_the_depth_of_a_tunnel_pit_from_its_parts(tables: Tables) -> None:
    given = numbers(take_off(repair("tunnel", -2, 27), pecan_house(), tables), "pit_depth_ft")
    floor = max(given["slab"] + given["height at the mouth"], given["edge beam's bottom"] + given["crawl under it"])
    assert floor - given["ground below slab top"] == pytest.approx(3.5)


def test_the_speed_and_the_fall_of_a_way_round_from_their_parts(tables: Tables) -> None:
    found = take_off(repair("reroute", 0, 20, reroute="east"), everywhere(), tables)
    speed, fall = numbers(found, "full_flow_fps"), numbers(found, "fall_needed_ft")
    by_hand = 1.486 / 0.013 * (speed["bore"] / 48) ** (2 / 3) * (speed["fall"] / 12) ** 0.5
    assert by_hand == pytest.approx(found.value("full_flow_fps"))
    assert fall["level length"] * fall["fall"] / 12 == pytest.approx(found.value("fall_needed_ft"))
