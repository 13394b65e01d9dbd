"""What an hour of work costs: a published textbook problem, and the firm's simple form of it."""

from decimal import Decimal

from estimator.pricing.burden import loaded_rate

D = Decimal


def test_the_textbook_burden_comes_out_within_a_cent() -> None:
    # Peterson, Construction Accounting and Financial Management, problem on labor burden; the answer is [computed]:
    # 45 h × 30 weeks + 40 h × 20 weeks at $23, overtime × 1.5, 2 weeks of paid leave, gas $150 a month, bonus $300.
    wage, hours = D(23), D(30 * 45 + 20 * 40)
    pay = 30 * (40 * wage + 5 * wage * D("1.5")) + 20 * 40 * wage + 2 * 40 * wage
    assert pay == D("53015.0")
    gross = pay + 12 * D(150) + D(300)
    # Social Security, Medicare, workers' compensation, liability and retirement on all of it; unemployment on the first
    shares = gross * (D("6.2") + D("1.45") + D("12.25") + D("0.55") + 3) / 100
    of_the_first = D(7000) * D("0.8") / 100 + D(10000) * D("5.8") / 100
    hour = (gross + shares + of_the_first + 12 * D(450)) / hours
    assert abs(hour - D("34.45")) <= D("0.01")
    burden_percent = ((hour / wage - 1) * 100).quantize(D("0.1"))  # what the office writes into the table of roles
    assert burden_percent == D("49.8")
    assert abs(loaded_rate(wage, burden_percent) - hour) <= D("0.02")


def test_a_wage_with_its_burden_is_the_rate_of_the_role() -> None:
    rates = [loaded_rate(D(w), D(32)) for w in (38, 22, 20, 32)]
    assert rates == [D("50.16"), D("29.04"), D("26.40"), D("42.24")]  # [computed]
