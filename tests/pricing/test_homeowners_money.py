"""Payments, cancelling, prices by class, present worth, extras: checked against published figures where there are any."""

from collections.abc import Callable, Sequence
from datetime import date
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from estimator.model.price import Price
from estimator.model.work import Takeoff
from estimator.pricing.build import price_scope
from estimator.pricing.cancellation import cancel_until, federal_holidays
from estimator.pricing.payments import deposit_cap, deposit_not_answered, payments_of, price_by_class
from estimator.pricing.present_worth import (
    cost_a_year,
    cost_a_year_of_life,
    single_present_worth,
    uniform_present_worth,
)
from estimator.tables.check_settings import payments_in
from estimator.tables.rows import PlaceRow
from estimator.tables.tables import Tables

D = Decimal
Place = Callable[..., PlaceRow]


@pytest.mark.parametrize(
    ("signed", "until"),
    [  # 16 CFR 429: Monday to Saturday except federal holidays; the days are [computed] from the calendar
        (date(2025, 6, 27), date(2025, 7, 1)),  # Friday
        (date(2025, 7, 2), date(2025, 7, 7)),  # Wednesday before July 4
        (date(2025, 11, 22), date(2025, 11, 26)),  # Saturday
        (date(2025, 12, 30), date(2026, 1, 3)),  # over New Year: Saturday counts
    ],
)
def test_three_business_days_end_on_the_day_of_the_rule(signed: date, until: date) -> None:
    assert cancel_until(signed, 3) == until


def test_saturday_is_a_business_day_and_sunday_is_not() -> None:
    assert cancel_until(date(2025, 6, 27), 1) == date(2025, 6, 28)
    assert cancel_until(date(2025, 6, 28), 1) == date(2025, 6, 30)


def test_more_business_days_end_later() -> None:
    # California gives buyers of 65 and more five business days (from memory)
    assert cancel_until(date(2025, 6, 27), 5) == date(2025, 7, 3)
    assert cancel_until(date(2025, 6, 27), 0) == date(2025, 6, 27)


def test_the_federal_holidays_of_2025_are_the_eleven_of_the_law() -> None:
    # 5 U.S.C. 6103(a): eleven days; Inauguration Day is one only in and around Washington
    holidays = federal_holidays(2025)
    days = [(1, 1), (1, 20), (2, 17), (5, 26), (6, 19), (7, 4), (9, 1), (10, 13), (11, 11), (11, 27), (12, 25)]
    assert all(holidays(date(2025, m, d)) for m, d in days)
    assert sum(holidays(date.fromordinal(date(2025, 1, 1).toordinal() + n)) for n in range(365)) == 11


@pytest.mark.parametrize(
    ("price", "cap"), [("8000", "800"), ("10000", "1000"), ("24500", "1000"), ("9999.99", "999.99")]
)
def test_the_deposit_is_the_lesser_of_amount_and_share(price: str, cap: str, make_place: Place) -> None:
    # California Business and Professions Code 7159.5(a)(3): the lesser of $1,000 and 10 %
    place = make_place(deposit_cap_amount=D(1000), deposit_cap_percent=D(10))
    assert deposit_cap(D(price), place) == D(cap)


def test_an_unanswered_deposit_is_no_cap_of_nothing(make_place: Place) -> None:
    unasked = make_place(deposit_cap_percent=None)
    assert deposit_cap(D(8000), unasked) is None
    assert deposit_cap(D(8000), None) is None
    for place in (unasked, None):
        assert "what a deposit may be is not answered" in str(deposit_not_answered(place)[0])
    assert deposit_not_answered(make_place()) == ()


def test_the_office_reads_that_nobody_asked_about_deposits(
    pecan: tuple[Takeoff, ...], tables: Tables, make_place: Place
) -> None:
    said = price_scope(pecan, tables, make_place(deposit_cap_percent=None)).warnings
    assert ["deposit" in str(s) for s in said] == [True]


@pytest.fixture(scope="module")
def money_tables(make_tables: Callable[..., Tables]) -> Tables:
    return make_tables(settings={"payments": "deposit 10, start 30, pipe in before cover 40, done 20"})


@pytest.fixture(scope="module")
def price(pecan: tuple[Takeoff, ...], money_tables: Tables, place: PlaceRow) -> Price:
    return price_scope(pecan, money_tables, place)


def amounts(price: Price, tables: Tables, place: PlaceRow | None) -> list[Decimal]:
    return [p.amount for p in payments_of(price, tables, place)]


def test_payments_follow_the_firms_shares_and_sum_to_the_cent(price: Price, money_tables: Tables) -> None:
    paid = amounts(price, money_tables, None)
    assert paid[:2] == [D(1652), D(4957) + 1]  # 10 % and 40 % of 16,525 in whole dollars down [computed]
    assert sum(paid) == price.total


