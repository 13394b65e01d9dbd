"""What an hour of work costs: a published textbook problem, and the firm's simple form of it."""

from decimal import Decimal

import pytest

from estimator.pricing.burden import OnTop, burden_percent, hour_worked, loaded_rate

D = Decimal


def test_the_textbook_burden_comes_out_within_a_cent() -> None:
    # Peterson, Construction Accounting and Financial Management, problem on labor burden; the answer is [computed]:
    # 45 h × 30 weeks + 40 h × 20 weeks at $23, overtime × 1.5, 2 weeks of paid leave, gas $150 a month, bonus $300.
    wage = D(23)
    pay = 30 * (40 * wage + 5 * wage * D("1.5")) + 20 * 40 * wage + 2 * 40 * wage
    assert pay == D("53015.0")
    extras = 12 * D(150) + D(300)
    on_top = [
        OnTop("Social Security", D("6.2")),
        OnTop("Medicare", D("1.45")),
        OnTop("federal unemployment", D("0.8"), of_first=D(7000)),
        OnTop("state unemployment", D("5.8"), of_first=D(10000)),
        OnTop("workers' compensation", D("12.25")),
        OnTop("general liability", D("0.55")),
        OnTop("health insurance", a_year=12 * D(450)),
        OnTop("retirement, half of 6 %", D(3)),
    ]
    hour = hour_worked(pay, extras, on_top, hours_worked=D(30 * 45 + 20 * 40))
    assert abs(hour - D("34.45")) <= D("0.01")
    assert burden_percent(wage, hour) == D("49.8")


def test_leave_is_paid_and_not_worked() -> None:
    assert hour_worked(D(52) * 40 * 20, D(0), [], D(50) * 40) == D("20.80")


def test_nobody_works_for_no_hours() -> None:
    with pytest.raises(ValueError, match="above 0"):
        hour_worked(D(1), D(0), [], D(0))


def test_a_wage_with_its_burden_is_the_rate_of_the_role() -> None:
    rates = [loaded_rate(D(w), D(32)) for w in (38, 22, 20, 32)]
    assert rates == [D("50.16"), D("29.04"), D("26.40"), D("42.24")]  # [computed]
