"""Every view in Spanish: no label of the program is left in English, days are written as Spanish writes them."""

import re
from pathlib import Path

import pytest
from typer.testing import CliRunner

from estimator import demo
from estimator.cli.app import build
from estimator.cli.views.vocabulary import known, term
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


def test_every_word_of_the_notes_on_the_list_is_said_otherwise_or_alike_on_purpose():
    """Words that both languages write the same way."""
    assert {word for word in known() if term(word, "es_US") == word} == {"gas", "material", "total"}
