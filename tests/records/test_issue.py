"""Revisions: the next one when something changed, nothing when nothing did, issued files never touched."""

from dataclasses import replace
from pathlib import Path

import pytest

from estimator.model.problem import CannotGoOn, Level
from estimator.records.issue import issue
from estimator.records.record import content
from estimator.records.recorded_text import sealed, unsealed
from estimator.records.revisions import named, newest, revisions, revisions_folder, street


def _bytes_below(folder: Path) -> dict[str, bytes]:
    return {str(p.relative_to(folder)): p.read_bytes() for p in folder.rglob("*") if p.is_file() and p.name != ".lock"}


def test_the_first_revision_holds_the_papers_and_one_record(tmp_path, quote, inputs, papers):
    issued = issue(tmp_path / "job", quote, inputs, papers(quote))
    names = sorted(str(p.relative_to(issued.folder)) for p in issued.files)
    assert (issued.number, issued.new) == (1, True)
    assert names == [
        "internal/Office r1.xlsx",
        "internal/Record 2026-131 r1 - 417 Larkspur Court.json",
        "to send/Drain quote r1 - 417 Larkspur Court.xlsx",
    ]


def test_nothing_changed_writes_nothing(tmp_path, quote, inputs, papers):
    issue(tmp_path / "job", quote, inputs, papers(quote))
    before = _bytes_below(tmp_path)
    again = issue(tmp_path / "job", quote, inputs, papers(quote))
    assert (again.number, again.new) == (1, False)
    assert _bytes_below(tmp_path) == before


def test_a_note_that_moved_down_a_row_is_no_change(quote_at, inputs):
    assert content(quote_at(row=3), inputs) == content(quote_at(row=4), inputs)


def test_a_cent_more_is_a_change(quote_at, inputs):
    assert content(quote_at("4200.00"), inputs) != content(quote_at("4200.01"), inputs)


def test_another_language_is_a_change(quote, inputs):
    assert content(quote, inputs) != content(quote, replace(inputs, languages=("en_US", "es_US")))


def test_another_picture_of_the_same_name_is_a_change(quote, inputs):
    one, other = (replace(inputs, pictures={"hole.jpg": data}) for data in (b"1", b"2"))
    assert content(quote, one) != content(quote, other)


def test_something_changed_makes_the_next_revision_and_leaves_the_first(tmp_path, quote_at, inputs, papers):
    issue(tmp_path / "job", quote_at(), inputs, papers(quote_at()))
    first = _bytes_below(tmp_path / "job" / "r1")
    dearer = quote_at("4300.00")
    issued = issue(tmp_path / "job", dearer, inputs, papers(dearer))
    assert (issued.number, issued.new) == (2, True)
    assert _bytes_below(tmp_path / "job" / "r1") == first


def test_going_back_to_the_first_price_is_a_third_revision(tmp_path, quote_at, inputs, papers):
    for amount in ("4200.00", "4300.00", "4200.00"):
        issued = issue(tmp_path / "job", quote_at(amount), inputs, papers(quote_at(amount)))
    assert issued.number == 3


def test_the_same_quote_gives_the_same_bytes_in_another_folder(tmp_path, quote, inputs, papers):
    for name in ("one", "two"):
        issue(tmp_path / name, quote, inputs, papers(quote))
    assert _bytes_below(tmp_path / "one") == _bytes_below(tmp_path / "two")


def test_the_record_gives_the_inputs_back(tmp_path, quote, inputs, papers):
    issue(tmp_path / "job", quote, inputs, papers(quote))
    held = newest(tmp_path / "job").record().inputs
    assert held.texts == inputs.texts
    assert held.tables.current("settings") == inputs.tables.current("settings")
    assert (held.day, held.languages, held.job_file) == (inputs.day, inputs.languages, inputs.job_file)


def test_the_tables_path_stays_off_the_record(tmp_path, quote, inputs, papers):
    issue(tmp_path / "job", quote, inputs, papers(quote))
    assert "/home/x" not in newest(tmp_path / "job").record_file.read_text()


