"""Files made again from the record alone, acceptances written once, and what moved between two revisions."""

from datetime import date

import pytest

from estimator.model.problem import CannotGoOn
from estimator.records.accepted import accept, accepted
from estimator.records.again import again
from estimator.records.changes import Change, changes
from estimator.records.issue import issue
from estimator.records.revisions import named, newest


def test_files_made_again_have_the_same_bytes_and_the_issued_ones_stay(tmp_path, quote, inputs, papers):
    issued = issue(tmp_path / "job", quote, inputs, papers(quote))
    before = {p: p.read_bytes() for p in issued.files}

    def remake(job_file, held, number):
        assert job_file.read_text() == inputs.texts["job.toml"]
        assert (job_file.parent / "main.txt").read_text() == inputs.texts["main.txt"]
        assert held.tables.text("round_to") == "25"
        return papers(quote)(number)

    made = again(newest(tmp_path / "job"), remake)
    assert made.problems == ()
    assert made.folder.name == "r1 again"
    for path in made.files:
        assert path.read_bytes() == (issued.folder / path.relative_to(made.folder)).read_bytes()
    assert {p: p.read_bytes() for p in issued.files} == before


def test_made_again_twice_goes_into_another_folder(tmp_path, quote, inputs, papers):
    issue(tmp_path / "job", quote, inputs, papers(quote))
    folders = [again(newest(tmp_path / "job"), lambda *_: papers(quote)(1)).folder.name for _ in range(3)]
    assert folders == ["r1 again", "r1 again 2", "r1 again 3"]


def test_other_bytes_are_told(tmp_path, quote, quote_at, inputs, papers):
    issue(tmp_path / "job", quote, inputs, papers(quote))
    made = again(newest(tmp_path / "job"), lambda *_: papers(quote_at("1.00"))(1))
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


@pytest.mark.parametrize(
    ("signed", "until"),
    [
        (date(2026, 11, 20), "2026-11-24"),  # a Friday; Saturday counts as a business day here, Sunday does not
        (date(2026, 11, 23), "2026-11-27"),  # Thanksgiving, the 26th, does not count
    ],
)
def test_the_last_day_to_cancel_counts_from_the_day_of_signing(tmp_path, quote, inputs, papers, signed, until):
    """Three business days, Saturdays among them, Sundays and federal holidays not (16 CFR 429.0(f))."""
    from dataclasses import replace

    three = replace(quote, cancel_business_days=3)
    issue(tmp_path / "job", three, inputs, papers(three))
    assert accept(tmp_path / "job", named(tmp_path / "job", "r1"), "A", signed).cancel_until == until


def test_only_what_was_offered_can_be_accepted(tmp_path, quote, inputs, papers):
    issue(tmp_path / "job", quote, inputs, papers(quote))
    with pytest.raises(CannotGoOn, match="Its options are A"):
        accept(tmp_path / "job", named(tmp_path / "job", "1"), "C", date(2026, 11, 20))
    assert accepted(tmp_path / "job") is None


def test_changes_name_the_price_first_and_then_the_reasons(tmp_path, quote_at, inputs, papers):
    from dataclasses import replace

    folder = tmp_path / "job"
    issue(folder, quote_at(), inputs, papers(quote_at()))
    later = replace(inputs, texts={**inputs.texts, "main.txt": "12 hole 3in\n15 roots 40%\n"})
    later = replace(later, tables=inputs.tables.with_settings({"round_to": "100"}))
    issue(folder, quote_at("4300.00"), later, papers(quote_at("4300.00")))
    moved = changes(named(folder, "r1").record(), named(folder, "r2").record())
    assert moved == (
        Change("option", "Dig at one spot", "4200.00", "4300.00"),
        Change("line", "Dig at one spot: Coming and going", "4200.00", "4300.00"),
        Change("notes", "main.txt", "", "15 roots 40%"),
        Change("table", "settings, round_to: value", "25", "100"),
    )
