"""What moves the price of an option, sorted, with the question that settles it."""

from dataclasses import replace
from decimal import Decimal

from estimator.model.stretch import Stretch
from estimator.model.work import Repair, Scope
from estimator.studies.compare import compare
from estimator.studies.sensitivity import sensitivity

YARD_OF_ALDER = ("main", Stretch(-74.633333, -21.133333))


def scope_of(job, tables, method: str, *where):
    return next(c.option.scope for c in compare(job, tables, *where).open if c.method == method)


def swing(found, word: str):
    return next((u.swing for u in found if word in str(u.what)), Decimal(0))


def test_unknowns_come_with_the_greatest_swing_first_and_a_question_each(house, tables) -> None:
    found = sensitivity(scope_of(house("pecan"), tables, "break-through"), house("pecan"), tables)
    swings = [u.swing for u in found]
    assert swings == sorted(swings, reverse=True)
    assert min(swings) > 0
    assert all(str(u.question) for u in found)
    assert len(found) >= 4


def test_a_known_floor_price_is_no_unknown(house, tables) -> None:
    job = house("pecan")
    scope = scope_of(job, tables, "break-through")
    hers = replace(job, house=replace(job.house, floor_price_sf=Decimal(12)))
    assert swing(sensitivity(scope, job, tables), "floor") > 0
    assert swing(sensitivity(scope, hers, tables), "floor") == 0


def test_a_tunnel_does_not_care_what_the_floor_costs(house, tables) -> None:
    job = house("pecan")
    assert swing(sensitivity(scope_of(job, tables, "tunnel"), job, tables), "floor") == 0


def test_a_coarser_locator_widens_the_swing_of_the_depth(house, tables) -> None:
    job = house("alder")
    scope = scope_of(job, tables, "burst", *YARD_OF_ALDER)
    coarse = tables.with_settings({"locator_tolerance_percent": "25"})
    assert swing(sensitivity(scope, job, coarse), "depth") > swing(sensitivity(scope, job, tables), "depth") > 0


def test_iron_that_may_not_hold_its_shape_costs_what_the_other_way_costs(house, tables) -> None:
    job = house("pecan")
    broken = scope_of(job, tables, "break-through")
    lined = Scope(repairs=(Repair(id="liner", method="reline", line="main", stretch=Stretch(-2, 27)),), needs=())
    assert swing(sensitivity(lined, job, tables, otherwise=broken), "holds its shape") > 0
    assert swing(sensitivity(lined, job, tables), "holds its shape") == 0
