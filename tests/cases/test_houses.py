"""Every house of tests/cases/houses by its judge, the program called in this process instead of started anew."""

import importlib.util
import os
import shutil
import traceback
from pathlib import Path
from types import ModuleType

import pytest
from typer.testing import CliRunner

from estimator.cli.app import build

HOUSES = Path(__file__).parent / "houses"

NOT_YET_GREEN: frozenset[str] = frozenset()
"""Houses that still fail. The list only shrinks: one that turns green and stays here fails the test."""


def _judge() -> ModuleType:
    spec = importlib.util.spec_from_file_location("house_judge", HOUSES / "judge.py")
    assert spec is not None and spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


JUDGE = _judge()


def program(args: tuple[str, ...], folder: Path) -> tuple[int, str, str]:
    """What the program says in this folder: exit code, standard output, error output."""
    before = Path.cwd()
    os.chdir(folder)
    try:
        done = CliRunner().invoke(build(list(args)), list(args), env={"COLUMNS": "200"})
    finally:
        os.chdir(before)
    fault = done.exc_info if done.exception is not None and not isinstance(done.exception, SystemExit) else None
    told = "".join(traceback.format_exception(*fault)) if fault else ""
    return done.exit_code, done.stdout, done.stderr + told


def houses() -> list[object]:
    names = sorted(f.parent.name for f in HOUSES.glob("*/expect.toml"))
    unknown = NOT_YET_GREEN - set(names)
    assert not unknown, f"no such house: {sorted(unknown)}"
    red = pytest.mark.xfail(strict=True, reason="not yet green")
    return [pytest.param(name, marks=red if name in NOT_YET_GREEN else ()) for name in names]


@pytest.mark.parametrize("name", houses())
def test_a_house_is_decided_as_the_trade_would(name: str) -> None:
    why, rows = JUDGE.judge_case(HOUSES / name, program)
    counted = [(what, told) for what, told, debatable in rows if not debatable or what.endswith(" is taken")]
    wrong = [f"{what}: {told}" for what, told in counted if told is not None]
    assert not wrong, "\n".join([*wrong, why])


@pytest.mark.parametrize("expected", [False, True])
def test_a_house_whose_job_is_refused_is_shown_unless_that_is_expected(tmp_path: Path, expected: bool) -> None:
    house = tmp_path / "refused"
    shutil.copytree(HOUSES / "pump-line-with-a-wet-lawn", house)
    with (house / "main.txt").open("a", encoding="utf-8") as log:
        log.write("\n12 barbecue\n")
    (house / "expect.toml").write_text(
        "refused = true\n" if expected else 'why = "a job that is taken"\n', encoding="utf-8"
    )
    _, rows = JUDGE.judge_case(house, program)
    assert [what for what, told, _ in rows if told is not None] == ([] if expected else ["job.toml is taken"])
