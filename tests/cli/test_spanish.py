"""Every view in Spanish: no label of the program is left in English, days are written as Spanish writes them."""

import re
import shutil
from pathlib import Path

import pytest
from typer.testing import CliRunner

from estimator import demo
from estimator.cli.app import build
from estimator.cli.views.vocabulary import formula, known, term
from estimator.wording.say import catalog
from estimator.wording.sweep import texts

JOB = str(Path(demo.__file__).parent / "job.toml")
SHORTEST = 8
VIEWS = (
    ("check", JOB),
    ("options", JOB, "--why"),
    ("options", JOB, "--set", "soil=rock"),
    ("compare", JOB, "--line", "main"),
    ("explain", JOB, "A5"),
    ("options", JOB, "--range"),
    ("unknowns", JOB),
    ("rules",),
    ("rules", "lining-keeps-the-grade"),
    ("tables", "check"),
)


def _said(*words: str, columns: str = "120") -> str:
    typed = [*words, "--language", "es_US"]
    result = CliRunner().invoke(build(typed), typed, env={"COLUMNS": columns})
    assert result.exit_code == 0, result.output
    return result.stdout


def _labels() -> list[str]:
    """Texts of the views long enough to be told from a name, that Spanish says otherwise."""
    own = [text for text, file in texts().items() if file.startswith("cli/views/") and "{" not in text]
    return [t for t in own if len(t) >= SHORTEST and catalog("es_US").gettext(t) != t]


@pytest.mark.parametrize("words", VIEWS, ids=lambda words: " ".join(words).replace(JOB, "job"))
def test_no_label_is_left_in_english(words):
    """A label begins a row, or a column of a table."""
    shown = _said(*words)
    left = [label for label in _labels() if re.search(rf"(?:^ *|  ){re.escape(label)}(?::|$|  )", shown, re.MULTILINE)]
    assert left == []


def test_days_are_written_as_spanish_writes_them():
    assert "18 nov 2026" in _said("options", JOB)
    assert "18 nov 2026" in _said("check", JOB)


@pytest.mark.parametrize("columns", [60, 80, 120])
def test_no_view_is_wider_than_the_window_in_spanish(columns):
    for words in VIEWS:
        assert max(map(len, _said(*words, columns=str(columns)).splitlines())) <= columns


def test_a_job_s_money_and_hours_are_told_in_spanish(tmp_path: Path) -> None:
    """After the signature too: what is owed, with its days, and hours by task and cause."""
    for name in demo.FILES:
        shutil.copyfile(Path(JOB).parent / name, tmp_path / name)
    job = str(tmp_path / "job.toml")
    for words in (("quote", job), ("quote", job, "--accepted", "A", "--on", "2026-11-20")):
        assert CliRunner().invoke(build(words), words).exit_code == 0
    money = _said("money", job, "--paid", "deposit", "--amount", "100", "--on", "2026-11-21")
    assert "depósito" in money and "20 nov 2026" in money and "Todavía se deben" in money
    hours = _said("actuals", job, "--task", "camera pass", "--hours", "3", "--cause", "soil")
    assert "pasada de cámara" in hours and "suelo: " in hours


def test_a_formula_put_together_of_several_is_told_by_its_parts() -> None:
    assert formula("one a side drain; plus cubic ft / 27", "es_US") == "uno por ramal; más pies cúbicos / 27"
    evenly = formula("length x width x depth, upright sides, depth changing evenly between readings", "es_US")
    assert evenly.startswith("largo x ancho x profundidad, paredes derechas, con la profundidad")
    assert formula("nobody's own formula; x", "es_US") == "nobody's own formula; x"


def test_every_formula_on_the_demo_s_lines_has_its_spanish() -> None:
    """Whatever the takeoff writes down there, none is left as it stands."""
    from estimator.cli.priced_job import priced

    quote = priced(Path(JOB), None, None, None).quote
    written = {q.formula for o in quote.options for t in o.takeoffs for q in t.quantities if q.formula}
    assert [text for text in sorted(written) if formula(text, "es_US") == text and any(c.isalpha() for c in text)] == []


def test_every_word_of_the_notes_on_the_list_is_said_otherwise_or_alike_on_purpose():
    """Words that both languages write the same way."""
    assert {word for word in known() if term(word, "es_US") == word} == {"gas", "material", "total"}
