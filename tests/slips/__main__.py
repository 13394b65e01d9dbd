"""Put one slip after the other into a copy of the program and print which test sees it: `python -m tests.slips [NAME ...]`.

It ends with 1 where a slip was seen by no test, or no longer fits the code. All of them take an hour or more on two cores.
"""

import os
import re
import shutil
import subprocess
import sys
import tempfile
import tomllib
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).parents[2]
COPIED = ("estimator", "price_tables", "tests", "docs", "pyproject.toml", "README.md", "DEVELOPERS.md", "CHANGES.md")
RED = re.compile(r"^(?:FAILED|ERROR) (\S+)", re.MULTILINE)
NO_TEST = "no test"


@dataclass(frozen=True, slots=True, kw_only=True)
class Slip:
    """One line of one file as it is and as somebody might write it by mistake, and where it should be seen."""

    name: str
    file: str
    old: str
    new: str
    tests: tuple[str, ...]

    def fits(self, root: Path) -> bool:
        path = root / self.file
        return path.is_file() and path.read_text("utf-8").count(self.old) == 1


def slips() -> tuple[Slip, ...]:
    """Return all of slips.toml in its order."""
    told = tomllib.loads((Path(__file__).parent / "slips.toml").read_text("utf-8"))
    return tuple(Slip(name=name, **{**slip, "tests": tuple(slip["tests"])}) for name, slip in told.items())


def seen_by(slip: Slip, copy: Path) -> str:
    """Return the first test that is red with the slip in the copy, or "no test"; the copy is then as it was."""
    file = copy / slip.file
    sound = file.read_text("utf-8")
    file.write_text(sound.replace(slip.old, slip.new), "utf-8")
    try:
        return _first_red(copy, *slip.tests) or _first_red(copy) or NO_TEST
    finally:
        file.write_text(sound, "utf-8")


def _first_red(copy: Path, *where: str) -> str:
    """ "" where all are green. Errors: RuntimeError where pytest could not run."""
    words = [sys.executable, "-m", "pytest", "-q", "-x", "-n", "2", "-p", "no:cacheprovider", *where]
    run = subprocess.run(words, cwd=copy, env={**os.environ, "PYTHONPATH": str(copy)}, capture_output=True, text=True)
    found = RED.search(run.stdout)
    if run.returncode > 1 and not found:  # stopped at the first red test it ends with 2 as well
        raise RuntimeError(run.stdout[-2000:] + run.stderr[-2000:])
    return found.group(1) if found else ""


def main() -> int:
    wanted = [slip for slip in slips() if not sys.argv[1:] or slip.name in sys.argv[1:]]
    found: dict[str, str] = {}
    with tempfile.TemporaryDirectory() as folder:
        copy = Path(folder)
        for name in COPIED:
            (shutil.copytree if (ROOT / name).is_dir() else shutil.copy)(ROOT / name, copy / name)
        for slip in wanted:
            found[slip.name] = seen_by(slip, copy) if slip.fits(copy) else "does not fit the code"
            print(f"{slip.name:42} {found[slip.name]}", flush=True)
    missed = [name for name, test in found.items() if "::" not in test and not test.endswith(".py")]
    print(f"{len(found) - len(missed)} of {len(found)} slips were seen.")
    return 1 if missed else 0


if __name__ == "__main__":
    sys.exit(main())
