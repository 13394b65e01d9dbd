"""What every test shares. The checks with an office program run where one is installed (CI installs it)."""

import shutil

collect_ignore = [] if shutil.which("soffice") else ["engine"]


def pytest_report_header() -> str:
    if collect_ignore:
        return "office program: none on this machine, so tests/engine is left out (CI runs it)"
    return "office program: found, so tests/engine runs too"
