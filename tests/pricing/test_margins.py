"""What one more foot, one foot deeper, one more side drain costs: margins of the option's own price, and where they end."""

from decimal import Decimal
from functools import cache
from pathlib import Path

import pytest

from estimator.cli.priced_job import priced
from estimator.fieldnotes import read_job
from estimator.model.deeper_line import deeper
from estimator.model.offer import Extra, Option
from estimator.model.work import Takeoff
from estimator.pipeline.costing import place_of
from estimator.pricing.margins import STEPS, protection_of, reach, ways_of
from estimator.pricing.rough import smooth_price
from estimator.tables.read import demo_folder, read_tables
from estimator.takeoff import measure_with, take_off

EVERYDAY = Path(__file__).parents[1] / "everyday"
D = Decimal


@cache
def option(folder: str, method: str) -> Option:
    options = priced(EVERYDAY / folder / "job.toml", None).quote.options
    return next(o for o in options if {r.method for r in o.scope.repairs} == {method})


def extra(found: Option, code: str) -> Extra:
    return next(e for e in found.extras if e.code == code)


def test_a_foot_deeper_is_the_price_of_the_same_trench_a_foot_deeper() -> None:
    """60 ft of trench at 3 ft, counted by taking it off again 0.75 ft deeper; the next 3 in reach 5 ft with the locator's
    tolerance (29 CFR 1926.652(a)(1)) and the margin ends: 3 + 0.19 + 0.33 + 0.5 + 0.75 = 4.77 ft."""
    found = option("trench-60-ft", "trench")
    job = read_job(EVERYDAY / "trench-60-ft" / "job.toml").job
    assert job is not None
    tables = read_tables(demo_folder(), job.day).tables
    assert tables is not None
    repair = found.scope.repairs[0]
    others = [t for t in found.takeoffs if t.repair.id != repair.id]

    def smooth(by: float) -> float:
        taken: Takeoff = take_off(repair, deeper(job, "main", by), tables)
        return smooth_price((*others, taken), tables, place_of(job, tables))

    agreed = extra(found, "deeper")
    assert agreed.cap_quantity == D("0.75")
    assert 0 <= float(agreed.price) - (smooth(0.75) - smooth(0)) / 0.75 < 5
    assert agreed.price > 300  # 60 ft × 2.4 ft × 1 ft are 5.3 yards dug, filled again and part of them hauled


def test_a_spot_costs_less_deeper_than_a_trench() -> None:
    assert (
        extra(option("yard-spot", "yard spot"), "deeper").price * 3
        < extra(option("trench-60-ft", "trench"), "deeper").price
    )


@pytest.mark.parametrize(
    ("folder", "method", "code", "counted"),
    [
        ("tunnel-12-ft", "tunnel", "more-tunnel", 11),
        ("yard-spot", "yard spot", "more-pipe-yard", 6),
        ("reline-40-ft", "reline", "more-liner", 40),
    ],
)
def test_what_is_counted_is_in_the_price(folder: str, method: str, code: str, counted: int) -> None:
    options = priced(EVERYDAY / folder / "job.toml", None).quote.options
    mine = [e for o in options for e in o.extras if e.code == code and {r.method for r in o.scope.repairs} == {method}]
    assert D(counted) in [e.counted for e in mine]
    assert all(e.price % 5 == 0 and e.cap_amount == e.price * e.cap_quantity for e in mine)


def test_near_a_step_no_foot_deeper_is_agreed(tmp_path: Path) -> None:
    """3.95 ft to the middle: with tolerance 4.97 ft; a tenth more needs boxes, and that is no unit price."""
    for file in (EVERYDAY / "trench-60-ft").glob("*"):
        (tmp_path / file.name).write_text(file.read_text("utf-8").replace("depth 3ft", "depth 3.95ft"), "utf-8")
    options = priced(tmp_path / "job.toml", None).quote.options
    trench = next(o for o in options if {r.method for r in o.scope.repairs} == {"trench"})
    assert "deeper" not in [e.code for e in trench.extras]
    assert "more-pipe-yard" in [e.code for e in trench.extras]


@pytest.mark.parametrize("folder", ["trench-60-ft", "tunnel-12-ft", "yard-spot", "reline-40-ft"])
def test_what_more_of_it_turns_still_more_does_not_turn_back(folder: str) -> None:
    """The end that is found by halves is the one that a walk from step to step finds, of every repair on offer."""
    run = priced(EVERYDAY / folder / "job.toml", None)
    job, tables = run.quote.job, run.tables
    measure = measure_with(tables)
    for repair in {r.id: r for o in run.quote.options for r in o.scope.repairs}.values():
        for row in (row for row in tables.extras if row.margin_of and repair.method in row.methods):
            for change in ways_of(row):
                plain, step, holds = measure(repair, job), STEPS[row.margin_of], 0.0
                for times in range(1, int(float(row.cap) / step + 1e-9) + 1):
                    if protection_of(measure(*change(repair, job, times * step))) != protection_of(plain):
                        break
                    holds = times * step
                assert reach(row, change, repair, job, measure)[2] == holds
