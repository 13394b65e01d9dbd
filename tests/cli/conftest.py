"""The settings file of whoever runs the tests plays no part in them."""

import pytest


@pytest.fixture(autouse=True)
def _no_settings_of_my_own(monkeypatch, tmp_path_factory):
    monkeypatch.setenv("ESTIMATOR_SETTINGS", str(tmp_path_factory.getbasetemp() / "no-settings.toml"))
    monkeypatch.delenv("ESTIMATOR_TABLES", raising=False)
