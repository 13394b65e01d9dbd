"""What a change order says was found, beside findings: side drains, places, measures, facts of the house; no remark of the crew."""

import shutil
from pathlib import Path

import pytest

from estimator import demo
from estimator.fieldnotes import read_job
from estimator.records.new_notes import new_facts, new_notes, removed_notes


@pytest.fixture(name="job_file")
def _job_file(tmp_path: Path) -> Path:
    for name in demo.FILES:
        shutil.copyfile(Path(demo.__file__).parent / name, tmp_path / name)
    return tmp_path / "job.toml"


def read(job_file: Path):
    job = read_job(job_file).job
    assert job is not None
    return job


def written(job_file: Path, log: str, after: str, new: str):
    """The job with a line typed into a log."""
    path = job_file.with_name(log)
    text = path.read_text("utf-8")
    assert text.count(after) == 1
    path.write_text(text.replace(after, f"{after}\n{new}"), "utf-8")
    return read(job_file)


def test_a_side_drain_is_something_found_and_its_remark_stays_in_the_house(job_file):
    before = read(job_file)
    after = written(
        job_file, "main.txt", "23      room kitchen", "23.2 branch 3in right live proven called laundry ; he lied"
    )
    [said] = map(str, new_notes(before, after))
    assert said.endswith("a side drain of 3 in, laundry.") and said.startswith("main line, ")
    assert "lied" not in said
    assert removed_notes(before, after) == ()
    assert list(map(str, removed_notes(after, before))) == [said]


def test_where_the_ground_over_the_pipe_changes_is_something_found(job_file):
    before = read(job_file)
    after = written(job_file, "yard.txt", "38-52   drive concrete", "53-54   walk concrete")
    assert any("under the walk" in str(said) for said in new_notes(before, after))


def test_a_new_depth_is_said_and_one_taken_out_is_nothing_gone(job_file):
    before = read(job_file)
    after = written(
        job_file,
        "yard.txt",
        "31.6    crack suspected                         ; a shadow at the hub, the water was dirty",
        "34 loc 3'6\" lawn",
    )
    assert [str(said).endswith("how deep the pipe lies there was measured.") for said in new_notes(before, after)] == [
        True
    ]
    assert removed_notes(after, before) == ()


def test_the_same_notes_say_nothing_and_a_fact_of_the_house_is_named(job_file):
    before = read(job_file)
    assert new_notes(before, before) == new_facts(before, before) == ()
    job_file.write_text(job_file.read_text("utf-8").replace('soil = "firm clay"', 'soil = "rock"'), "utf-8")
    [said] = new_facts(before, read(job_file))
    assert str(said) == "Noted otherwise than when you signed: the soil."
