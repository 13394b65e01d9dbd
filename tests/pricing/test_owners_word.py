"""Discounts, allowances and the owner's own numbers: shown, reasoned, never lost, never below the floor unsaid."""

from dataclasses import replace
from decimal import Decimal

import pytest

from estimator.model.problem import CannotGoOn
from estimator.model.wanted import Allowance, Discount, Override
from estimator.model.work import Takeoff
from estimator.pricing.build import price_scope
from estimator.pricing.overrides import meant
from estimator.pricing.payments import price_by_class
from estimator.tables.rows import PlaceRow
from estimator.tables.tables import Tables

D = Decimal
Scope = tuple[Takeoff, ...]


def test_a_discount_is_a_line_of_its_own_and_comes_off_after_rounding(
    maple: Scope, tables: Tables, place: PlaceRow
) -> None:
    price = price_scope(maple, tables, place, discounts=[Discount(reason="two jobs in one street", amount=D(150))])
    assert price.total == D("4050.00")
    assert (price.lines[-1].text_en, price.lines[-1].amount) == ("two jobs in one street", D("-150.00"))
    assert sum(line.amount for line in price.lines) == price.total
    assert sum(price_by_class(price).values()) == price.total


def test_a_discount_stops_at_the_floor_margin(maple: Scope, tables: Tables, place: PlaceRow) -> None:
    # floor: 2,310.75 ÷ 0.70 + 150 = 3,451.07 [computed], so 748.93 may come off 4,200 and 748.94 may not
    at_floor = price_scope(maple, tables, place, discounts=[Discount(reason="neighbour", amount=D("748.93"))])
    assert at_floor.total == D("3451.07")
    below = [Discount(reason="neighbour", amount=D("748.94"))]
    with pytest.raises(CannotGoOn) as stopped:
        price_scope(maple, tables, place, discounts=below)
    assert stopped.value.problems[0].code == "pricing/below-floor"
    for word in (Override(rule="lead-paint", reason="my sister's house"), Override(rule="floor-margin", reason="")):
        with pytest.raises(CannotGoOn):  # another rule's word, or the right one without a reason, lets nothing go
            price_scope(maple, tables, place, discounts=below, overrides=[word])
    mine = [Override(rule="floor-margin", reason="my sister's house")]
    assert price_scope(maple, tables, place, discounts=below, overrides=mine).total == D("3451.06")


def test_no_work_is_paid_from_an_allowance(maple: Scope, tables: Tables, place: PlaceRow) -> None:
    """The same floor with an allowance beside the work as without: what it costs is settled apart."""
    tile = [Allowance(text="tile to match", amount=D(10_000))]
    most = [Discount(reason="neighbour", amount=D("748.93"))]
    price_scope(maple, tables, place, allowances=tile, discounts=most)
    more = [Discount(reason="neighbour", amount=D("3500"))]
    with pytest.raises(CannotGoOn) as stopped:
        price_scope(maple, tables, place, allowances=tile, discounts=more)
    assert stopped.value.problems[0].code == "pricing/below-floor"


def test_an_allowance_stands_as_written_inside_the_rounded_price(maple: Scope, tables: Tables, place: PlaceRow) -> None:
    price = price_scope(maple, tables, place, allowances=[Allowance(text="matching sod", amount=D(800))])
    assert price.total == D("5000.00")  # 4,193.81 + 800 up to 25 [computed]
    line = next(line for line in price.lines if line.work_item == "allowance")
    assert (line.amount, line.cost_share, line.text_en) == (D("800.00"), D("600.00"), "matching sod")
    assert sum(line.amount for line in price.lines) == price.total


