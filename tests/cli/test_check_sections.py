"""`estimator check`: two tests of one section side by side, and the order with a foundation lift, only where there is one."""

from dataclasses import replace
from datetime import date
from pathlib import Path

from estimator import demo
from estimator.cli.views.check import write_check
from estimator.cli.views.layout import Layout
from estimator.diagnosis import diagnose
from estimator.fieldnotes import read_job
from estimator.model.job import Foundation, Job, WaterTest
from estimator.quote import build_report
from tests.made_up.stretch import demo_tables

CLEAN = Path(__file__).parents[1] / "jobs" / "clean-line" / "job.toml"
ORDER, COMPARED, URGENT = "The order with the foundation work", "Tests compared", "Is it urgent?"


def said(job: Job) -> list[str]:
    out = Layout()
    write_check(out, job, diagnose(job, demo_tables()))
    return [row.text for row in out.rows]


def read(path: Path) -> Job:
    job = read_job(path).job
    assert job is not None
    return job


def test_nothing_is_said_of_a_lift_or_a_pair_of_tests_where_there_is_none() -> None:
    assert not {ORDER, COMPARED} & set(said(read(CLEAN)))


def test_the_order_with_a_lift_names_the_places_each_step_is_about() -> None:
    rows = said(read(Path(demo.__file__).parent / "job.toml"))
    order = " ".join(" ".join(rows[rows.index(ORDER) :]).split())
    assert "1. We water-test the drains under the house. 2." in order
    assert "(main 10.9 – 18.3 ft" in order
    assert order.index("The foundation company lifts the house") < order.index("We water-test them again")


def test_two_tests_of_a_section_are_compared_in_a_sentence() -> None:
    """10 minutes of settling (test_settle_min), then an inch in 20 minutes in a 4 in riser, and none after the repair."""
    before = WaterTest(
        section="main", date=date(2026, 10, 1), readings=((0, 0), (10, 0.5), (30, 1.5)), open_risers_in=(4.0,), result="failed", sealed=True
    )  # fmt: skip
    after = replace(before, date=date(2026, 11, 1), readings=((0, 0), (10, 0), (30, 0)), result="passed")
    job = replace(read(CLEAN), water_tests=(before, after))
    rows = said(job)
    assert rows[rows.index(COMPARED) + 1].strip() == "Main failed before and passes now."


def test_the_quote_hands_both_to_the_papers() -> None:
    job = replace(read(CLEAN), foundation=Foundation(work="planned"))
    tables = demo_tables()
    diagnosis = diagnose(job, tables)
    assert len(diagnosis.lift_steps) == 6
    quote = build_report(job, diagnosis, tables, job.day)
    assert quote.lift_steps == tuple(step.text for step in diagnosis.lift_steps)
    assert quote.tests_compared == diagnosis.tests_compared


def test_each_line_says_how_urgent_it_is_and_a_clean_one_does_not() -> None:
    rows = said(read(Path(demo.__file__).parent / "job.toml"))
    lines = rows[rows.index(URGENT) + 1 : rows.index(URGENT) + 12]
    assert any(text.startswith("main (4)") and "Act now." in text for text in lines)
    assert any(text.startswith("yard (3)") and "Act soon:" in text for text in lines)
    assert URGENT not in said(read(CLEAN))
