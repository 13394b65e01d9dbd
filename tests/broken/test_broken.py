"""Every problem the program can name has a bad input of its own here, and comes out in exact words.

A folder is named for the code (log/amount -> log-amount). This harness prints the cases of the job file and its logs:
`job.toml` and whatever lies beside it, or `path.txt` with another name to read, or `case.py` with `problems(folder)` for what
no file can hold (of any package). Set ESTIMATOR_WRITE_EXPECTED=1 to write the words anew, then read the difference.
"""

import importlib.util
import os
from collections.abc import Iterable
from pathlib import Path

import pytest

from estimator.cli.problem_page import EVERY_PROBLEM
from estimator.fieldnotes import PROBLEMS, read_job
from estimator.model.problem import Problem

BROKEN = Path(__file__).parent
CODES = tuple(kind.code for kind in PROBLEMS)
OTHERS = tuple(kind.code for kind in EVERY_PROBLEM if kind.code not in CODES)


def folder_of(code: str) -> Path:
    return BROKEN / code.replace("/", "-")


def problems_of(folder: Path) -> Iterable[Problem]:
    case = folder / "case.py"
    if case.exists():
        spec = importlib.util.spec_from_file_location(f"case_{folder.name.replace('-', '_')}", case)
        assert spec is not None and spec.loader is not None
        module = importlib.util.module_from_spec(spec)
        spec.loader.exec_module(module)
        return module.problems(folder)
    named = folder / "path.txt"
    os.chdir(folder)  # so that a name is printed as it was typed
    return read_job(named.read_text("utf-8").strip() if named.exists() else "job.toml").problems


@pytest.mark.parametrize("code", [*CODES, *(code for code in OTHERS if (folder_of(code) / "case.py").exists())])
def test_a_broken_input_is_named_in_its_exact_words(code: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(BROKEN)  # and back afterwards
    folder = folder_of(code)
    printed = "\n".join(map(str, problems_of(folder))) + "\n"
    expected = folder / "expected.txt"
    if os.environ.get("ESTIMATOR_WRITE_EXPECTED"):
        expected.write_text(printed, "utf-8")
    assert printed == expected.read_text("utf-8")
    assert f"({code})" in printed


@pytest.mark.parametrize("code", sorted({kind.code for kind in EVERY_PROBLEM}))
def test_every_declared_problem_has_a_bad_input(code: str) -> None:
    expected = folder_of(code) / "expected.txt"
    assert expected.exists(), f"{expected.parent.name} has no expected.txt"
    assert f"({code})" in expected.read_text("utf-8")


def test_no_code_is_declared_twice() -> None:
    codes = [kind.code for kind in EVERY_PROBLEM]
    assert sorted(codes) == sorted(set(codes))
