"""The homeowner's lines at their edges: what is left for mobilizing, what is passed on, what is too small for a step."""

from collections.abc import Callable
from dataclasses import replace
from decimal import Decimal

import pytest

from estimator.model.money import cents
from estimator.model.work import JOB, Takeoff
from estimator.pricing.build import price_scope
from estimator.pricing.lines import lines_of
from estimator.pricing.materials import order_quantity
from estimator.pricing.parts import items_of
from estimator.tables.rows import Material, PlaceRow
from estimator.tables.tables import Tables

D = Decimal
MakeTakeoff = Callable[..., Takeoff]


def amounts(prices: dict[str, str], total: str, tables: Tables, make_takeoff: MakeTakeoff) -> dict[str, Decimal]:
    """Lines of a job with mobilizing, inspection and permit at these prices."""
    job = make_takeoff(JOB, jobs=1, inspections=1, permits=1)
    sold = items_of(job, tables)
    owners = {(JOB, s.item.item): D(prices[s.item.item]) for s in sold}
    classes = {owner: {"pass-through" if owner[1] == "permit" else "own": price} for owner, price in owners.items()}
    lines = lines_of(sold, owners, classes, (), D(total), D(1))
    assert sum(line.amount for line in lines) == D(total)
    return {line.work_item: line.amount for line in lines}


def test_mobilizing_takes_what_rounding_leaves(tables: Tables, make_takeoff: MakeTakeoff) -> None:
    made = amounts({"mobilize": "300.40", "inspection": "200.30", "permit": "150.55"}, "675.00", tables, make_takeoff)
    assert made == {"mobilize": D("324.45"), "inspection": D(200), "permit": D("150.55")}


@pytest.mark.parametrize(
    ("total", "inspection", "mobilize"), [("301", "200", "1"), ("300", "199", "1"), ("299", "198", "1")]
)
def test_mobilizing_stays_above_nothing_and_the_dearest_line_gives_way(
    total: str, inspection: str, mobilize: str, tables: Tables, make_takeoff: MakeTakeoff
) -> None:
    made = amounts({"mobilize": "0.40", "inspection": "200", "permit": "100"}, total, tables, make_takeoff)
    assert made == {"mobilize": D(mobilize), "inspection": D(inspection), "permit": D(100)}


def test_a_measured_line_gives_way_by_its_unit_price(
    make_takeoff: MakeTakeoff, make_tables: Callable[..., Tables], place: PlaceRow
) -> None:
    tables = make_tables(settings={"unit_price_step": "25"})
    yard = make_takeoff("yard spot", pipe_trench_ft=400, pipe_buy_ft=400)
    price = price_scope((yard, make_takeoff(JOB, jobs=1)), tables, place)
    pipe = next(line for line in price.lines if line.work_item == "new pipe in trench")
    assert (pipe.quantity, pipe.unit_price % 25) == (400, 0)
    assert min(line.amount for line in price.lines) > 0
    assert sum(line.amount for line in price.lines) == price.total


def test_a_unit_price_below_a_step_is_shown_to_the_cent(
    make_takeoff: MakeTakeoff, make_tables: Callable[..., Tables], place: PlaceRow
) -> None:
    tables = make_tables(settings={"unit_price_step": "25"})
    yard = make_takeoff("yard spot", sod_sf=300)
    price = price_scope((yard, make_takeoff(JOB, jobs=1)), tables, place)
    sod = next(line for line in price.lines if line.work_item == "sod")
    assert 0 < sod.unit_price < 25
    assert sod.amount == cents(sod.unit_price * 300)


def test_a_work_item_whose_facts_do_not_hold_is_not_sold(
    maple: tuple[Takeoff, ...], tables: Tables, place: PlaceRow
) -> None:
    only_lawn = tuple(replace(w, when=("lawn",)) if w.item == "sod" else w for w in tables.work_items)
    asked = replace(tables, rows={**tables.rows, "work_items": only_lawn})
    in_lawn = replace(maple[0], facts=frozenset({"lawn"}))
    items = [{line.work_item for line in price_scope((t, maple[1]), asked, place).lines} for t in (maple[0], in_lawn)]
    assert ["sod" in sold for sold in items] == [False, True]


def material(item: str, waste_percent: str = "0", pack: str = "0") -> Material:
    return Material(item=item, text=item, size="", unit="ft", cost=D(1), waste_percent=D(waste_percent), pack=D(pack), taxable=True,
                    small_parts=True, price_day=None, supplier="", part_no="", good_until=None)  # fmt: skip


def test_with_its_waste_a_material_is_bought_in_whole_packs() -> None:
    assert order_quantity(29.0, material("pvc-4", waste_percent="10", pack="10")) == 40
    assert order_quantity(1.76, material("sand", pack="0.5")) == 2


def test_what_adding_floats_leaves_behind_buys_no_pack() -> None:
    assert order_quantity(10.0004, material("resin", pack="1")) == 10
    assert order_quantity(0.1 + 0.2, material("sand", pack="0.3")) == D("0.3")
    assert order_quantity(0.303, material("sand", pack="0.3")) == D("0.3")  # a hundredth of a pack over
    assert order_quantity(0.304, material("sand", pack="0.3")) == D("0.6")
    assert order_quantity(100 / 11, material("pipe", waste_percent="10", pack="10")) == 10


def test_lines_stand_in_the_order_of_the_table_and_are_numbered(
    maple: tuple[Takeoff, ...], tables: Tables, place: PlaceRow
) -> None:
    lines = price_scope(maple, tables, place).lines
    order = [w.item for w in tables.work_items if w.item in {line.work_item for line in lines}]
    assert [line.work_item for line in lines] == order
    assert [line.id for line in lines] == [str(n) for n in range(1, len(lines) + 1)]
