"""Words typed in, text and an exit code out. Nothing heavy is imported before a command asks for it."""

import sys

import estimator
from estimator.cli.streams import ready_streams


def main() -> None:
    """The program `estimator`. Exit codes: 0 done, 1 something to mend in the inputs, 2 wrong command line, 3 a fault."""
    ready_streams()
    if sys.argv[1:] == ["--version"]:
        print(f"estimator {estimator.__version__}")
        return
    from estimator.cli.app import build

    build(sys.argv[1:])(prog_name="estimator")
