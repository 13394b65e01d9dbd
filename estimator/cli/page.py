"""The program in, the page docs/commands.md out: `python -m estimator.cli.page` prints it; a test sees that it is fresh."""

import os
import sys

from typer.testing import CliRunner

from estimator.cli.app import build_whole
from estimator.cli.catalogue import COMMANDS

TOP = """# Commands

Printed from the program by `python -m estimator.cli.page > docs/commands.md`; a test sees that it is fresh.

Answers go to the standard output, messages to the error output. Exit codes: 0 done; 1 something to mend in the inputs;
2 wrong command line; 3 a fault of the program (`ESTIMATOR_DEBUG=1` then shows where). `NO_COLOR=1` takes colour away;
output that is piped is plain. `ESTIMATOR_TABLES` names the price tables to use where `--tables` is not given.
"""


def page() -> str:
    """One section a command: its help as the terminal shows it, 80 columns wide."""
    sections = [("", []), *((entry.group + " " + entry.name, [entry.group, entry.name]) for entry in COMMANDS)]
    return TOP + "".join(_section(name.strip(), [word for word in words if word]) for name, words in sections)


def _section(name: str, words: list[str]) -> str:
    result = CliRunner().invoke(build_whole(), [*words, "--help"], prog_name="estimator", env={"COLUMNS": "80"})
    text = "\n".join(line.rstrip() for line in result.output.rstrip().splitlines())
    return f"\n## {('estimator ' + name).strip()}\n\n```\n{text}\n```\n"


if __name__ == "__main__":
    os.environ["COLUMNS"] = "80"
    sys.stdout.write(page())