def test_a_quantity_of_the_owners_changes_hours_and_is_shown(pecan: Scope, tables: Tables, place: PlaceRow) -> None:
    mine = [Override(item="tunnel", quantity="31 ft", reason="the next yard had rock at 20 in")]
    price = price_scope(pecan, tables, place, overrides=mine)
    tunnel = [t for t in price.tasks if t.task == "tunnel dig"]
    assert sum(t.quantity for t in tunnel) == pytest.approx(31)
    assert price.total > D(16525)
    said = price.overruled[0]
    assert (said.what, said.ours, said.mine, said.unit, said.reason) == (
        "quantity of tunnel", D("29"), D("31"), "ft", "the next yard had rock at 20 in",
    )  # fmt: skip


def test_hours_of_the_owners_take_the_place_of_ours(pecan: Scope, tables: Tables, place: PlaceRow) -> None:
    mine = [Override(item="tunnel backfill", hours=22.0, reason="wet")]
    price = price_scope(pecan, tables, place, overrides=mine)
    assert next(c for c in price.crews if c.crew == "tunnel").work_hours == pytest.approx(52.099 + 7.5, abs=0.001)
    assert (price.overruled[0].ours, price.overruled[0].mine) == (D("14.5"), D("22.0"))


def test_hours_of_one_line_leave_the_other_alone(pecan: Scope, tables: Tables, place: PlaceRow) -> None:
    kitchen = replace(pecan[0], repair=replace(pecan[0].repair, id="kitchen tunnel", line="kitchen"))
    mine = [Override(item="tunnel backfill", line="kitchen", hours=22.0, reason="wet")]
    price = price_scope((pecan[0], kitchen, pecan[1]), tables, place, overrides=mine)
    assert [t.hours for t in price.tasks if t.task == "tunnel backfill"] == [14.5, pytest.approx(22.0)]
    with pytest.raises(CannotGoOn):
        price_scope(pecan, tables, place, overrides=mine)


@pytest.mark.parametrize("mine", ["16500", "12000", "20000"])
def test_a_price_of_the_owners_is_the_total_and_the_margin_after_it_is_shown(
    mine: str, pecan: Scope, tables: Tables, place: PlaceRow
) -> None:
    price = price_scope(pecan, tables, place, overrides=[Override(price=D(mine), reason="next door anyway")])
    assert price.total == sum(line.amount for line in price.lines) == D(mine)
    assert (price.overruled[0].what, price.overruled[0].ours) == ("price", D("16525.00"))
    # cost 8,601.80 + 450 + 150 = 9,201.80 [computed]
    assert price.margin == round((D(mine) - D("9201.80")) / D(mine), 4)
    assert all(line.amount > 0 for line in price.lines)


@pytest.mark.parametrize("mine", ["12000", "16000", "20000"])
def test_a_price_by_hand_moves_every_line_but_what_is_passed_on(
    mine: str, pecan: Scope, tables: Tables, place: PlaceRow
) -> None:
    ours, set_by_hand = (
        {line.work_item: line.amount for line in price_scope(pecan, tables, place, overrides=o).lines}
        for o in ((), [Override(price=D(mine), reason="slow month")])
    )
    assert set_by_hand["permit"] == D("150.00")
    ratio = (D(mine) - 150) / (D("16519.97") - 150)
    for item in ("tunnel", "fill the tunnel", "inspection"):
        assert float(set_by_hand[item]) == pytest.approx(float(ours[item] * ratio), abs=1.5)
    assert float(set_by_hand["mobilize"]) == pytest.approx(float(ours["mobilize"] * ratio), abs=25)


def test_of_two_prices_by_hand_the_last_counts(pecan: Scope, tables: Tables, place: PlaceRow) -> None:
    two = [Override(price=D(mine), reason="x") for mine in ("16000", "16100")]
    assert price_scope(pecan, tables, place, overrides=two).total == D(16100)


