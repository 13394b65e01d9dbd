"""The habits a machine can ask for: import order, types, formatting, words that must not stand in the project."""

import re
import subprocess
import sys
from pathlib import Path

import pytest

from tests.slips.__main__ import slips

ROOT = Path(__file__).parent.parent
BIN = Path(sys.executable).parent


@pytest.mark.parametrize(
    "command",
    [
        [str(BIN / "ruff"), "check", "estimator", "tests"],
        [str(BIN / "ruff"), "format", "--check", "estimator", "tests"],
        [sys.executable, "-m", "mypy"],
        [str(BIN / "lint-imports")],
    ],
    ids=["lint", "format", "types", "import order"],
)
def test_the_code_keeps_the_habit(command: list[str]) -> None:
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, encoding="utf-8", check=False)
    assert done.returncode == 0, done.stdout[-4000:] + done.stderr[-2000:]


def test_no_module_grows_beyond_two_hundred_and_fifty_lines() -> None:
    lines = {p.relative_to(ROOT): len(p.read_text("utf-8").splitlines()) for p in (ROOT / "estimator").rglob("*.py")}
    long = {str(p): n for p, n in lines.items() if n > 250}
    assert not long


def test_every_module_says_in_its_first_line_what_it_is() -> None:
    bare = [
        str(p.relative_to(ROOT))
        for p in (ROOT / "estimator").rglob("*.py")
        if not p.read_text("utf-8").startswith(('"""', 'r"""'))
    ]
    assert not bare


def test_no_unfinished_marks_stand_in_the_code() -> None:
    mark = re.compile(r"\b(TO" + r"DO|FIX" + r"ME|XX" + r"X|NotImplemented" + r"Error)\b")
    found = [
        f"{p.relative_to(ROOT)}:{n}"
        for folder in ("estimator", "tests")
        for p in (ROOT / folder).rglob("*.py")
        for n, line in enumerate(p.read_text("utf-8").splitlines(), 1)
        if mark.search(line)
    ]
    assert not found


def test_every_slip_still_fits_the_code() -> None:
    assert [slip.name for slip in slips() if not slip.fits(ROOT)] == []


def test_no_module_of_the_program_needs_the_tests() -> None:
    """The examples on top of the rules may, for they are tests; they are read as text."""
    needs = re.compile(r"^\s*(from|import) tests\b", re.MULTILINE)
    assert not [p for p in (ROOT / "estimator").rglob("*.py") if needs.search(p.read_text("utf-8"))]
