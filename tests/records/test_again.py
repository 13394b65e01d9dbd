"""Files made again from the record alone, acceptances written once, and what moved between two revisions."""

import json
import subprocess
import sys
from dataclasses import asdict, replace
from datetime import date

import pytest

from estimator.model.problem import CannotGoOn
from estimator.records.accepted import accept, accepted
from estimator.records.changes import Change, changes
from estimator.records.finished import finished
from estimator.records.issue import issue
from estimator.records.lock import locked
from estimator.records.reissue import reissue
from estimator.records.revisions import named, newest


def test_files_made_again_have_the_same_bytes_and_the_issued_ones_stay(tmp_path, quote, inputs, papers):
    issued = issue(tmp_path / "job", quote, inputs, papers(quote))
    before = {p: p.read_bytes() for p in issued.files}

    def remake(job_file, held, number):
        assert job_file.read_text() == inputs.texts["job.toml"]
        assert (job_file.parent / "main.txt").read_text() == inputs.texts["main.txt"]
        assert held.tables.text("round_to") == "25"
        return papers(quote)(number)

    made = reissue(newest(tmp_path / "job"), remake)
    assert made.problems == ()
    assert made.folder.name == "r1 again"
    for path in made.files:
        assert path.read_bytes() == (issued.folder / path.relative_to(made.folder)).read_bytes()
    assert {p: p.read_bytes() for p in issued.files} == before


def test_made_again_twice_goes_into_another_folder(tmp_path, quote, inputs, papers):
    issue(tmp_path / "job", quote, inputs, papers(quote))
    folders = [reissue(newest(tmp_path / "job"), lambda *_: papers(quote)(1)).folder.name for _ in range(3)]
    assert folders == ["r1 again", "r1 again 2", "r1 again 3"]


def test_notes_and_pictures_in_folders_lie_there_again(tmp_path, quote, inputs, papers):
    """Two logs of one name in two folders; a picture in a third."""
    texts = {"job.toml": "[job]\n", "first/main.txt": "12 hole 3in\n", "second/main.txt": "15 roots 40%\n"}
    held = replace(inputs, texts=texts, pictures={"photos/hole.png": b"grey"})

    def make(number):
        made = papers(quote)(number)
        return replace(made, files={**made.files, "internal/pictures/photos/hole.png": b"grey"})

    issue(tmp_path / "job", quote, held, make)

    def remake(job_file, again_from, number):
        assert {name: (job_file.parent / name).read_text() for name in texts} == texts
        assert again_from.pictures == {"photos/hole.png": b"grey"}
        return make(number)

    assert reissue(newest(tmp_path / "job"), remake).problems == ()


def test_a_picture_that_is_gone_is_named(tmp_path, quote, inputs, papers):
    issue(tmp_path / "job", quote, replace(inputs, pictures={"hole.png": b"grey"}), papers(quote))
    with pytest.raises(CannotGoOn, match="a picture kept with it is not there"):
        reissue(newest(tmp_path / "job"), lambda *_: papers(quote)(1))


def test_making_again_waits_for_a_run_that_writes(tmp_path, quote, inputs, papers):
    issue(tmp_path / "job", quote, inputs, papers(quote))
    with locked(tmp_path / "job"), pytest.raises(CannotGoOn) as stop:
        reissue(newest(tmp_path / "job"), lambda *_: papers(quote)(1))
    assert [p.code for p in stop.value.problems] == ["records/busy"]


def test_what_a_killed_run_left_is_swept_by_the_next_whichever_it_is(tmp_path, quote, inputs, papers):
    folder = tmp_path / "job"
    issue(folder, quote, inputs, papers(quote))
    for run in (
        lambda: reissue(newest(folder), lambda *_: papers(quote)(1)),
        lambda: issue(folder, quote, inputs, papers(quote)),
    ):
        (folder / f".estimator-{ended_run()}-0123abcd-tmp" / "to send").mkdir(parents=True)
        run()
        assert not list(folder.glob(".estimator-*-tmp"))


def ended_run() -> int:
    """The number of a run that is over."""
    done = subprocess.Popen([sys.executable, "-c", ""])
    done.wait()
    return done.pid


def test_other_bytes_are_told(tmp_path, quote, quote_at, inputs, papers):
    issue(tmp_path / "job", quote, inputs, papers(quote))
    made = reissue(newest(tmp_path / "job"), lambda *_: papers(quote_at("1.00"))(1))
    assert {p.code for p in made.problems} == {"records/not-the-same"}


def test_an_acceptance_is_written_once(tmp_path, quote, inputs, papers):
    folder = tmp_path / "job"
    issue(folder, quote, inputs, papers(quote))
    first = accept(folder, named(folder, "r1"), "a", date(2026, 11, 20))
    assert (first.option, first.total, first.on) == ("A", "4200.00", "2026-11-20")
    assert accept(folder, named(folder, "r1"), "A", date(2026, 11, 20)) == first
    with pytest.raises(CannotGoOn) as stop:
        accept(folder, named(folder, "r1"), "A", date(2026, 11, 21))
    assert [p.code for p in stop.value.problems] == ["records/already-accepted"]
    assert accepted(folder) == first


