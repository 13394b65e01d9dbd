"""Nothing that stands in a file leads the program to another file, a link, a pipe or a command."""

import os
from dataclasses import replace
from pathlib import Path
from time import process_time

import pytest

from estimator.disk.whole import UNFINISHED, fresh, sweep, write_folder, write_whole
from estimator.fieldnotes.syntax import parse
from estimator.model.problem import Problem
from estimator.records.recorded_text import sentence
from estimator.wording.say import say


def test_a_format_string_in_a_record_is_only_text() -> None:
    held = {"text": "{n:>9999999999} and {n}", "words": [["n", "3"]]}
    assert str(sentence(held)) == "{n:>9999999999} and 3"
    assert say(sentence(held), "es_US") == "{n:>9999999999} and 3"


def test_a_link_stays_a_link_and_what_it_points_at_is_written(tmp_path: Path) -> None:
    real, link = tmp_path / "real.toml", tmp_path / "link.toml"
    real.write_text("old")
    link.symlink_to(real)
    write_whole(link, b"new")
    assert link.is_symlink()
    assert real.read_text() == "new"


def test_a_link_that_waits_at_a_temporary_name_is_never_followed(tmp_path: Path) -> None:
    victim = tmp_path / "victim"
    victim.write_text("mine")
    for name in (".job.toml.start-tmp", ".job.toml-tmp", f".job.toml.{os.getpid()}-tmp"):
        (tmp_path / name).symlink_to(victim)
    write_whole(tmp_path / "job.toml", b"new")
    assert victim.read_text() == "mine"
    assert fresh(tmp_path / "a") != fresh(tmp_path / "a")


def test_a_new_file_never_takes_the_place_of_one_that_is_there(tmp_path: Path) -> None:
    (tmp_path / "a.xlsx").write_text("theirs")
    with pytest.raises(FileExistsError):
        write_whole(tmp_path / "a.xlsx", b"ours", new=True)
    assert (tmp_path / "a.xlsx").read_text() == "theirs"
    assert [p.name for p in tmp_path.iterdir()] == ["a.xlsx"]


def test_a_folder_that_cannot_be_written_leaves_nothing(tmp_path: Path) -> None:
    with pytest.raises(OSError, match=r".+"):
        write_folder(tmp_path / "new", {"a.txt": b"x", "a.txt/b.txt": b"y"})
    assert not list(tmp_path.iterdir())


def test_the_sweep_takes_what_ended_runs_left_and_nothing_else(tmp_path: Path) -> None:
    pid = os.fork()
    if pid == 0:
        os._exit(0)
    os.waitpid(pid, 0)
    left = tmp_path / f".estimator-{pid}-00ff00ff-tmp"
    left.mkdir()
    (left / "half.json").write_text("{")
    living = fresh(tmp_path / "x")
    living.write_text("being written")
    link = tmp_path / f".estimator-{pid}-11ff00ff-tmp"
    link.symlink_to(tmp_path)
    sweep(tmp_path)
    assert sorted(p.name for p in tmp_path.iterdir()) == sorted([living.name, link.name])
    assert UNFINISHED.fullmatch(living.name)


@pytest.mark.parametrize(
    "text", ["a." * 20_000 + "b = 1", "x = " + "[" * 30_000, "x = " + "{a=" * 20_000, "[" + "a." * 20_000 + "b]"]
)
def test_deep_toml_is_refused_at_once(text: str) -> None:
    started = process_time()
    assert isinstance(parse(text, "job.toml"), Problem)
    assert process_time() - started < 1


def test_keys_of_a_job_are_still_read() -> None:
    found = parse('[[line]]\nname = "a"\n[house]\nfixtures = { sink = 1 }\na.b.c = 1\n', "job.toml")
    assert not isinstance(found, Problem)
    assert replace(found, file="x").data["house"]["fixtures"] == {"sink": 1}
