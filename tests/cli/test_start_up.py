"""What is imported before a command runs; heavy libraries wait for the command that needs them."""

import subprocess
import sys

import pytest

HEAVY = ("pydantic", "openpyxl", "xlsxwriter", "babel", "rich", "tomlkit", "numpy", "hypothesis")


RUN = """
import sys
sys.argv = ["estimator", *sys.argv[1:]]
from estimator.cli import main
try:
    main()
except SystemExit:
    pass
print("\\n".join(sys.modules), file=sys.stderr)
"""


def _imported(*words: str) -> set[str]:
    """Every module there is after a run of the program in a fresh interpreter, top packages by their short name too."""
    done = subprocess.run(
        [sys.executable, "-c", RUN, *words], capture_output=True, text=True, encoding="utf-8", check=False
    )
    names = {line.strip() for line in done.stderr.splitlines()}
    return names | {name.split(".")[0] for name in names}


@pytest.mark.parametrize("words", [("--help",), ("--version",)])
def test_nothing_heavy_is_imported_for(words):
    imported = _imported(*words)
    assert "estimator" in imported
    assert not imported & set(HEAVY)


@pytest.mark.parametrize("words", [("tables", "--help"), ("chek",), ("check",)])
def test_nothing_heavy_but_what_reads_the_command_line_is_imported_for(words):
    """typer takes pydantic to read a command's own options; nothing else may come with it."""
    assert not _imported(*words) & (set(HEAVY) - {"pydantic"})


def test_the_overview_imports_no_command_and_no_room():
    rooms = {name for name in _imported("--help") if name.startswith("estimator.")}
    assert {name for name in rooms if not name.startswith(("estimator.cli", "estimator.model"))} == set()
    assert {name for name in rooms if name.startswith("estimator.cli.commands")} == set()


def test_the_help_of_a_command_imports_that_command_alone():
    commands = {name for name in _imported("explain", "--help") if name.startswith("estimator.cli.commands.")}
    assert commands == {"estimator.cli.commands.explain"}


def test_the_help_of_a_command_needs_no_workbooks_and_no_numbers_of_a_language():
    assert not _imported("quote", "--help") & {"openpyxl", "xlsxwriter", "babel"}
