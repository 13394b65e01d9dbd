"""Quantities that a crew would count otherwise than a formula, each by hand."""

from decimal import Decimal
from functools import cache
from pathlib import Path

import pytest

from estimator.cli.priced_job import priced
from estimator.model.offer import Option
from estimator.model.work import Takeoff

EVERYDAY = Path(__file__).parents[1] / "everyday"
D = Decimal


@cache
def option(folder: str, method: str) -> Option:
    options = priced(EVERYDAY / folder / "job.toml", None).quote.options
    return next(o for o in options if {r.method for r in o.scope.repairs} == {method})


def repair(found: Option) -> Takeoff:
    return next(t for t in found.takeoffs if t.repair.method != "job")


def once(found: Option) -> Takeoff:
    """What the option has once, whatever its repairs are."""
    return next(t for t in found.takeoffs if t.repair.method == "job")


def test_a_new_route_is_laid_in_its_trench_and_hung_on_its_wall() -> None:
    """18 ft in the yard and 4 ft on the wall, 5 % more for turns: 18.9 ft and 4.2 ft. A strap every 4 ft of the wall: 1.05, so 2."""
    found = option("kitchen-around-the-house", "reroute")
    assert repair(found).value("reroute_buried_ft") == pytest.approx(18.9)
    assert repair(found).value("reroute_hung_ft") == pytest.approx(4.2)
    hours = {t.task: (t.quantity, t.each) for t in found.price.tasks if t.work_item == "new route"}
    assert hours["pipe in trench"] == (pytest.approx(18.9), pytest.approx((0.08 + 0.12 + 0.20) / 3))
    assert hours["reroute pipe"] == (pytest.approx(4.2), pytest.approx((0.2 + 0.3 + 0.5) / 3))
    assert next(c.quantity for c in found.price.costs if c.ref == "pipe-strap") == 2


def test_a_shallow_trench_is_one_bucket_wide() -> None:
    """2 in pipe is 2.375 in outside; ASTM D2321 asks for 2.375 + 16 = 18.375 in, 1.53 ft, up to 1.6. From 1.5 ft down to
    1.5 + 18 × ¼ ÷ 12 = 1.875, up to 1.9 ft: 18 × 1.6 × 1.7 ÷ 27 = 1.81 cy."""
    assert repair(option("kitchen-around-the-house", "reroute")).value("dig_bcy") == pytest.approx(1.813, abs=0.001)


def test_no_toilet_is_pulled_for_a_line_that_none_can_drain_into() -> None:
    """A 2 in kitchen drain; a toilet's is 3 in at least (IPC table 709.1, from memory)."""
    assert once(option("kitchen-around-the-house", "tunnel")).value("toilets") == 0
    assert once(option("tunnel-12-ft", "tunnel")).value("toilets") == 1


def test_slurry_by_the_part_load_pays_for_it() -> None:
    """12 ft of tunnel or less: a quarter of some 4 yards is 1.1, two yards are brought, three are a full load."""
    found = option("tunnel-12-ft", "tunnel")
    assert 1 < repair(found).value("slurry_cy") < 2
    charged = [(c.ref, c.quantity) for c in found.price.costs if c.ref in ("slurry", "short-load")]
    assert charged == [("slurry", 2), ("short-load", 1)]


def test_a_test_tee_takes_the_plug_where_no_cleanout_does() -> None:
    found = option("tunnel-12-ft", "tunnel")
    assert once(found).value("tests") == 1
    assert (repair(found).value("cleanouts"), repair(found).value("test_tees")) == (0, 1)


def test_a_little_grass_is_put_back_by_the_crew_on_the_pipe() -> None:
    """(8 + 2) × (2.4 + 2) = 44 sq ft over a dig at one spot, up to 50; 100 need no crew of their own, a trench of 60 ft does."""
    spot, trench = option("yard-spot", "yard spot"), option("trench-60-ft", "trench")
    crews = [next(t.crew for t in o.price.tasks if t.task == "sod") for o in (spot, trench)]
    assert crews == ["plumbing", "labor"]
    assert repair(spot).value("sod_sf") == 50


def test_a_pipe_too_deep_for_a_pothole_is_uncovered_by_hand_all_the_same(tmp_path: Path) -> None:
    """At 5.6 ft of cover nobody digs a hole by hand from the lawn: the last foot is dug by hand in the held dig, as long."""
    for file in (EVERYDAY / "yard-spot").glob("*"):
        (tmp_path / file.name).write_text(file.read_text("utf-8").replace("depth 3ft", "depth 5.8ft"), "utf-8")
    options = priced(tmp_path / "job.toml", None).quote.options
    deep = next(o for o in options if {r.method for r in o.scope.repairs} == {"yard spot"})
    assert repair(deep).value("potholes") == 1
    assert any("last foot" in str(c) for c in repair(deep).cautions)


def test_a_branch_laid_with_the_main_is_cut_from_the_mains_strip_and_glued_to_its_wye() -> None:
    """The kitchen's pipe, 20 ft to the main, through the floor. Alone its strip of 2 ft begins half a foot below the main and ends
    half a foot past the cleanout, 3 ft wide over the last 3 ft at each end: 2 x 9 + 14.97 x 2 = 47.93 sq ft; a wye is cut into the
    main and a tee takes the plug. With the main it begins at the side of the main's strip of 2 ft: 9 + 16.47 x 2 = 41.93 sq ft."""
    options = priced(EVERYDAY.parent / "schedule" / "whole-house" / "job.toml", None).quote.options
    branch = {
        any(t.repair.method == "break-through" and t.repair.line == "main" for t in o.takeoffs): t
        for o in options
        for t in o.takeoffs
        if t.repair.method == "break-through" and t.repair.line == "kitchen"
    }
    alone, with_main = branch[False], branch[True]
    assert alone.value("slab_sf") == pytest.approx(47.93, abs=0.01)
    assert with_main.value("slab_sf") == pytest.approx(41.93, abs=0.01)
    assert (alone.value("junctions"), alone.value("test_tees")) == (1, 1)
    assert (with_main.value("junctions"), with_main.value("test_tees")) == (0, 0)
    assert with_main.works.floor_sf == pytest.approx(with_main.value("slab_sf"))


def test_all_new_pipe_of_a_visit_is_filled_for_one_test_and_a_lining_for_its_own() -> None:
    """Main, kitchen and laundry through the floor are filled once; three linings are filled before their drains are cut open."""
    options = priced(EVERYDAY.parent / "schedule" / "two-branches" / "job.toml", None).quote.options
    tests = {frozenset(r.method for r in o.scope.repairs): sum(t.value("tests") for t in o.takeoffs) for o in options}
    assert tests[frozenset({"break-through"})] == 1
    assert tests[frozenset({"reline"})] == 3
