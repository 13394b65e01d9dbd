"""The settings file of whoever runs the tests plays no part in them."""

import shutil
from pathlib import Path

import pytest

SMALL = Path(__file__).parents[1] / "jobs" / "j06-near-small-step"


@pytest.fixture(name="small")
def _small(tmp_path: Path) -> Path:
    """The job file of a small house, for what a house is not the point of: one line, one finding, three options."""
    for name in ("job.toml", "main.txt"):
        shutil.copyfile(SMALL / name, tmp_path / name)
    return tmp_path / "job.toml"


@pytest.fixture(autouse=True)
def _no_settings_of_my_own(monkeypatch, tmp_path_factory):
    monkeypatch.setenv("ESTIMATOR_SETTINGS", str(tmp_path_factory.getbasetemp() / "no-settings.toml"))
    monkeypatch.delenv("ESTIMATOR_TABLES", raising=False)
