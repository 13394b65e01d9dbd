"""`estimator rules`: every rule can be looked up by its name, with the firm's own numbers."""

import json
import re

import pytest
from typer.testing import CliRunner

from estimator.cli.app import build
from estimator.cli.rule_book import looked_up
from estimator.cli.rules_page import page
from estimator.diagnosis.diagnose import READINGS
from estimator.model.judgement import Effect
from estimator.scopes.rules import RULES
from tests.made_up.stretch import demo_tables


def _said(*words: str) -> str:
    typed = ["rules", *words]
    result = CliRunner().invoke(build(typed), typed, env={"COLUMNS": "80"})
    assert result.exit_code == 0, result.output
    return result.stdout


def test_all_rules_stand_in_the_list_by_id() -> None:
    ids = {entry["id"] for entry in json.loads(_said("--json"))}
    assert ids == {rule.id for rule in RULES} | {reading.id for reading in READINGS}
    assert max(map(len, _said().splitlines())) <= 80


def test_one_rule_is_told_whole_with_its_settings_and_examples() -> None:
    said = " ".join(_said("lining-keeps-the-grade").split())
    assert "sag_counts_percent = 15 percent" in said
    assert "source:" in said and "why:" in said and "examples" in said
    assert "does not fix" in said


def test_a_rule_is_found_by_its_name_in_any_case_and_shown_without_numbers() -> None:
    assert _said("Tendons-In-The-Slab") == _said("tendons-in-the-slab")
    assert not re.search(r"\b[RD]\d\d\b", _said() + _said("--json") + page())


@pytest.mark.parametrize("rule", [r for r in RULES if not r.found_by_takeoff], ids=lambda r: r.id)
def test_every_rule_says_what_it_may_answer_and_shows_an_example(rule) -> None:
    (entry,) = (e for e in looked_up(rule.id, demo_tables()) if e.kind == "rule")
    assert set(entry.effects) and set(entry.effects) <= {str(e) for e in Effect}
    assert entry.examples
    assert [key for key, _, _ in entry.settings] == list(dict.fromkeys(rule.reads))


def test_the_settings_shown_are_those_of_the_tables_given() -> None:
    tables = demo_tables().with_settings({"sag_counts_percent": "22"})
    (entry,) = looked_up("lining-keeps-the-grade", tables)
    assert ("sag_counts_percent", "22", "percent") in entry.settings