def test_each_revision_is_accepted_once_and_the_newest_acceptance_counts(tmp_path, quote_at, inputs, papers):
    folder = tmp_path / "job"
    for amount in ("4200.00", "4300.00", "4400.00"):
        issue(folder, quote_at(amount), inputs, papers(quote_at(amount)))
    first = accept(folder, named(folder, "r1"), "A", date(2026, 11, 20))
    assert accepted(folder) == first
    second = accept(folder, named(folder, "r2"), "A", date(2026, 11, 21))
    assert (second.revision, second.total) == (2, "4300.00")
    assert accepted(folder) == second
    assert accept(folder, named(folder, "r1"), "A", date(2026, 11, 20)) == first
    assert accepted(folder) == second


@pytest.mark.parametrize(
    ("day", "code"),
    [
        (date(2026, 11, 17), "records/accepted-too-early"),
        (date(2026, 11, 18), ""),
        (date(2026, 12, 18), ""),
        (date(2026, 12, 19), "records/accepted-too-late"),
    ],
)
def test_an_offer_is_accepted_from_its_first_day_through_its_last(tmp_path, quote, inputs, papers, day, code):
    folder = tmp_path / "job"
    issue(folder, quote, inputs, papers(quote))
    try:
        assert accept(folder, named(folder, "r1"), "A", day).on == str(day)
        found = ""
    except CannotGoOn as stop:
        (found,) = (p.code for p in stop.problems)
    assert found == code
    assert (accepted(folder) is None) == bool(code)


ODD_NOTES = ["", "[1]", "{}", "null", '{"revision": 1}', "{" * 5000, "[" * 100000]


@pytest.mark.parametrize("text", ODD_NOTES)
def test_an_odd_note_is_named_as_damaged(tmp_path, quote, inputs, papers, text):
    folder = tmp_path / "job"
    issue(folder, quote, inputs, papers(quote))
    for name, read in (("accepted r1.json", accepted), ("done r1.json", finished)):
        (folder / name).write_text(text)
        with pytest.raises(CannotGoOn) as stop:
            read(folder)
        assert [p.code for p in stop.value.problems] == ["records/note-damaged"]


@pytest.mark.parametrize(
    "odd",
    [
        {"revision": 2},
        {"total": "abc"},
        {"total": "NaN"},
        {"total": None},
        {"on": "last week"},
        {"on": 7},
        {"cancel_until": "soon"},
    ],
)
def test_an_acceptance_with_an_odd_value_is_named_as_damaged(tmp_path, quote, inputs, papers, odd):
    folder = tmp_path / "job"
    issue(folder, quote, inputs, papers(quote))
    kept = asdict(accept(folder, named(folder, "r1"), "A", date(2026, 11, 20)))
    (folder / "accepted r1.json").write_text(json.dumps({**kept, **odd}))
    with pytest.raises(CannotGoOn) as stop:
        accepted(folder)
    assert [p.code for p in stop.value.problems] == ["records/note-damaged"]


@pytest.mark.parametrize(
    ("signed", "until"),
    [
        (date(2026, 11, 20), "2026-11-24"),  # a Friday; Saturday counts as a business day here, Sunday does not
        (date(2026, 11, 23), "2026-11-27"),  # Thanksgiving, the 26th, does not count
    ],
)
def test_the_last_day_to_cancel_counts_from_the_day_of_signing(tmp_path, quote, inputs, papers, signed, until):
    """Three business days, Saturdays among them, Sundays and federal holidays not (16 CFR 429.0(f))."""
    three = replace(quote, cancel_business_days=3)
    issue(tmp_path / "job", three, inputs, papers(three))
    assert accept(tmp_path / "job", named(tmp_path / "job", "r1"), "A", signed).cancel_until == until


def test_only_what_was_offered_can_be_accepted(tmp_path, quote, inputs, papers):
    issue(tmp_path / "job", quote, inputs, papers(quote))
    with pytest.raises(CannotGoOn, match="Its options are A"):
        accept(tmp_path / "job", named(tmp_path / "job", "1"), "C", date(2026, 11, 20))
    assert accepted(tmp_path / "job") is None


def test_changes_name_the_price_first_and_then_the_reasons(tmp_path, quote_at, inputs, papers):
    folder = tmp_path / "job"
    issue(folder, quote_at(), inputs, papers(quote_at()))
    later = replace(inputs, texts={**inputs.texts, "main.txt": "12 hole 3in\n15 roots 40%\n"})
    later = replace(later, tables=inputs.tables.with_settings({"round_to": "100"}))
    issue(folder, quote_at("4300.00"), later, papers(quote_at("4300.00")))
    moved = changes(named(folder, "r1").record(), named(folder, "r2").record())
    assert moved == (
        Change("option", "A: Dig at one spot", "4200.00", "4300.00"),
        Change("line", "Coming and going", "4200.00", "4300.00", "A: Dig at one spot"),
        Change("notes", "main.txt", "", "15 roots 40%"),
        Change("table", "settings, round_to: value", "25", "100"),
    )
