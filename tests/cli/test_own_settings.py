"""The user's settings file: where it lies, what it may hold, and what goes before it."""

import sys
from pathlib import Path

import pytest
from typer.testing import CliRunner

from estimator import demo
from estimator.cli.app import build
from estimator.cli.own_settings import OwnSettings, own_settings, settings_path
from estimator.cli.price_tables import readable_tables
from estimator.model.problem import CannotGoOn
from estimator.tables.read import demo_folder
from tests.tables.workbench import DAY, edited

JOB = Path(demo.__file__).parent / "job.toml"


@pytest.fixture(name="hold")
def _hold(monkeypatch, tmp_path):
    """Writes the settings file."""
    path = tmp_path / "mine" / "settings.toml"
    path.parent.mkdir()
    monkeypatch.setenv("ESTIMATOR_SETTINGS", str(path))
    return lambda text: path.write_text(text, encoding="utf-8")


def test_without_a_file_the_demo_and_english_stand():
    assert own_settings() == OwnSettings(None, "en_US")


def test_it_lies_where_the_system_keeps_such_files(monkeypatch, tmp_path):
    monkeypatch.delenv("ESTIMATOR_SETTINGS")
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path))
    path = settings_path()
    assert path.parts[-2:] == ("estimator", "settings.toml")
    if sys.platform.startswith("linux"):  # the XDG base directory specification
        assert path == tmp_path / "estimator" / "settings.toml"


def test_it_names_the_tables_and_the_language(hold, tmp_path):
    hold('tables = "/prices"\nlanguage = "es_US"\n')
    assert own_settings() == OwnSettings(Path("/prices"), "es_US")


def test_tables_may_lie_beside_it_or_in_the_users_own_folder(hold, tmp_path):
    hold('tables = "prices"\n')
    assert own_settings().tables == tmp_path / "mine" / "prices"
    hold('tables = "~/prices"\n')
    assert own_settings().tables == Path.home() / "prices"


def _with_step(folder: Path, dollars: int) -> Path:
    """The demo's tables with another step of the price."""
    folder.mkdir()
    return edited(folder, "settings.csv", "round_price_to,25,", f"round_price_to,{dollars},")


def test_the_option_goes_before_the_variable_and_the_variable_before_the_file(hold, monkeypatch, tmp_path):
    """Told apart by the step of the price that each holds."""
    steps = {name: _with_step(tmp_path / name, step) for name, step in (("a", 5), ("b", 10), ("c", 50))}
    assert readable_tables(DAY, None).number("round_price_to") == 25
    hold(f"tables = '{steps['c']}'\n")
    assert readable_tables(DAY, None).number("round_price_to") == 50
    monkeypatch.setenv("ESTIMATOR_TABLES", str(steps["b"]))
    assert readable_tables(DAY, None).number("round_price_to") == 10
    assert readable_tables(DAY, steps["a"]).number("round_price_to") == 5
    assert readable_tables(DAY, demo_folder()).number("round_price_to") == 25


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("tables =\nx", "line 1"),
        ('prices = "here"\n', "prices is no setting"),
        ("tables = 3\n", "tables is no text in quotes"),
        ('tables = " "\n', "tables is no text in quotes"),
        ('language = "fr_FR"\n', "there are no texts in fr_FR"),
    ],
)
def test_a_file_that_cannot_be_used_is_told_in_plain_words(hold, text, said):
    hold(text)
    with pytest.raises(CannotGoOn, match=said):
        own_settings()


def _checked(*words: str):
    typed = ["check", str(JOB), *words]
    return CliRunner().invoke(build(typed), typed)


def test_its_language_is_spoken_unless_another_is_typed(hold):
    hold('language = "es_US"\n')
    assert "Lo que hay que reparar" in _checked().stdout
    assert "What must be repaired" in _checked("--language", "en_US").stdout


def test_a_broken_file_stops_the_command_with_one(hold):
    hold("tables")
    result = _checked()
    assert (result.exit_code, result.stdout) == (1, "")
    assert "(cli/own-settings)" in result.stderr
