"""What an hour of work costs: a published textbook problem, and the firm's simple form of it."""

from decimal import Decimal

import pytest

from estimator.model.money import cents
from estimator.tables.rows_of_hours import Role

D = Decimal


def an_hour(wage: str, burden: Decimal, paid: Decimal | int = 0, worked: int = 0) -> Decimal:
    hours = {"paid_hours": D(paid), "worked_hours": D(worked)}
    return cents(Role(role="anyone", wage=D(wage), burden_percent=burden, **hours).hour)


def test_the_textbook_burden_comes_out_within_a_cent() -> None:
    # Peterson, Construction Accounting and Financial Management, problem on labor burden; the answer is [computed]:
    # 45 h × 30 weeks + 40 h × 20 weeks at $23, overtime × 1.5, 2 weeks of paid leave, gas $150 a month, bonus $300.
    worked = 30 * 45 + 20 * 40
    paid = 30 * (40 + 5 * D("1.5")) + 20 * 40 + 2 * 40  # hours on the pay slips, overtime as one and a half
    pay = 23 * paid
    assert (worked, pay) == (2150, D("53015.0"))
    gross = pay + 12 * D(150) + D(300)
    # Social Security, Medicare, workers' compensation, liability and retirement on all of it; unemployment on the first
    shares = gross * (D("6.2") + D("1.45") + D("12.25") + D("0.55") + 3) / 100
    of_the_first = D(7000) * D("0.8") / 100 + D(10000) * D("5.8") / 100
    whole = gross + shares + of_the_first + 12 * D(450)
    on_top = 100 * (whole / pay - 1)  # what the office writes as burden_percent beside the hours
    assert an_hour("23", on_top, paid, worked) == D("34.45")
    assert an_hour("23", D("49.8")) == D("34.45")  # or all of it in the percent


def test_leave_is_paid_and_not_worked() -> None:
    assert an_hour("20", D(0), 52 * 40, 50 * 40) == D("20.80")


@pytest.mark.parametrize(("wage", "hour"), [(38, "50.16"), (22, "29.04"), (20, "26.40"), (32, "42.24")])
def test_a_wage_with_its_burden_is_the_rate_of_the_role(wage: int, hour: str) -> None:
    assert an_hour(str(wage), D(32)) == D(hour)  # [computed]
