"""Estimate against actual, and what several jobs would have the production table say."""

import pytest

from estimator.model.price import Price
from estimator.model.work import Takeoff
from estimator.pricing.actuals import OURS, Actual, Outcome, outcomes, strangers, suggestions
from estimator.pricing.build import price_scope
from estimator.tables.rows import PlaceRow
from estimator.tables.tables import Tables


@pytest.fixture(scope="module")
def price(pecan: tuple[Takeoff, ...], tables: Tables, place: PlaceRow) -> Price:
    return price_scope(pecan, tables, place)


def test_entries_of_a_task_add_up_and_stand_beside_the_estimate(price: Price) -> None:
    took = [Actual(task="tunnel dig", hours=20), Actual(task="tunnel dig", hours=21.88, cause="soil")]
    (dig,) = outcomes(price, took)
    assert dig.quantity == pytest.approx(30.35)  # 20 + 9 × 1.15 [computed]
    assert dig.hours == pytest.approx(34.9025)
    assert dig.actual_hours == pytest.approx(41.88)
    assert dig.cause == "soil"
    assert round(dig.off_percent) == 20


def test_a_quantity_that_turned_out_otherwise_counts_in_hours_a_unit(price: Price) -> None:
    (pipe,) = outcomes(price, [Actual(task="pipe in tunnel", hours=9.3, quantity=31)])
    assert (pipe.quantity, pipe.actual_quantity) == (29, 31)
    assert pipe.hours_a_unit == pytest.approx(0.3)


def test_what_slowed_the_work_already_is_not_charged_to_the_rate_again(price: Price) -> None:
    (branch,) = outcomes(price, [Actual(task="branch", hours=4.5)])  # 3 at 1.0 × 1.5 in the tunnel
    assert branch.factor == pytest.approx(1.5)
    assert branch.hours_a_unit == pytest.approx(1.0)


def test_work_the_estimate_forgot_is_named(price: Price) -> None:
    assert strangers(price, [Actual(task="pumping", hours=3), Actual(task="branch", hours=3)]) == ("pumping",)


def job(hours: float, cause: str = "") -> list[Outcome]:
    return [
        Outcome(
            task="branch",
            unit="each",
            quantity=1,
            hours=1,
            actual_quantity=1,
            actual_hours=hours,
            factor=1,
            cause=cause,
        )
    ]


def test_a_suggestion_needs_enough_jobs_and_says_how_many(tables: Tables) -> None:
    jobs = [job(1.0), job(1.2), job(2.0)]
    assert suggestions(jobs[:2], tables, least_jobs=3) == ()
    (said,) = suggestions(jobs, tables, least_jobs=3)
    assert (said.jobs, said.likely, said.table) == (3, 1.2, (0.75, 1.0, 1.75))
    assert said.low == pytest.approx(1.04)
    assert said.high == pytest.approx(1.84)
    assert said.spread == pytest.approx(0.432, abs=0.001)  # of 1.0, 1.2, 2.0 [computed]


def test_our_own_errors_make_no_suggestion(tables: Tables) -> None:
    assert suggestions([job(1.0), job(1.2), job(6.0, OURS)], tables, least_jobs=3) == ()


def test_the_table_itself_is_left_alone(tables: Tables) -> None:
    before = tables.production("branch")
    suggestions([job(1.0), job(1.2), job(2.0)], tables, least_jobs=3)
    assert tables.production("branch") == before
