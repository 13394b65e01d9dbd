"""What every test shares. The checks with an office program run where one is installed (CI installs it)."""

import gc
import os
import pickle
import shutil
import sys
import tempfile
from collections.abc import Callable, Hashable
from functools import wraps
from pathlib import Path

import pytest
from hypothesis import settings

KEPT = Path(__file__).parent.parent / ".pytest_cache" / "compiled"
"""Where the program's modules are kept compiled: a test that starts the program need not compile six hundred of them."""
os.environ.pop("PYTHONDONTWRITEBYTECODE", None)
os.environ["PYTHONPYCACHEPREFIX"] = sys.pycache_prefix = str(KEPT)
sys.dont_write_bytecode = False
MEMORY, LEAST_FREE = Path("/dev/shm"), 4 * 10**9
"""A disk in memory, where the system has one with room: the tests write and sync files by the ten thousand."""
if "TMPDIR" not in os.environ and os.access(MEMORY, os.W_OK) and shutil.disk_usage(MEMORY).free > LEAST_FREE:
    os.environ["TMPDIR"] = tempfile.tempdir = str(MEMORY)
os.environ["ESTIMATOR_CACHE"] = "no"  # tests/disk has a folder of its own for it; see also `keeps`
if "PYTEST_XDIST_WORKER" not in os.environ:  # the workers inherit it
    os.environ["XDG_CACHE_HOME"] = tempfile.mkdtemp(prefix="kept-")

from estimator.cli import rarely_swept  # noqa: E402, after it is said where modules are kept compiled

rarely_swept()  # memory is searched for rings of records as rarely as in the program, while tests are collected too

collect_ignore = [] if shutil.which("soffice") else ["engine"]


def pytest_collection_finish() -> None:
    """Memory is never searched among what was collected."""
    gc.freeze()


def pytest_report_header() -> str:
    if collect_ignore:
        return "office program: none on this machine, so tests/engine is left out (CI runs it)"
    return "office program: found, so tests/engine runs too"


LONG = (
    "tests/engine",
    "tests/test_habits.py",
    "tests/jobs",
    "tests/cases",
    "tests/cli",
    "tests/studies",
    "tests/records",
)
"""Where the tests lie that take longest: with several workers they begin, so that none is left alone at the end."""
BY_HOUSE = ("tests/jobs/", "tests/cases/")
"""Files of many long tests that prepare nothing together: each test goes to whichever worker is free."""


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    items.sort(key=lambda item: next((n for n, folder in enumerate(LONG) if item.nodeid.startswith(folder)), len(LONG)))


@pytest.hookimpl(optionalhook=True)
def pytest_xdist_make_scheduler(config, log):
    """Each file's tests on one worker, so that what a file prepares is prepared once."""
    from xdist.scheduler import LoadFileScheduling

    class ByFile(LoadFileScheduling):
        def _split_scope(self, nodeid: str) -> str:
            return nodeid if nodeid.startswith(BY_HOUSE) else super()._split_scope(nodeid)

    config.option.loadscopereorder = False
    return ByFile(config, log)


settings.register_profile("no timed tests", deadline=None)
settings.load_profile("no timed tests")


MOST_READ, MOST_PRICED, MOST_ROWS = 32, 40, 400


def _once(module: object, name: str, key: Callable[..., Hashable], most: int = MOST_PRICED) -> None:
    """A function of a module that works out each answer once, by `key` of what it is given; what comes out is frozen."""
    function, known = getattr(module, name), {}

    @wraps(function)
    def once(*given, **named):
        held = key(*given, **named)
        if held not in known:
            while len(known) >= most:
                del known[next(iter(known))]
            known[held] = given, function(*given, **named)  # with what was given, so that nothing else gets its id
        return known[held][1]

    setattr(module, name, once)


def _each_house_priced_once() -> None:
    """A house that several tests price with the very same tables is priced once, and its ways set side by side once.

    A record that is made again brings tables of its own, so it is priced anew.
    """
    from estimator import pipeline
    from estimator.studies import ways
    from estimator.tables import checked, read

    read.MOST_READ = MOST_READ

    _once(pipeline, "run", lambda job, tables, day, revision=1: (repr(job), id(tables.rows), tables.day, day, revision))
    _once(checked, "read_rows", pickle.dumps, MOST_ROWS)  # the types of its cells too: 1 is not yes
    _once(ways, "ways_of", lambda job, tables: (repr(job), id(tables.rows), tables.day))


_each_house_priced_once()


def pytest_sessionfinish() -> None:
    if "PYTEST_XDIST_WORKER" not in os.environ:
        shutil.rmtree(os.environ["XDG_CACHE_HOME"], ignore_errors=True)


@pytest.fixture
def keeps(monkeypatch: pytest.MonkeyPatch) -> None:
    """Programs started by this test keep what they read where all such tests of this run find it again, as a user's do."""
    monkeypatch.delenv("ESTIMATOR_CACHE")


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