def test_a_quantity_by_hand_moves_what_is_measured_alike_and_nothing_else(
    pecan: Scope, tables: Tables, place: PlaceRow
) -> None:
    units = {"shoring_sets": "each", "pit_bcy": "cy", "pits": "each", "engineer_letters": "each"}
    feet = tuple(replace(q, unit=units.get(q.name, "ft")) for q in pecan[0].quantities)
    mine = [Override(item="tunnel", quantity="58 ft", reason="x")]
    price = price_scope((replace(pecan[0], quantities=feet), pecan[1]), tables, place, overrides=mine)
    bought = {c.ref: c.quantity for c in price.costs}
    assert (bought["shoring-set"], bought["engineer"]) == (6, 1)
    assert sum(t.quantity for t in price.tasks if t.task == "tunnel dig") == pytest.approx(58)
    assert [t.quantity for t in price.tasks if t.task == "hand dig"] == [pytest.approx(56 / 27)]


def test_an_override_that_hits_nothing_is_a_problem(maple: Scope, tables: Tables, place: PlaceRow) -> None:
    for wrong in (
        Override(item="tunnel", quantity="31 ft", reason="x"),
        Override(item="tunnel dig", hours=3, reason="x"),
    ):
        with pytest.raises(CannotGoOn) as stopped:
            price_scope(maple, tables, place, overrides=[wrong])
        assert stopped.value.problems[0].code == "pricing/bad-override"


@pytest.mark.parametrize(
    ("quantity", "feet"), [("1,200 ft", 1200.0), ("408 in", 34.0), ("10.4 m", 34.1207), ("34'6", 34.5), ("58", 58.0)]
)
def test_a_length_by_hand_is_read_whole_in_every_form(
    pecan: Scope, tables: Tables, place: PlaceRow, quantity: str, feet: float
) -> None:
    """1 in = 1/12 ft and 1 m = 1/0.3048 ft, exact by definition."""
    units = {"shoring_sets": "each", "pit_bcy": "cy", "pits": "each", "engineer_letters": "each"}
    in_feet = tuple(replace(q, unit=units.get(q.name, "ft")) for q in pecan[0].quantities)
    mine = [Override(item="tunnel", quantity=quantity, reason="x")]
    price = price_scope((replace(pecan[0], quantities=in_feet), pecan[1]), tables, place, overrides=mine)
    assert sum(t.quantity for t in price.tasks if t.task == "tunnel dig") == pytest.approx(feet, abs=1e-4)


def test_a_length_for_what_is_counted_otherwise_is_a_problem(maple: Scope, tables: Tables, place: PlaceRow) -> None:
    feet = tuple(replace(q, unit="sf") for q in maple[0].quantities)
    mine = [Override(item="sod", quantity="408 in", reason="x")]
    with pytest.raises(CannotGoOn) as stopped:
        price_scope((replace(maple[0], quantities=feet), *maple[1:]), tables, place, overrides=mine)
    assert stopped.value.problems[0].code == "pricing/override-unit"


@pytest.mark.parametrize("quantity", ["lots", "4'115\"", "1,2"])
def test_what_is_no_number_of_the_item_is_a_problem(
    maple: Scope, tables: Tables, place: PlaceRow, quantity: str
) -> None:
    with pytest.raises(CannotGoOn) as stopped:
        price_scope(maple, tables, place, overrides=[Override(item="sod", quantity=quantity, reason="x")])
    assert stopped.value.problems[0].code == "pricing/override-unit"


def test_an_override_of_another_line_leaves_this_one_alone(maple: Scope, tables: Tables, place: PlaceRow) -> None:
    mine = [Override(item="sod", quantity="90", line="main", reason="gate")]
    assert price_scope(maple, tables, place, overrides=mine).total > D(4200)
    with pytest.raises(CannotGoOn):
        price_scope(
            maple, tables, place, overrides=[Override(item="sod", quantity="90", line="kitchen", reason="gate")]
        )


def test_an_item_nearly_spelt_is_told_what_may_be_meant(tables: Tables) -> None:
    assert str(meant(Override(item="tunnel-dig", hours=3, reason="x"), tables)).startswith("Perhaps “tunnel dig”")
    assert not str(meant(Override(item="tunnel dig", hours=3, reason="x"), tables))