@pytest.mark.parametrize("keep", [0, 1, 100, 1000])
def test_a_damaged_record_is_a_problem_and_no_trace(tmp_path, quote, inputs, papers, keep):
    issue(tmp_path / "job", quote, inputs, papers(quote))
    file = newest(tmp_path / "job").record_file
    file.write_bytes(file.read_bytes()[:keep])
    with pytest.raises(CannotGoOn) as stop:
        newest(tmp_path / "job").record()
    assert [p.code for p in stop.value.problems] == ["records/damaged"]


@pytest.mark.parametrize(
    "change",
    [
        lambda held: held.replace(b"4200.00", b"3200.00"),
        lambda held: b'{"revision": 1, "quote": {}}\n',
        lambda held: b"[1]\n",
        lambda held: held.replace(b'"form": 1', b'"form": 2'),
        lambda held: sealed({"revision": 1}),
        lambda held: sealed({**unsealed(held), "form": 2}),
        lambda held: sealed({**unsealed(held), "revision": 2}),
        lambda held: held.rstrip(),
    ],
)
def test_a_record_that_is_json_but_not_as_it_was_written_is_named_as_that(tmp_path, quote, inputs, papers, change):
    issue(tmp_path / "job", quote, inputs, papers(quote))
    file = newest(tmp_path / "job").record_file
    file.write_bytes(change(file.read_bytes()))
    with pytest.raises(CannotGoOn) as stop:
        newest(tmp_path / "job").record()
    assert [p.code for p in stop.value.problems] == ["records/changed-since"]


def test_every_byte_of_a_record_is_under_its_sum(tmp_path, quote, inputs, papers):
    issue(tmp_path / "job", quote, inputs, papers(quote))
    file = newest(tmp_path / "job").record_file
    whole = file.read_bytes()
    for at in range(0, len(whole), 97):
        file.write_bytes(whole[:at] + bytes([whole[at] ^ 1]) + whole[at + 1 :])
        with pytest.raises(CannotGoOn):
            newest(tmp_path / "job").record()


@pytest.mark.parametrize("gone", ["the record is cut short", "the folder is empty"])
def test_a_damaged_newest_revision_does_not_stop_the_next_one(tmp_path, quote, inputs, papers, gone):
    issue(tmp_path / "job", quote, inputs, papers(quote))
    if gone == "the folder is empty":
        (tmp_path / "job" / "r7").mkdir()
    else:
        file = newest(tmp_path / "job").record_file
        file.write_bytes(file.read_bytes()[:100])
    last = newest(tmp_path / "job").number
    before = _bytes_below(tmp_path)
    issued = issue(tmp_path / "job", quote, inputs, papers(quote))
    assert (issued.number, issued.new) == (last + 1, True)
    assert [(p.code, p.level) for p in issued.problems] == [("records/newest-damaged", Level.WARNING)]
    assert before.items() <= _bytes_below(tmp_path).items()
    after = issue(tmp_path / "job", quote, inputs, papers(quote))
    assert (after.number, after.new, after.problems) == (last + 1, False, ())


def test_an_unknown_revision_names_those_there_are(tmp_path, quote, inputs, papers):
    issue(tmp_path / "job", quote, inputs, papers(quote))
    with pytest.raises(CannotGoOn, match="There are r1"):
        named(tmp_path / "job", "r7")


def test_ten_comes_after_nine(tmp_path):
    for number in (10, 9, 1):
        (tmp_path / f"r{number}").mkdir()
    (tmp_path / "r01").mkdir()
    assert [r.number for r in revisions(tmp_path)] == [1, 9, 10]


@pytest.mark.parametrize(
    ("site", "expected"),
    [
        ("417 Larkspur Court, Fernbrook", "417 Larkspur Court"),
        ('a/b\\c:d*e?"<>|', "a b c d e"),
        ("x\x00y\n", "x y"),
        ("…", "…"),
        ("", "no street"),
        ("= 5 Elm St.", "= 5 Elm St"),
    ],
)
def test_a_street_becomes_a_name_every_disk_takes(site, expected):
    assert street(site) == expected


def test_a_long_street_is_cut():
    assert len(street("x" * 300)) == 60


def test_a_job_file_without_an_ending_has_its_folder_too(tmp_path):
    assert revisions_folder(tmp_path / "job.toml").name == "job"
    assert revisions_folder(tmp_path / "job").name == "job revisions"
