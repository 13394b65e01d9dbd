"""What every test shares. The checks with an office program run where one is installed (CI installs it)."""

import os
import shutil
import sys
from pathlib import Path

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
