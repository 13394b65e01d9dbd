"""What `options` answers where nothing can be, or has to be, offered."""

from pathlib import Path

from typer.testing import CliRunner

from estimator import demo
from estimator.cli.app import build
from estimator.works.methods import names

JOB = """
job = { number = "1", date = 2026-11-18, prepared_by = "Ines Calloway", demo = true }
customer = { name = "Wren Castellane", site = "417 Larkspur Court" }
house = { floor = "slab", jurisdiction = "demo", soil = "firm clay" }
line = [ { name = "yard", size = "4 in", pipe = "PVC", zero = "access", log = "yard.txt" } ]
"""
LOG = "pass front cleanout to street, with flow, riser 1ft\n1 yard lawn\n{finding}\n30 stop reached main\n"


def _options(folder: Path, finding: str):
    (folder / "job.toml").write_text(JOB)
    (folder / "yard.txt").write_text(LOG.format(finding=finding))
    typed = ["options", str(folder / "job.toml"), "--why"]
    return CliRunner().invoke(build(typed), typed, env={"COLUMNS": "80"})


def test_a_house_with_nothing_to_repair_is_told_so_and_is_no_failure(tmp_path):
    result = _options(tmp_path, "10 joint")
    assert result.exit_code == 0, result.output
    assert "There is nothing to repair." in result.stdout


def test_where_every_way_is_blocked_each_is_named_with_its_rule(tmp_path):
    """A foreign line through the bore may be gas: nobody works there until its owner has cleared it (common practice)."""
    result = _options(tmp_path, "12 utility gas")
    assert result.exit_code == 1
    assert "No way of repair can be offered" in result.stdout
    assert "911" in result.stdout
    ways, reason = " ".join(result.stdout.split("Every way, place by place")[1].split()).split(": blocks: ")
    assert reason.startswith("Utility in the bore")
    for method in names():
        assert method in ways or method == "abandon"


DEMO = Path(demo.__file__).parent / "job.toml"


def _of_the_demo(*words: str):
    typed = ["options", str(DEMO), *words]
    return CliRunner().invoke(build(typed), typed, env={"COLUMNS": "80"})


def test_one_option_can_be_drawn_alone():
    shown = _of_the_demo("--option", "d").stdout
    assert "─D break-through" in shown
    assert "─A " not in shown
    assert "─C " not in shown


def test_a_letter_that_no_option_has_is_told_with_those_there_are():
    result = _of_the_demo("--option", "Q")
    assert (result.exit_code, result.stdout) == (1, "")
    assert "A, B, C" in result.stderr
