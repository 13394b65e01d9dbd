"""Small files beside the revisions: whatever stands in them, a problem is named and the revisions stay as they are."""

import json
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from estimator.model.problem import CannotGoOn
from estimator.pricing.actuals import Actual
from estimator.records.afterwards import actuals, money
from estimator.records.afterwards.sold import Sold, sold
from tests.made_up.sold import issued

ANYTHING = st.recursive(
    st.none() | st.booleans() | st.integers() | st.text(),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.sampled_from(["revision", "option", "entries", "days", "due", "task", "day", "amount"]), inner),
    max_leaves=12,
)  # fmt: skip


@pytest.fixture(scope="module", name="desk")
def _desk(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Sold]:
    folder = tmp_path_factory.mktemp("desk") / "larkspur"
    return folder, issued(folder)


@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(held=ANYTHING, cut=st.integers(0, 200))
def test_whatever_stands_in_the_files_ends_in_a_reading_or_a_named_problem(desk, held, cut):
    folder, done = desk
    text = json.dumps(held)
    for name, read in ((actuals.NAME, lambda: actuals.worked(folder)), (money.NAME, lambda: money.money(folder, done))):
        (folder / name).write_text(text[: cut or None], "utf-8")
        try:
            read()
        except CannotGoOn as stop:
            assert [problem.code for problem in stop.problems] == ["after/damaged"]
        finally:
            (folder / name).unlink()


def test_what_is_kept_is_read_back_as_it_was_entered(tmp_path):
    done = issued(tmp_path / "job")
    entries = (Actual(task="tunnel dig", hours=0.1 + 0.2, quantity=3.5, cause="soil", note="näß"),)
    kept = actuals.keep(tmp_path / "job", done, entries, None)
    assert actuals.worked(tmp_path / "job") == kept
    assert kept.entries == entries


def test_hours_of_a_job_signed_anew_are_held_against_what_is_signed(tmp_path):
    folder = tmp_path / "job"
    first = issued(folder, letter="")
    actuals.keep(folder, first, [Actual(task="tunnel dig", hours=5)], None)
    other = sold(folder, "B")
    kept = actuals.keep(folder, other, [Actual(task="tunnel dig", hours=7)], None)
    assert (kept.option, [e.hours for e in kept.entries]) == ("B", [7])
    assert json.loads((folder / "actuals r1 A.json").read_text("utf-8"))["entries"][0]["hours"] == 5


def test_an_option_nobody_offered_is_refused(tmp_path):
    issued(tmp_path / "job")
    with pytest.raises(CannotGoOn, match="Its options are A, B"):
        sold(tmp_path / "job", "Z")


def test_a_quantity_is_counted_as_production_counts_it_on_every_row_of_a_task(tmp_path):
    """20 ft at 1 and 9 ft at 1.15 planned; 10 ft of the second were dug: 20 + 10 × 1.15 = 31.5 [computed]."""
    from dataclasses import replace

    from estimator.records.afterwards.crew_hours import Filled, _entries

    near = issued(tmp_path / "job").tasks[0]
    first, second = replace(near, quantity=20.0, per=1.0), replace(near, quantity=9.0, per=1.15)
    rows = [Filled(near.task, (first,), 30.0, None, ""), Filled(near.task, (second,), 11.0, 10.0, "soil")]
    (entry,) = _entries(rows)
    assert (entry.hours, entry.cause) == (41.0, "soil")
    assert entry.quantity == pytest.approx(31.5)
