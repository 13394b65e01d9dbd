"""Names that tables and takeoff share: quantities, facts, settings."""

import re
from pathlib import Path

import pytest

from estimator.tables.tables import Tables
from estimator.takeoff.quantities import FACTS, QUANTITIES
from estimator.takeoff.working import Working

CODE = Path(__file__).resolve().parents[2] / "estimator"
ALL = "\n".join(
    path.read_text(encoding="utf-8") for room in ("works", "takeoff") for path in (CODE / room).glob("*.py")
)
READ = sorted(set(re.findall(r'\.(?:number|numbers|text|word)\(\s*"([a-z0-9_]+)"', ALL)))


@pytest.mark.parametrize("key", READ)
def test_every_setting_that_takeoff_reads_stands_in_the_demo_tables(tables: Tables, key: str) -> None:
    assert tables.setting(key).why


def test_every_name_asked_for_in_the_tables_is_a_quantity_or_a_fact(tables: Tables) -> None:
    asked = {row.quantity for row in (*tables.work_items, *tables.recipes) if row.quantity}
    plain = {name for name in asked if not name.startswith(("days.", "hours."))}
    assert plain <= set(QUANTITIES)
    facts = {
        word.removeprefix("not ").strip()
        for row in (*tables.work_items, *tables.recipes, *tables.extras, *tables.terms)
        for word in row.when
    }
    assert {fact for fact in facts if not fact.startswith("place ")} <= set(FACTS)


def test_a_quantity_without_a_name_on_the_list_cannot_be_written() -> None:
    with pytest.raises(KeyError):
        Working().put("buckets", 3, "a guess")


def test_a_quantity_of_nothing_is_left_off_the_sheet() -> None:
    paper = Working()
    paper.put("wyes", 0, "no side drain")
    assert paper.quantities == ()


def test_adding_to_a_quantity_keeps_how_both_parts_came_about() -> None:
    paper = Working()
    paper.add("sod_sf", 20, "length x width", ("length", 10, "ft"))
    paper.add("sod_sf", 5, "one corner", ("corner", 5, "sq ft"))
    sod = paper.quantities[0]
    assert sod.value == 25
    assert "plus one corner" in sod.formula
    assert [i.name for i in sod.inputs] == ["length", "corner"]


def test_the_same_thing_is_said_once() -> None:
    paper = Working()
    for _ in range(2):
        paper.assume("no depth was read")
        paper.warn("gas nearby")
    assert (len(paper.assumptions), len(paper.cautions)) == (1, 1)
