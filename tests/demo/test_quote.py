"""The demo runs the whole way: options that differ, lines that add up, words without gaps, files where they are said to be."""

import time
from decimal import Decimal
from pathlib import Path

import pytest
from typer.testing import CliRunner

from estimator import demo
from estimator.cli.app import build
from estimator.cli.priced_job import priced

JOB = Path(demo.__file__).parent / "job.toml"


@pytest.fixture(scope="module", name="quote")
def _quote():
    return priced(JOB, None).quote


def test_the_options_differ_in_their_way_and_their_price(quote):
    ways = {frozenset(r.method for r in option.scope.repairs) for option in quote.options}
    totals = {option.price.total for option in quote.options}
    assert len(quote.options) >= 3
    assert len(ways) == len(totals) == len(quote.options)
    used = {method for way in ways for method in way}
    assert {"tunnel", "break-through", "reline", "reroute", "yard spot"} <= used


def test_some_options_are_firm_and_each_that_waits_says_why(quote):
    """Lining a 2 in drain waits for the building department (IPC 717, from memory); a belly without levels waits too."""
    assert any(option.fixed for option in quote.options)
    assert any(not option.fixed for option in quote.options)
    assert all(option.fixed or option.not_fixed_because for option in quote.options)


def test_the_lines_of_every_option_sum_to_its_total(quote):
    for option in quote.options:
        assert sum((line.amount for line in option.price.lines), Decimal(0)) == option.price.total
        assert all(line.amount == line.unit_price * line.quantity for line in option.price.lines)


def test_no_line_has_a_gap_left_in_its_words(quote):
    texts = [text for option in quote.options for line in option.price.lines for text in (line.text_en, line.text_es)]
    assert [text for text in texts if "{" in text] == []
    assert any("4-inch" in text for text in texts)
    assert any("2-inch" in text for text in texts)


def test_the_demo_writes_its_files_and_names_every_one_of_them(tmp_path):
    folder = tmp_path / "demo"
    result = CliRunner().invoke(build(["demo"]), ["demo", str(folder)], env={"COLUMNS": "300"})
    assert result.exit_code == 0, result.output
    written = [p for p in (folder / "job").rglob("*") if p.is_file() and p.name != ".lock"]
    assert {p.parent.name for p in written} == {"to send", "internal"}
    assert all(str(p) in result.stdout for p in written)
    assert [p.suffix for p in written].count(".json") == 1
    assert len([p for p in written if p.parent.name == "to send"]) == 7  # three papers in two languages and a message
    for words in ("check", "options", "compare", "explain"):
        assert f"estimator {words} {folder / 'job.toml'}" in result.stdout


def test_what_the_demo_tells_to_try_works(tmp_path):
    folder = tmp_path / "demo"
    runner = CliRunner()
    runner.invoke(build(["demo"]), ["demo", str(folder)])
    for words in (["check"], ["options", "--why"], ["compare", "--line", "main"], ["explain", "A1"]):
        typed = [words[0], str(folder / "job.toml"), *words[1:]]
        assert runner.invoke(build(typed), typed).exit_code == 0


def test_the_demo_takes_seconds_not_minutes(tmp_path):
    begun = time.process_time()
    CliRunner().invoke(build(["demo"]), ["demo", str(tmp_path / "demo")])
    assert time.process_time() - begun < 20
