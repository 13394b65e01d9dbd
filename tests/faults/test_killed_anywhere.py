"""Killed at any change of the disk, by whichever command: the next run leaves no temporary file and ends as it would have."""

import os
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest
from typer.testing import CliRunner

from estimator.cli.app import build
from estimator.disk.disk import Disk
from estimator.tables.read import demo_folder

FAILED = 70
ALONE = {"COLUMNS": "100", "ESTIMATOR_SETTINGS": "/nowhere/settings.toml", "ESTIMATOR_TABLES": None}
WRITING: dict[str, tuple[str, ...]] = {
    "signed": ("quote", "job.toml", "--accepted", "D", "--on", "2026-11-20"),
    "done": ("quote", "job.toml", "--done", "--on", "2026-12-05"),
    "paid": ("money", "job.toml", "--paid", "deposit", "--amount", "1000", "--on", "2026-12-01"),
    "books": ("money", "job.toml", "--csv", "books.csv"),
    "hours": ("actuals", "job.toml", "--task", "tunnel dig", "--hours", "36", "--cause", "soil"),
    "workbook": ("tables", "workbook", "prices.xlsx", "--tables", "few"),
    "folder": ("tables", "folder", "mine", "--tables", "few"),
    "order sheet": ("site", "job.toml", "tests", "--out", "sheet.xlsx"),
}
"""What writes a file, each in a folder where the demo is issued; all but the first on a signed job."""


def typed(words: tuple[str, ...]) -> int:
    return CliRunner().invoke(build(list(words)), list(words), env=ALONE).exit_code


def held(folder: Path) -> dict[str, bytes | None]:
    """Every file, unfinished ones too, and every folder, but the locks, which stay and hold nothing."""
    there = (p for p in folder.rglob("*") if p.name != ".lock")
    return {str(p.relative_to(folder)): p.read_bytes() if p.is_file() else None for p in there}


class Killed:
    """Keeps, before each change of the disk, what a run killed there would leave of its folder; two that are the same once."""

    def __init__(self, folder: Path, into: Path) -> None:
        self.folder, self.into, self.number = folder, into, 0
        self.last: dict[str, bytes | None] = {}

    def __call__(self, what: str, path: Path) -> None:
        if (now := held(self.folder)) != self.last:
            self.last, self.number = now, self.number + 1
            shutil.copytree(self.folder, self.into / f"killed-{self.number:03}")


def in_a_child(words: tuple[str, ...], before: Callable[[str, Path], None]) -> int:
    """The exit code of a run that is over and gone when this returns; `before` is called at each change of the disk."""
    child = os.fork()
    if child == 0:
        code = FAILED
        try:
            Disk.__init__.__defaults__ = (before,)
            code = typed(words)
        finally:
            os._exit(code)
    return os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])


@pytest.fixture(scope="module", name="before")
def _before(issued, tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("before")
    issued(folder)
    shutil.copytree(demo_folder(), folder / "few")
    return folder


@pytest.mark.parametrize("name", WRITING)
def test_a_run_killed_anywhere_is_made_good_by_the_next(
    name: str, before: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("ESTIMATOR_CACHE", str(tmp_path / "kept"))  # what was read before is not read at each kill
    whole, of_tables = tmp_path / "whole", name in ("workbook", "folder")  # these two touch no job
    shutil.copytree(before / "few" if of_tables else before, whole / "few" if of_tables else whole)
    monkeypatch.chdir(whole)
    if name != "signed" and not of_tables:
        assert typed(WRITING["signed"]) == 0
    assert in_a_child(WRITING[name], Killed(whole, tmp_path)) == 0
    left = sorted(tmp_path.glob("killed-*"))
    assert len(left) > 3
    for folder in left:
        if held(folder) != held(whole):  # else it had done all it was to do, and who types it again means it twice
            monkeypatch.chdir(folder)
            assert typed(WRITING[name]) in (0, 1)  # 1: the file stands there whole, and is not written over
            assert held(folder) == held(whole)
