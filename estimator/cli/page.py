"""The program in, the page docs/commands.md out: `python -m estimator.cli.page` prints it; a test sees that it is fresh."""

import os
import sys

from typer.testing import CliRunner

from estimator.cli.app import build_whole
from estimator.cli.command_list import COMMANDS

TOP = """# Commands

Printed from the program by `python -m estimator.cli.page > docs/commands.md`; a test sees that it is fresh.

Answers go to the standard output, messages to the error output. Exit codes: 0 done; 1 something to mend in the inputs;
2 wrong command line; 3 a fault of the program (`ESTIMATOR_DEBUG=1` then shows where). `NO_COLOR=1` takes color away;
output that is piped is plain.

**Which price tables**: `--tables`, else the folder or workbook that `ESTIMATOR_TABLES` names, else the one in your settings
file, else the invented demo prices. **Which language**: `--language`, else your settings file, else English; `quote` and
`changes --order` write in the languages of the job file.

**Your settings file** is a text file of two lines, either of which may be left out:

    tables = "~/prices"
    language = "es_US"

It lies where each system keeps such files: `~/.config/estimator/settings.toml` on Linux,
`~/Library/Application Support/estimator/settings.toml` on macOS, `%LOCALAPPDATA%\\estimator\\settings.toml` on Windows;
`ESTIMATOR_SETTINGS` names another. A mistake in it stops the command with a plain message.

**Completion**: `estimator --install-completion` teaches bash, zsh, fish or PowerShell the commands and options, and after a
job file its line names (`--line`), its lines of the quote (`explain job.toml A…`), its option letters (`--accepted`,
`--option`) and its revisions, read from the newest record.
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
