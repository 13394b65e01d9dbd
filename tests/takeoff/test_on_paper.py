"""What `explain` prints is enough to work a quantity out again on paper: the numbers beside a formula give its value."""

import pytest

from estimator.model.judgement import METHODS
from estimator.model.work import Takeoff
from estimator.tables.tables import Tables
from estimator.takeoff import take_off
from estimator.takeoff.working import up
from tests.takeoff.houses import at, changed, house, maple_line, pecan_house, pecan_line, repair
from tests.takeoff.test_job import everywhere


def numbers(found: Takeoff, name: str) -> dict[str, float]:
    quantity = found.quantity(name)
    assert quantity is not None, name
    return {i.name: float(i.value) for i in quantity.inputs if not isinstance(i.value, str)}


@pytest.mark.parametrize("method", METHODS)
@pytest.mark.parametrize("name", ["backfill_ccy", "hand_backfill_ccy", "inside_backfill_ccy"])
def test_fill_is_native_and_pipe_zone(tables: Tables, method: str, name: str) -> None:
    found = take_off(repair(method, -12, 25, reroute="east"), everywhere(), tables)
    if found.value(name):
        assert sum(numbers(found, name).values()) == pytest.approx(found.value(name))


def test_the_depth_of_a_dig_from_its_parts(tables: Tables) -> None:
    found = take_off(repair("yard spot", 36, 45), house(maple_line()), tables)
    given = numbers(found, "dig_depth_ft")
    assert given["depth to centre"] == pytest.approx(3.4)
    parts = given["depth to centre"] + given["outside of the pipe"] / 2 + given["bedding"]
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

    assert math.pi * (4 - g["wall"]) * g["wall"] * 12 * g["liner cut"] / 231 * (1 + g["excess"] / 100) == pytest.approx(
        found.value("resin_gal")
    )


def test_layers_and_water_from_their_parts(tables: Tables) -> None:
    line = changed(maple_line(), at("depth", 60.0, depth_ft=2.0, surface="lawn"))
    found = take_off(repair("trench", 30, 58), house(line), tables)
    g = numbers(found, "lifts")
    assert g["depth"] == found.value("dig_depth_ft")
    assert up(g["depth"] / g["lift"]) == found.value("lifts")
    w = numbers(found, "test_fill_gal")
    assert 0.0408 * w["bore"] ** 2 * (w["pipe"] + w["riser"]) == pytest.approx(found.value("test_fill_gal"))
