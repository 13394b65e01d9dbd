"""What is done once however many repairs a line has, what is hauled away with the soil, and hollows that are filled."""

from dataclasses import replace

import pytest

from estimator.model.work import Takeoff
from estimator.tables.tables import Tables
from estimator.takeoff import take_off, take_off_job
from estimator.takeoff.together import together
from tests.takeoff.houses import at, hole, house, maple_line, pecan_house, pecan_line, repair


def spot_at(from_ft: float, to_ft: float, tables: Tables) -> Takeoff:
    wanted = replace(repair("sectional liner", from_ft, to_ft), id=f"s{from_ft:g}")
    return take_off(wanted, house(maple_line()), tables)


def test_two_short_liners_on_one_line_are_cleaned_for_and_filmed_once(tables: Tables) -> None:
    """From the cleanout at 0: 24 ft for the first; the second adds only 24 to 43 ft."""
    first, second = spot_at(20, 24, tables), spot_at(39, 43, tables)
    shared = together([first, second], house(maple_line()), tables)
    assert [t.value("clean_ft") for t in shared] == [24.0, 19.0]
    assert [t.value("films_before") for t in shared] == [1, 0]
    assert sum(t.value("sectional_pieces") for t in shared) == 2


def test_the_nearer_of_two_short_liners_is_cleaned_on_the_way_to_the_farther(tables: Tables) -> None:
    far, near = spot_at(39, 43, tables), spot_at(20, 24, tables)
    shared = together([far, near], house(maple_line()), tables)
    assert [t.value("clean_ft") for t in shared] == [43.0, 0.0]


@pytest.mark.parametrize(("zone", "hauled"), [("yard", False), ("drive", True), ("walk", True)])
def test_concrete_taken_up_outside_is_hauled_by_volume_and_weight(tables: Tables, zone: str, hauled: bool) -> None:
    line = maple_line()
    marks = tuple(replace(m, word=zone, choice=None) if m.word == "yard" else m for m in line.marks)
    job = house(replace(line, marks=marks))
    for method in ("yard spot", "look and see"):
        found = take_off(repair(method, 36, 45), job, tables)
        area = found.value("drive_sf") + found.value("flatwork_sf")
        assert found.value("flatwork_tons") == pytest.approx(area * 0.3333 * 150 / 2000)
        assert found.value("flatwork_haul_lcy") == pytest.approx(area * 0.3333 / 27 * 1.5)
        tons = found.value("export_lcy") / 1.30 * 1.35 + found.value("flatwork_tons")
        cubic_yards = found.value("export_lcy") + found.value("flatwork_haul_lcy")
        assert (found.value("flatwork_tons") > 0) is hauled
        if hauled:
            assert found.value("loads") >= max(tons / 4, cubic_yards / 5) > found.value("loads") - 1


def test_each_hollow_is_filled_once_a_scope_by_an_allowance(tables: Tables) -> None:
    line = replace(pecan_line(), findings=(hole("hole", 10.0, signs=("void",)), hole("hole", 20.0, signs=("void",))))
    job = pecan_house(line)
    taken = [
        take_off(replace(repair("tunnel", 8, to), id=f"r{to}", facts=frozenset({"void"})), job, tables)
        for to in (12, 22)
    ]
    assert take_off_job(job, taken[:1], tables).value("void_fill_cy") == 1.0
    both = take_off_job(job, taken, tables)
    assert both.value("void_fill_cy") == 2.0
    assert both.value("void_short_loads") == 1
    plain = [replace(t, facts=t.facts - {"void"}) for t in taken]
    assert take_off_job(job, plain, tables).value("void_fill_cy") == 0


def test_a_lining_is_filled_and_tested(tables: Tables) -> None:
    found = take_off(repair("reline", 0, 50), house(maple_line()), tables)
    assert found.value("tests") == 1
    assert found.value("test_head_ft") == 10.0


def test_a_depth_from_the_lawn_says_nothing_of_a_basement(tables: Tables) -> None:
    from estimator.model.profile import Profile

    line = maple_line()
    marks = (
        at("basement", 0.0, 20.0),
        at("yard", 20.0, 60.0, choice="lawn"),
        at("depth", 39.0, depth_ft=7.0, surface="lawn"),
    )
    deep = Profile(replace(line, marks=marks))
    assert deep.depth_to_centre_ft(39.0).value == deep.depth_to_centre_ft(20.1).value == 7.0
    assert deep.depth_to_centre_ft(19.9).value is None
    read = Profile(replace(line, marks=(*marks, at("depth", 10.0, depth_ft=1.2, surface="slab"))))
    assert read.depth_to_centre_ft(19.9).value == 1.2
    assert read.depth_to_centre_ft(30.0).value == 7.0
    assert Profile(replace(line, marks=marks)).zone(10.0).value == "basement"
