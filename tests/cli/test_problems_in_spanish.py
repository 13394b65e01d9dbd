"""What is wrong, and the last words of a command, in the reader's language: that of the command, else of the settings file."""

import shutil
from pathlib import Path

import pytest
from typer.testing import CliRunner, Result

from estimator import demo
from estimator.cli.app import build
from estimator.tables.read import demo_folder

DEMO = Path(demo.__file__).parent


def said(*words: str) -> Result:
    return CliRunner().invoke(build(words), list(words), env={"COLUMNS": "400"})


@pytest.fixture
def job(tmp_path):
    """A copy of the demo's notes with a misspelt key and a finding without its amount."""
    folder = tmp_path / "job"
    shutil.copytree(DEMO, folder, ignore=shutil.ignore_patterns("*.py", "__pycache__"))
    file = folder / "job.toml"
    file.write_text(file.read_text("utf-8").replace("slab_thickness", "slab_thicknes", 1), "utf-8")
    return file


@pytest.fixture
def spanish(tmp_path, monkeypatch):
    """A settings file that asks for Spanish."""
    (tmp_path / "settings.toml").write_text('language = "es_US"\n', "utf-8")
    monkeypatch.setenv("ESTIMATOR_SETTINGS", str(tmp_path / "settings.toml"))


KEY = "aquí no existe la clave house.slab_thicknes. ¿Quiso decir “slab_thickness”?"


@pytest.mark.parametrize("command", ["check", "options", "compare", "unknowns"])
def test_a_mistake_in_the_notes_is_told_in_the_language_of_the_command(command, job):
    told = said(command, str(job), "--language", "es_US")
    assert told.exit_code == 1
    assert KEY in told.stderr and "(job/unknown-key)" in told.stderr


def test_without_a_word_about_the_language_it_is_english(job):
    told = said("check", str(job))
    assert "there is no key house.slab_thicknes here. Did you mean “slab_thickness”?" in told.stderr


def test_commands_that_take_no_language_of_the_reader_follow_the_settings_file(job, spanish):
    assert KEY in said("quote", str(job)).stderr
    there = said("demo", str(job.parent)).stderr
    assert "la carpeta ya existe y tiene algo." in there


def test_the_language_of_the_command_goes_before_that_of_the_settings_file(job, spanish):
    assert "there is no key" in said("check", str(job), "--language", "en_US").stderr


def test_tables_are_checked_in_spanish(tmp_path):
    shutil.copytree(demo_folder(), tmp_path / "tables")
    roles = tmp_path / "tables" / "roles.csv"
    head, first, *rest = roles.read_text("utf-8").splitlines()
    cells = first.split(",")
    roles.write_text("\n".join([head, ",".join([cells[0], "call her", *cells[2:]]), *rest]) + "\n", "utf-8")
    told = said("tables", "check", str(tmp_path / "tables"), "--language", "es_US")
    assert told.exit_code == 1
    assert "[roles] fila 2, wage: wage es “call her”." in told.stderr
    assert "Escriba un número como 24.50" in told.stderr
    assert "Con estas tablas no se puede poner precio a nada." in told.stdout


def test_money_and_the_machine_speak_spanish_too(job, tmp_path):
    none = " ".join(said("money", str(job), "--language", "es_US").stderr.split())
    assert "este trabajo no tiene la revisión r1. Escriba la primera con `estimator quote`." in none
    assert said("jobs", str(tmp_path / "nowhere"), "--language", "es_US").stderr.strip().endswith("no está ahí.")


def test_problems_are_counted_in_spanish(job):
    job.write_text(job.read_text("utf-8").replace("jurisdiction", "jurisdicton", 1), "utf-8")
    assert "errores" in said("check", str(job), "--language", "es_US").stderr.splitlines()[-1]


def test_json_stays_english_for_other_programs(job):
    told = said("check", str(job), "--json", "--language", "es_US")
    assert "there is no key house.slab_thicknes here." in told.stdout


def test_a_settings_file_that_cannot_be_read_is_told_in_english(job, spanish, tmp_path):
    (tmp_path / "settings.toml").write_text("language = es_US\n", "utf-8")
    told = said("quote", str(job)).stderr + said("check", str(job)).stderr
    assert "your settings file cannot be used" in " ".join(told.split())
