"""Whole jobs, from notes to priced options, dumped as text and compared word for word.

Each folder here with an expected.txt is a case; a new folder with an empty expected.txt is a new one. Set
ESTIMATOR_WRITE_EXPECTED=1 to write the dumps anew, then read the difference. Maple and Pecan are also worked by hand in
docs/worked-examples.md: their totals stand here apart from the dump, so that a dump written anew cannot move them.
"""

import os
from collections.abc import Iterator
from decimal import Decimal
from functools import cache
from pathlib import Path

import pytest

from estimator.fieldnotes import read_job
from estimator.model.offer import Option
from estimator.model.problem import CannotGoOn
from estimator.model.work import Takeoff
from estimator.pipeline import Result, run
from estimator.tables.read import demo_folder, read_tables
from estimator.takeoff.quantities import FACTS, QUANTITIES
from estimator.works.methods import names
from tests.worked import worked_tables

HERE = Path(__file__).parent
WORKED = ("maple", "pecan")
"""At the prices of docs/worked-examples.md; all others at the demo tables as they are."""
CASES = sorted(p.parent.name for p in HERE.glob("*/expected.txt"))
UNITS = {name: unit for name, (unit, _) in QUANTITIES.items()}


@cache
def result_of(name: str) -> Result | CannotGoOn:
    reading = read_job(HERE / name / "job.toml")
    assert reading.job is not None, reading.problems
    tables = read_tables(demo_folder(), reading.job.day, UNITS, FACTS, (*names(), "job")).tables
    assert tables is not None
    tables = worked_tables(tables) if name in WORKED else tables
    try:
        return run(reading.job, tables, reading.job.day)
    except CannotGoOn as stop:
        return stop


def dump(result: Result | CannotGoOn) -> str:
    if isinstance(result, CannotGoOn):
        return "\n".join(map(str, result.problems)) + "\n"
    return "\n".join(_lines(result)) + "\n"


def _lines(result: Result) -> Iterator[str]:
    for need in result.diagnosis.needs:
        must = "must" if need.must else "may stay"
        span = f"{need.stretch.from_ft:.2f}–{need.stretch.to_ft:.2f}"
        yield f"need {need.id}: {', '.join(need.kinds)} {span} ft, severity {need.severity}, {need.grade}, {must}"
    assert result.quote is not None
    for option in result.quote.options:
        yield ""
        yield from _option(option)


def _option(option: Option) -> Iterator[str]:
    fixed = "" if option.fixed else ", not fixed"
    yield f"option {option.letter}: {option.price.total}{fixed}, at most {option.most}"
    yield (
        f"  days {option.days_on_site}, without drains {option.days_without_drains}, floor {option.floor_sf:.1f} sq ft,"
        f" yard {option.yard_sf:.1f} sq ft, old pipe left {option.old_pipe_left_ft:.1f} ft, test {option.water_test}"
    )
    for takeoff in option.takeoffs:
        yield from _takeoff(takeoff)
    for crew in option.price.crews:
        yield f"  crew {crew.crew}: {crew.work_hours:.3f} h + set-up {crew.setup_hours:g} h, {crew.days} days, {crew.amount}"
    for cost in option.price.costs:
        yield f"  cost {cost.part} {cost.ref}: {cost.quantity:f} {cost.unit} × {cost.rate} = {cost.amount}"
    yield f"  direct {option.price.direct}, before rounding {option.price.before_rounding}"
    for line in option.price.lines:
        yield f"  line {line.work_item}: {line.quantity:f} × {line.unit_price} = {line.amount} ({line.work_class})"


def _takeoff(takeoff: Takeoff) -> Iterator[str]:
    yield f"  {takeoff.repair.id}"
    for quantity in takeoff.quantities:
        if quantity.value:
            yield f"    {quantity.name} {quantity.value:.3f} {quantity.unit}"


@pytest.mark.parametrize("name", CASES)
def test_a_whole_job_comes_out_as_before(name: str) -> None:
    expected = HERE / name / "expected.txt"
    printed = dump(result_of(name))
    if os.environ.get("ESTIMATOR_WRITE_EXPECTED"):
        expected.write_text(printed, "utf-8")
    assert printed == expected.read_text("utf-8")


@pytest.mark.parametrize(
    ("name", "method", "direct", "total"),
    [("maple", "yard spot", "2310.75", "4200"), ("pecan", "tunnel", "8601.80", "16525")],
)
def test_the_jobs_worked_by_hand_come_out_to_the_cent(name: str, method: str, direct: str, total: str) -> None:
    result = result_of(name)
    assert isinstance(result, Result) and result.quote is not None
    prices = [o.price for o in result.quote.options if {r.method for r in o.scope.repairs} == {method}]
    assert [(p.direct, p.total) for p in prices] == [(Decimal(direct), Decimal(total))]


@pytest.mark.parametrize("name", CASES)
def test_the_lines_of_every_option_add_up_to_its_price(name: str) -> None:
    result = result_of(name)
    if isinstance(result, CannotGoOn) or result.quote is None:
        return
    for option in result.quote.options:
        assert sum(line.amount for line in option.price.lines) + option.price.tax == option.price.total
        assert all(line.amount == line.unit_price * line.quantity for line in option.price.lines)


def test_the_same_notes_give_the_same_dump_twice() -> None:
    once = dump(result_of("maple"))
    result_of.cache_clear()
    assert dump(result_of("maple")) == once
