"""Whatever somebody hands in as a workbook ends in sheets or in a problem, never in a trace."""

from pathlib import Path

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from estimator.model.problem import Place
from estimator.sheets.fault import Fault
from estimator.sheets.gate import gate
from estimator.sheets.read import read
from tests.tables.workbench import damaged, demo_bytes, reading

SLOW = (HealthCheck.function_scoped_fixture, HealthCheck.too_slow)


@given(st.binary(max_size=400).map(lambda tail: b"PK\x03\x04" + tail) | st.binary(max_size=400))
def test_any_bytes_are_a_problem_or_a_workbook(data: bytes) -> None:
    wrong = gate(data, Place("prices.xlsx"))
    assert wrong is not None and wrong.code.startswith("sheet/")


@settings(max_examples=25, deadline=None, suppress_health_check=SLOW)
@given(at=st.integers(0, 10**9), scratch=st.binary(min_size=1, max_size=30))
def test_a_workbook_with_a_few_bytes_changed_never_ends_in_a_trace(at: int, scratch: bytes, tmp_path: Path) -> None:
    data = bytearray(demo_bytes())
    start = at % (len(data) - len(scratch))
    data[start : start + len(scratch)] = scratch
    path = tmp_path / "prices.xlsx"
    path.write_bytes(bytes(data))
    found = reading(path)
    assert found.tables is not None or found.problems


def test_a_torn_download_is_named(tmp_path: Path) -> None:
    path = tmp_path / "prices.xlsx"
    path.write_bytes(demo_bytes()[:-2000])
    assert [problem.code for problem in reading(path).problems] == ["sheet/damaged"]


def test_what_a_cell_can_hold_is_told_apart(tmp_path: Path) -> None:
    lines = ["set extras!E2 =1+1", "truth extras!E3", "set extras!E4 #N/A", "merge extras!E5:E6", "hide extras!7"]
    sheet = read(damaged(tmp_path, lines)).sheets["extras"]
    cells = [row.cells[4] for row in sheet.rows]
    assert cells[1:6] == [Fault("uncalculated", "=1+1"), True, Fault("error", "#N/A"), Fault("merged", "E5:E6"), Fault("merged", "E5:E6")]  # fmt: skip
    assert [row.number for row in sheet.rows if row.hidden] == [7]


def test_a_missing_workbook_is_named(tmp_path: Path) -> None:
    assert [problem.code for problem in reading(tmp_path / "none.xlsx").problems] == ["tables/nothing-there"]
    assert [problem.code for problem in read(tmp_path / "none.xlsx").problems] == ["sheet/unreadable"]


def test_a_remark_in_a_row_of_its_own_is_one_message(tmp_path: Path) -> None:
    for cell in ("A120", "E120", "AB120"):  # the id's column, a number's, one beside the table
        found = reading(damaged(tmp_path, [f"set materials!{cell} call Joe"]))
        assert [(problem.code, problem.place.cell) for problem in found.problems] == [("tables/stray-cell", cell)]


def test_rows_that_a_filter_hid_are_one_message(tmp_path: Path) -> None:
    found = reading(damaged(tmp_path, ["hide roles!2", "hide roles!3", "hide roles!5"]))
    assert [problem.place.cell for problem in found.problems] == ["row 2", "row 5"]
    assert "rows 2 to 3 are hidden" in str(found.problems[0].wrong)
    assert found.tables is not None
