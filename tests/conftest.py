"""What every test shares. The checks with an office program run where one is installed (CI installs it)."""

import os
import shutil
import sys
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import settings

KEPT = Path(__file__).parent.parent / ".pytest_cache" / "compiled"
"""Where the program's modules are kept compiled: a test that starts the program need not compile six hundred of them."""
os.environ.pop("PYTHONDONTWRITEBYTECODE", None)
os.environ["PYTHONPYCACHEPREFIX"] = sys.pycache_prefix = str(KEPT)
sys.dont_write_bytecode = False

collect_ignore = [] if shutil.which("soffice") else ["engine"]


def pytest_report_header() -> str:
    if collect_ignore:
        return "office program: none on this machine, so tests/engine is left out (CI runs it)"
    return "office program: found, so tests/engine runs too"


settings.register_profile("no timed tests", deadline=None)
settings.load_profile("no timed tests")


@pytest.fixture(scope="session")
def issued(tmp_path_factory: pytest.TempPathFactory) -> Callable[[Path], Path]:
    """The demo's job with its first revision, quoted once: a folder in, its own copy there, and the job file, out."""
    from typer.testing import CliRunner

    from estimator import demo
    from estimator.cli.app import build

    first = tmp_path_factory.mktemp("issued")
    for name in demo.FILES:
        shutil.copyfile(Path(demo.__file__).parent / name, first / name)
    words = ["quote", str(first / "job.toml")]
    own = {"COLUMNS": "100", "ESTIMATOR_TABLES": None, "ESTIMATOR_SETTINGS": str(first / "no-settings.toml")}
    done = CliRunner().invoke(build(words), words, env=own)
    assert done.exit_code == 0, done.output

    def copy(folder: Path) -> Path:
        shutil.copytree(first, folder, dirs_exist_ok=True)
        return folder / "job.toml"

    return copy
