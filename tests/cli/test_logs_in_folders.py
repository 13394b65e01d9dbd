"""A job whose logs and pictures lie in folders below it: quoted, made again, asked what if, listed; nothing above it is read."""

import base64
import shutil
from datetime import date
from pathlib import Path

import pytest
from typer.testing import CliRunner, Result

from estimator import demo
from estimator.cli.app import build
from estimator.records.reprice import fingerprint
from tests.tables.workbench import demo as demo_tables
from tests.tables.workbench import edited

GREY = base64.b64decode("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNgAAAAAgABSK+kcQAAAABJRU5ErkJggg==")


def run(*words: object) -> Result:
    typed = [*map(str, words)]
    return CliRunner().invoke(build(typed), typed)


@pytest.fixture(name="job")
def _job(tmp_path: Path) -> Path:
    """The demo, its two logs of one name in two folders."""
    folder = tmp_path / "larkspur"
    shutil.copytree(Path(demo.__file__).parent, folder, ignore=shutil.ignore_patterns("*.py", "__pycache__"))
    job = folder / "job.toml"
    text = job.read_text("utf-8")
    for old, new in (("main.txt", "first/main.txt"), ("yard.txt", "second/main.txt")):
        assert f'"{old}"' in text
        text = text.replace(f'"{old}"', f'"{new}"')
        (folder / new).parent.mkdir()
        shutil.move(folder / old, folder / new)
    job.write_text(text, "utf-8")
    return job


def test_such_a_job_is_quoted_and_made_again_byte_for_byte(job):
    assert run("quote", job, "--language", "en_US").exit_code == 0
    again = run("quote", job, "--again", "r1")
    assert again.exit_code == 0
    assert "byte for byte" in again.stdout


def test_what_if_finds_its_logs(job):
    result = run("options", job, "--set", "soil=rock")
    assert "file/missing" not in result.stderr
    assert result.exit_code == 0


def test_a_log_in_a_folder_counts_among_what_decides_the_row_of_a_job(job):
    before = fingerprint(job, demo_tables(), date(2026, 11, 25))
    log = job.parent / "second" / "main.txt"
    log.write_text(log.read_text("utf-8") + "\n", "utf-8")
    assert fingerprint(job, demo_tables(), date(2026, 11, 25)) != before


@pytest.mark.parametrize(
    "name", ["../main.txt", "first/../../main.txt", "/tmp/main.txt", "C:/main.txt", "..\\\\main.txt"]
)
def test_a_log_above_the_job_is_not_read(job, name):
    (job.parent.parent / "main.txt").write_text("0 co\n40 main\n")
    job.write_text(job.read_text("utf-8").replace("first/main.txt", name), "utf-8")
    result = run("quote", job)
    assert result.exit_code == 1
    assert "(file/outside)" in result.stderr


@pytest.mark.parametrize(("name", "shown"), [("art/logo.png", True), ("../logo.png", False)])
def test_the_logo_may_lie_in_a_folder_below_the_job_and_nowhere_else(job, tmp_path, name, shown):
    tables = edited(tmp_path / "tables", "settings.csv", "logo_file,,text", f"logo_file,{name},text")
    path = job.parent / name
    path.parent.mkdir(exist_ok=True)
    path.write_bytes(GREY)
    result = run("quote", job, "--tables", tables, "--language", "en_US")
    assert result.exit_code == 0
    assert (job.with_suffix("") / "r1" / "internal" / "pictures" / "logo").is_file() == shown
    assert ("cli/no-picture" in result.stderr) != shown
