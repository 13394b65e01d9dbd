"""Every size of pipe that notes may state is priced or refused in words, never a fault."""

import re
import shutil
from pathlib import Path

import pytest
from typer.testing import CliRunner

from estimator import demo
from estimator.cli.app import build


@pytest.mark.parametrize("size", ["10 in", "24 in"])
def test_a_pipe_over_eight_inches_is_no_fault(tmp_path, size):
    house = tmp_path / "house"
    shutil.copytree(Path(demo.__file__).parent, house)
    job = house / "job.toml"
    job.write_text(re.sub(r'(?m)^size = ".*"', f'size = "{size}"', job.read_text(encoding="utf-8")), encoding="utf-8")
    words = ["options", str(job)]
    run = CliRunner().invoke(build(words), words)
    assert run.exit_code in (0, 1), run.output
    assert "mistake of its own" not in run.output