def test_nothing_is_asked_for_ahead_of_the_deposit_cap_and_the_work(
    price: Price, money_tables: Tables, make_place: Place
) -> None:
    place = make_place(deposit_cap_amount=D(1000), deposit_cap_percent=D(10))
    paid = amounts(price, money_tables, place)
    classes = price_by_class(price)
    assert paid[0] == 1000
    assert paid[0] + paid[1] == classes["find"] + classes["reach"] + classes["pipe"]
    assert sum(paid) == price.total


def test_until_the_work_is_worth_more_the_deposit_cap_stands(
    make_takeoff: Callable[..., Takeoff], job_takeoff: Takeoff, make_tables: Callable[..., Tables], make_place: Place
) -> None:
    tables = make_tables(settings={"payments": "deposit 10, pipe in before cover 60, done 30"})
    lawn = (make_takeoff("yard spot", sod_sf=900), job_takeoff)  # nearly all of it is putting back
    price = price_scope(lawn, tables, make_place())
    worth = price.total - price_by_class(price)["put back"]
    place = make_place(deposit_cap_percent=D(50))
    paid = amounts(price, tables, place)
    assert worth < price.total / 2
    assert paid[0] + paid[1] == price.total // 2


@given(
    shares=st.lists(st.integers(1, 97), min_size=3, max_size=3).filter(lambda s: sum(s) < 100),
    cap=st.one_of(st.none(), st.integers(0, 40)),
)
@settings(max_examples=50, deadline=None)
def test_any_schedule_sums_to_the_total(
    shares: Sequence[int], cap: int | None, price: Price, make_tables: Callable[..., Tables], make_place: Place
) -> None:
    text = f"deposit {shares[0]}, start {shares[1]}, pipe in before cover {shares[2]}, done {100 - sum(shares)}"
    place = make_place(deposit_cap_percent=None if cap is None else D(cap))
    paid = amounts(price, make_tables(settings={"payments": text}), place)
    assert sum(paid) == price.total
    assert min(paid) > 0


@pytest.mark.parametrize(
    "text", ["", "deposit", "deposit ten, done 90", "deposit 10, done 80", "deposit -10, done 110"]
)
def test_a_schedule_that_is_none_is_a_problem(text: str) -> None:
    assert payments_in(text) is None


def test_the_classes_sum_to_the_price(price: Price) -> None:
    classes = price_by_class(price)
    assert list(classes) == ["find", "reach", "pipe", "put back"]
    assert sum(classes.values()) == price.total
    assert classes["put back"] == sum(line.amount for line in price.lines if line.work_class == "put back")


@pytest.mark.parametrize(
    ("rate", "years", "single", "uniform"),
    [  # published discount factors, 3 % and the 7 % of OMB circular A-94; the last two columns [computed] to their digits
        (0.03, 10, 0.7441, 8.530), (0.03, 20, None, 14.877), (0.03, 30, None, 19.600), (0.03, 50, None, 25.730),
        (0.07, 1, 0.9346, None), (0.07, 2, 0.8734, None), (0.07, 3, 0.8163, None), (0.07, 4, 0.7629, None),
        (0.07, 5, 0.7130, None), (0.07, 10, None, 7.024), (0.07, 20, None, 10.594), (0.07, 30, None, 12.409),
    ],
)  # fmt: skip
def test_present_worth_factors_are_the_published_ones(
    rate: float, years: int, single: float | None, uniform: float | None
) -> None:
    if single is not None:
        assert round(single_present_worth(rate, years), 4) == single
    if uniform is not None:
        assert round(uniform_present_worth(rate, years), 3) == uniform


def test_twenty_thousand_at_five_percent_is_twenty_one_in_a_year() -> None:
    assert 20000 / single_present_worth(0.05, 1) == pytest.approx(21000)


def test_cost_a_year_without_interest_is_price_by_years_and_without_life_is_nothing_said() -> None:
    assert cost_a_year(D(4200), 50, D(0)) == D("84.00")
    assert cost_a_year(D(4200), 0, D(3)) is None


def test_cost_a_year_over_the_stated_life_uses_the_firms_rate(make_tables: Callable[..., Tables]) -> None:
    # 4,200 over 100 and 50 years at 3 %: UPV 31.599 and 25.730 [computed]; without interest 42 and 84
    tables = make_tables()
    assert cost_a_year_of_life(D(4200), 50, 100, tables) == (D("132.92"), D("163.24"))
    flat = tables.with_settings({"present_worth_rate_percent": "0"})
    assert cost_a_year_of_life(D(4200), 50, 100, flat) == (D("42.00"), D("84.00"))
    assert cost_a_year_of_life(D(4200), 0, 2, tables) is None
