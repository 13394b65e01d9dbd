"""Where a job stands, from its notes to its acceptance; damaged ones are a state, never a failure."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from estimator.model.problem import CannotGoOn
from estimator.model.say import Feet, Say
from estimator.records.accepted import accept
from estimator.records.afterwards.lost import all_lost, lose, lost
from estimator.records.finished import done_of, finish, finished
from estimator.records.issue import issue
from estimator.records.job_status import job_files, job_status
from estimator.records.revisions import named, revisions_folder
from estimator.records.summary import read_summary
from estimator.wording.say import say

DAY = date(2026, 11, 20)
LAST_DAY = date(2026, 12, 18)


@pytest.fixture(name="job_file")
def _job_file(tmp_path):
    (tmp_path / "job.toml").write_text("[job]\n")
    return tmp_path / "job.toml"


@pytest.fixture(name="issue_at")
def _issue_at(job_file, quote_at, inputs, papers):
    return lambda amount="4200.00": issue(
        revisions_folder(job_file), quote_at(amount), inputs, papers(quote_at(amount))
    )


def test_notes_with_errors_wait_to_be_mended(job_file):
    found = job_status(job_file, DAY, lambda path: 2)
    assert (found.state, str(found.waits_for)) == ("notes incomplete", "2 errors in the notes")


def test_notes_without_errors_are_ready(job_file):
    assert job_status(job_file, DAY, lambda path: 0).state == "ready"


def test_an_issued_job_shows_its_total_and_the_days_left(job_file, issue_at):
    issue_at()
    found = job_status(job_file, DAY, lambda path: 0)
    assert (found.state, found.revision, found.total, found.days_left) == ("issued", "r1", "4200.00", 28)
    assert found.site == "417 Larkspur Court, Fernbrook"


def test_a_second_revision_is_revised(job_file, issue_at):
    issue_at()
    issue_at("4300.00")
    found = job_status(job_file, DAY, lambda path: 0)
    assert (found.state, found.revision, found.total) == ("revised", "r2", "4300.00")


@pytest.mark.parametrize(("after", "state"), [(0, "issued"), (1, "expired")])
def test_an_offer_holds_through_its_last_day(job_file, issue_at, after, state):
    issue_at()
    assert job_status(job_file, LAST_DAY + timedelta(days=after), lambda path: 0).state == state


def test_an_accepted_offer_does_not_expire(job_file, issue_at):
    issue_at()
    folder = revisions_folder(job_file)
    accept(folder, named(folder, "r1"), "A", DAY)
    found = job_status(job_file, LAST_DAY + timedelta(days=100), lambda path: 0)
    assert (found.state, found.days_left, str(found.waits_for)) == ("accepted", None, "the crew")


@pytest.mark.parametrize("keep", [0, 1, 100, 1000])
def test_a_record_cut_short_is_damaged(job_file, issue_at, keep):
    issue_at()
    record = named(revisions_folder(job_file), "r1").record_file
    record.write_bytes(record.read_bytes()[:keep])
    assert job_status(job_file, DAY, lambda path: 0).state == "damaged"


def test_a_summary_longer_than_the_head_of_the_file_is_read_all_the_same(tmp_path):
    site = "x" * 40_000
    (tmp_path / "r.json").write_text(f'{{\n "summary": {{"site": "{site}"}}\n}}\n')
    assert read_summary(tmp_path / "r.json") == {"site": site}


def test_job_files_are_found_at_any_depth_and_other_toml_is_passed_by(tmp_path):
    texts = {"a/one.toml": "[job]\n", "b/c/two.toml": 'job = { number = "1" }\n', ".hidden/three.toml": "[job]\n"}
    for name, text in texts.items():
        path = tmp_path / name
        path.parent.mkdir(parents=True)
        path.write_text(text)
    (tmp_path / "pyproject.toml").write_text("[project]\n")
    assert [p.name for p in job_files(tmp_path)] == ["one.toml", "two.toml"]


def test_work_that_was_done_waits_for_nothing(job_file, issue_at):
    issue_at()
    folder = revisions_folder(job_file)
    accept(folder, named(folder, "r1"), "A", DAY)
    finish(folder, DAY + timedelta(days=9))
    found = job_status(job_file, LAST_DAY + timedelta(days=100), lambda path: 0)
    assert (found.state, str(found.waits_for), found.total) == ("done", "nothing", "4200.00")


def test_work_can_be_done_on_the_day_it_was_accepted_and_noting_it_twice_changes_nothing(job_file, issue_at):
    issue_at()
    folder = revisions_folder(job_file)
    accept(folder, named(folder, "r1"), "A", DAY)
    assert finish(folder, DAY) == finish(folder, DAY) == finished(folder)


def test_what_was_done_before_says_nothing_of_the_revision_signed_after_it(job_file, issue_at):
    issue_at()
    folder = revisions_folder(job_file)
    accept(folder, named(folder, "r1"), "A", DAY)
    finish(folder, DAY + timedelta(days=1))
    issue_at("4300.00")
    assert finished(folder).revision == 1
    accept(folder, named(folder, "r2"), "A", DAY + timedelta(days=2))
    assert finished(folder) is None
    assert finish(folder, DAY + timedelta(days=9)).revision == 2
    assert [done_of(folder, number).on for number in (1, 2)] == [str(DAY + timedelta(days=n)) for n in (1, 9)]


def test_a_later_offer_can_be_lost_after_earlier_work_was_done(job_file, issue_at):
    issue_at()
    folder = revisions_folder(job_file)
    accept(folder, named(folder, "r1"), "A", DAY)
    finish(folder, DAY + timedelta(days=1))
    with pytest.raises(CannotGoOn):
        lose(folder, DAY + timedelta(days=2), "price")
    issue_at("4300.00")
    lose(folder, DAY + timedelta(days=2), "price")
    assert job_status(job_file, DAY + timedelta(days=2), lambda path: 0).state == "lost"


def test_each_revision_that_was_lost_keeps_its_own_note(job_file, issue_at):
    """A visit lost earlier stays lost when a later offer is lost too; of one revision the last reason counts."""
    issue_at()
    folder = revisions_folder(job_file)
    lose(folder, DAY, "price")
    issue_at("4300.00")
    lose(folder, DAY + timedelta(days=2), "no answer")
    lose(folder, DAY + timedelta(days=3), "chose a liner")
    assert [(one.revision, one.why) for one in all_lost(folder)] == [(1, "price"), (2, "chose a liner")]
    issue_at("4400.00")
    assert lost(folder) is None


def test_a_signed_job_waits_until_it_can_no_longer_be_cancelled(job_file, issue_at, quote_at, inputs, papers):
    """Three business days after Friday, November 20: the Tuesday and Wednesday after are the 24th and 25th [computed]."""
    quote = replace(quote_at(), cancel_business_days=3)
    issue(revisions_folder(job_file), quote, inputs, lambda number: replace(papers(quote)(number)))
    folder = revisions_folder(job_file)
    until = date.fromisoformat(accept(folder, named(folder, "r1"), "A", DAY).cancel_until)
    assert "to cancel" in str(job_status(job_file, until, lambda path: 0).waits_for)
    assert str(job_status(job_file, until + timedelta(days=1), lambda path: 0).waits_for) == "the crew"


def test_a_job_whose_notes_break_the_program_is_damaged_and_the_list_goes_on(job_file):
    def breaks(path):
        raise RecursionError

    assert job_status(job_file, DAY, breaks).state == "damaged"


WHY = Say.of("{n} of the pipe were not seen.", n=Feet(12.5))


@pytest.mark.parametrize(
    ("reasons", "waits"),
    [
        ([(WHY,), (WHY, Say("no test"))], "a fixed price: 12.5 ft of the pipe were not seen."),
        ([(WHY, Say("no test"))], "a fixed price: 12.5 ft of the pipe were not seen. (and 1 more)"),
        ([(WHY,), ()], "the homeowner"),
    ],
)
def test_a_job_of_which_nothing_can_be_signed_waits_for_what_is_open(
    job_file, quote_at, inputs, papers, reasons, waits
):
    """Of several options the one that lacks the least; one that can be signed is enough."""
    first = quote_at().options[0]
    options = tuple(
        replace(first, letter="AB"[i], fixed=not why, not_fixed_because=why) for i, why in enumerate(reasons)
    )
    quote = replace(quote_at(), options=options)
    issue(revisions_folder(job_file), quote, inputs, papers(quote))
    found = job_status(job_file, DAY, lambda path: 0)
    assert (found.state, str(found.waits_for)) == ("issued", waits)
    assert job_status(job_file, LAST_DAY + timedelta(days=1), lambda path: 0).state == "expired"
    if waits != "the homeowner":
        assert "precio" in say(found.waits_for, "es_US")
