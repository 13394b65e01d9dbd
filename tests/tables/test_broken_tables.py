"""Every problem of the tables and of handed-in workbooks has a bad input in tests/broken/ and comes out in its exact words.

A case folder holds `expected.txt` and one of: `tables/` (files laid over the demo set), with `without.txt` (files taken
away); `edits.txt` (cells of the demo set changed); `alone/` (a folder read by itself); `damage.txt` (what is done to the demo's workbook); `prices.xlsx`.
"""

from pathlib import Path

import pytest

from estimator.sheets.problems import PROBLEMS as SHEET_PROBLEMS
from estimator.sheets.read import read
from estimator.tables.own_facts import BAD_NAME
from estimator.tables.problems import PROBLEMS
from tests.tables.workbench import damaged, laid_over, reading, with_edits

BROKEN = Path(__file__).parents[1] / "broken"
KINDS = {kind.code: kind for kind in (*PROBLEMS, BAD_NAME, *SHEET_PROBLEMS)}


def broken_case(folder: Path, tmp_path: Path) -> str:
    """All problems of a case, as printed."""
    if (folder / "prices.xlsx").is_dir():
        return "\n".join(map(str, read(folder / "prices.xlsx").problems))
    if (folder / "prices.xlsx").exists():
        path = folder / "prices.xlsx"
    elif (folder / "damage.txt").exists():
        path = damaged(tmp_path, (folder / "damage.txt").read_text("utf-8").splitlines())
    elif (folder / "edits.txt").exists():
        path = with_edits(tmp_path, (folder / "edits.txt").read_text("utf-8").splitlines())
    elif (folder / "alone").exists():
        path = folder / "alone"
    else:
        without = folder / "without.txt"
        path = laid_over(tmp_path, folder / "tables", without.read_text("utf-8").split() if without.exists() else ())
    return "\n".join(map(str, reading(path).problems)).replace(str(path), path.name)


@pytest.mark.parametrize("code", sorted(KINDS))
def test_a_broken_input_is_named_in_its_exact_words(code: str, tmp_path: Path) -> None:
    folder = BROKEN / code.replace("/", "-")
    printed = broken_case(folder, tmp_path)
    assert f"({code})" in printed
    assert printed == (folder / "expected.txt").read_text("utf-8").rstrip("\n")


def test_no_problem_is_declared_twice() -> None:
    assert len(KINDS) == len(PROBLEMS) + 1 + len(SHEET_PROBLEMS)
