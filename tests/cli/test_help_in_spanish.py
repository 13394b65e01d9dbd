"""Help in the reader's language: that of --language, else of the settings file."""

import pytest
from typer.testing import CliRunner

from estimator.cli.app import build
from estimator.cli.command_list import COMMANDS

ENGLISH = (
    "Usage:",
    "Options:",
    "Commands:",
    "Arguments:",
    "Show this message",
    "[required]",
    "Example:",
    " the ",
    " with ",
)


def helped(*words: str) -> str:
    return CliRunner().invoke(build(words), list(words), prog_name="estimator", env={"COLUMNS": "80"}).output


@pytest.fixture
def spanish(tmp_path, monkeypatch):
    settings = tmp_path / "settings.toml"
    settings.write_text('language = "es_US"\n', encoding="utf-8")
    monkeypatch.setenv("ESTIMATOR_SETTINGS", str(settings))


@pytest.mark.usefixtures("spanish")
@pytest.mark.parametrize("entry", COMMANDS, ids=lambda entry: f"{entry.group} {entry.name}")
def test_no_english_is_left_in_the_help_of_a_command(entry):
    words = [word for word in (entry.group, entry.name) if word]
    said = helped(*words, "--help")
    assert said.startswith("Uso: estimator")
    assert "Ejemplo:" in said
    assert [word for word in ENGLISH if word in said] == []
    assert max(map(len, said.splitlines())) <= 80


@pytest.mark.usefixtures("spanish")
def test_the_overview_is_in_the_language_of_the_settings_file():
    said = helped("--help")
    assert "Una entrevista que escribe" in said
    assert [word for word in ENGLISH if word in said] == []


def test_a_language_on_the_command_line_stands_over_english():
    assert "Seguir con un archivo" in helped("start", "--language=es_US", "--help")
    assert "Seguir con un archivo" in helped("start", "--language", "es_US", "--help")
    assert "Go on with a job file" in helped("start", "--help")
