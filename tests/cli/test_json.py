"""Every answer can be had as JSON, with the same figures, and nothing else on the standard output."""

import json
import shutil
from pathlib import Path

import pytest
from typer.testing import CliRunner

from estimator import demo
from estimator.cli.app import build

JOB = Path(demo.__file__).parent / "job.toml"


def _json(*words: object):
    typed = [*map(str, words), "--json"]
    result = CliRunner().invoke(build(typed), typed)
    assert result.exit_code == 0, result.output
    return json.loads(result.stdout)


def test_check_gives_job_diagnosis_and_problems():
    found = _json("check", JOB)
    assert set(found) == {"job", "diagnosis", "problems"}
    assert [line["name"] for line in found["job"]["lines"]] == ["main", "yard", "kitchen"]
    assert all(need["line"] for need in found["diagnosis"]["needs"])


def test_options_give_totals_as_text_so_that_no_cent_is_lost():
    totals = [option["price"]["total"] for option in _json("options", JOB)["options"]]
    assert all(isinstance(total, str) and total.split(".")[1] == "00" for total in totals)


def test_explain_gives_the_line_and_its_option():
    found = _json("explain", JOB, "A1")
    assert found["option"]["letter"] == "A"
    assert found["line"]["amount"]


def test_compare_gives_columns_and_turns():
    found = _json("compare", JOB, "--line", "main")
    assert {column["method"] for column in found["comparison"]["columns"]} >= {"tunnel", "break-through"}
    assert found["break_even"]


@pytest.mark.parametrize(
    ("words", "nothing"),
    [(("tables", "check"), []), (("tables", "changes", "price_tables"), {"changes": [], "jobs": []})],
)
def test_tables_without_mistakes_or_differences_give_empty_lists(words, nothing, monkeypatch):
    monkeypatch.chdir(Path(__file__).parents[2])
    assert _json(*words) == nothing


def test_jobs_gives_one_record_a_job(tmp_path):
    for name in demo.FILES:
        shutil.copyfile(JOB.parent / name, tmp_path / name)
    (found,) = _json("jobs", tmp_path)
    assert (found["state"], found["job_file"]) == ("ready", str(tmp_path / "job.toml"))
