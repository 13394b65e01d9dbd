"""Sums over a month: each job counts in the month of its day; gross profit by method by hand."""

from dataclasses import replace
from datetime import date, timedelta
from decimal import Decimal
from pathlib import Path

from estimator.pricing.actuals import Actual
from estimator.records.afterwards.actuals import keep
from estimator.records.afterwards.crew_day_profit import Earned
from estimator.records.afterwards.lost import lose, lost
from estimator.records.afterwards.money import changed, note
from estimator.records.afterwards.month import Month, month_of
from estimator.records.afterwards.sold import sold
from estimator.records.finished import finish
from estimator.records.job_status import job_status
from estimator.records.recorded_text import sealed, unsealed
from tests.made_up.sold import issued

D = Decimal
DAY = date(2026, 12, 5)


def months(folder: Path, month: str = "2026-11") -> Month:
    return month_of(sorted(folder.glob("*.toml")), month)


def job(folder: Path, name: str, letter: str = "") -> Path:
    (folder / f"{name}.toml").write_text("[job]\n")
    issued(folder / name, letter)
    return folder / name


def test_sent_won_lost_and_why_done_and_in_hand_each_in_its_month(tmp_path: Path) -> None:
    """Four quotes of November 18: one signed and built in December, one signed and in hand, two lost for two reasons. The
    accepted option A is $16,525.00 and 7.5 crew-days; a lost quote counts at its cheapest, $9,875.00."""
    built, _ = job(tmp_path, "a", "A"), job(tmp_path, "b", "A")
    lose(job(tmp_path, "c"), date(2026, 11, 30), "price")
    lose(job(tmp_path, "d"), date(2026, 11, 30), "chose a liner")
    finish(built, DAY)
    (tmp_path / "broken.toml").write_text("[job]\n")
    (tmp_path / "broken" / "r1").mkdir(parents=True)
    november, december = months(tmp_path), months(tmp_path, "2026-12")
    assert [(c.jobs, c.dollars) for c in (november.sent, november.won, november.lost, november.done)] == [
        (4, D("52800.00")), (2, D("33050.00")), (2, D("19750.00")), (0, D(0)),
    ]  # fmt: skip
    assert november.reasons == {"chose a liner": 1, "price": 1}
    assert (november.backlog.jobs, november.backlog_days) == (2, D("15.0"))
    assert (december.sent.jobs, december.done.jobs, december.backlog.jobs, december.backlog_days) == (0, 1, 1, D("7.5"))
    assert [Path(str(w).split(": ")[0]).stem for w in november.wrong] == ["broken"]


def test_a_reason_typed_again_counts_and_a_lost_job_stands_so_in_the_list(tmp_path: Path) -> None:
    folder = job(tmp_path, "a")
    lose(folder, date(2026, 11, 29), "price")
    lose(folder, date(2026, 11, 30), "no answer")
    held = lost(folder)
    assert held is not None and held.why == "no answer"
    assert job_status(tmp_path / "a.toml", DAY, lambda _: 0).state == "lost"


def test_gross_profit_per_crew_day_is_price_less_cost_with_labor_as_it_turned_out(tmp_path: Path) -> None:
    """Option A: $16,525.00, direct cost 8,601.80 of which labor 4,752.00 for 7.5 crew-days.

    It took 9 crew-days: labor 4,752.00 × 9 ÷ 7.5 = 5,702.40. The rest of the cost is 3,849.80. Left over: 16,525.00 − 5,702.40
    − 3,849.80 = 6,972.80 on 9 crew-days: 774.76 (774.7556) a day [by hand].
    """
    folder = job(tmp_path, "a", "A")
    path = next(folder.rglob("Record*.json"))
    held = unsealed(path.read_bytes())
    held["quote"]["options"][0]["takeoffs"][0]["repair"]["id"] = "r"  # as the example's lines name it
    path.write_bytes(sealed(held))
    done = sold(folder)
    keep(folder, done, [Actual(task="tunnel-dig", hours=48.0)], D(9))
    finish(folder, DAY)
    (found,) = months(tmp_path, "2026-12").earned
    assert found == Earned(method="tunnel", profit=D("6972.80"), crew_days=D(9))
    assert found.per_crew_day == D("774.76")


def test_work_in_hand_counts_the_change_orders_and_credits_noted_by_then(tmp_path: Path) -> None:
    """$16,525.00 signed, which is taxed 0: + 450.10 on November 20, − 120.00 on November 25, + 80.00 on December 2: 16,855.10
    at the end of November, 16,935.10 at that of December; what was won in November stays what was signed [by hand]."""
    folder = job(tmp_path, "a", "A")
    done = sold(folder)
    untaxed = {k: {**done.option["price"], "tax": "0"} if k == "price" else v for k, v in done.option.items()}
    done = replace(done, option=untaxed)
    for kind, amount, day in (("change", "450.10", 20), ("credit", "120.00", 25), ("change", "80.00", 32)):
        on = date(2026, 11, 1) + timedelta(days=day - 1)
        note(folder, done, changed(done, kind, f"on {day}", D(amount), on, ""))  # type: ignore[arg-type]
    november, december = months(tmp_path), months(tmp_path, "2026-12")
    assert (november.won.dollars, november.backlog.dollars) == (D("16525.00"), D("16855.10"))
    assert december.backlog.dollars == D("16935.10")
