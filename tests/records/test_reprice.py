"""A job on new tables against what was issued; what was done before a stop is found again."""

import shutil
from datetime import date
from decimal import Decimal

import pytest

from estimator.records.reprice import OptionMove, Repriced, fingerprint, progress_file, reprice, save_row, saved_rows
from tests.tables.workbench import demo as demo_tables

DAY = date(2026, 11, 25)
ROW = Repriced(
    job_file="a/job.toml",
    number="1",
    site="417 Larkspur Court",
    revision="r1",
    moves=(OptionMove(option="Dig", issued=Decimal("4200.00")), OptionMove(option="Line", now=Decimal("5000.50"))),
)


@pytest.fixture(name="job_file", scope="module")
def _job_file(issued, tmp_path_factory):
    """The demo, issued once."""
    return issued(tmp_path_factory.mktemp("larkspur"))


def test_on_the_same_tables_nothing_moves(job_file):
    found = reprice(job_file, demo_tables(), DAY)
    assert (found.wrong, found.revision) == ("", "r1")
    assert found.moves
    assert all(move.issued == move.now for move in found.moves)


def test_a_larger_step_of_the_price_moves_every_option_up_to_it(job_file):
    """The next whole five hundred [computed]; an option may give way to another that comes to no more."""
    found = reprice(job_file, demo_tables().with_settings({"round_price_to": "500"}), DAY)
    both = [move for move in found.moves if move.now is not None and move.issued is not None]
    assert len(both) >= 4
    assert all(move.now % 500 == 0 and move.issued <= move.now < move.issued + 500 for move in both)
    assert any(move.now > move.issued for move in both)


def test_a_job_that_cannot_be_read_says_why(tmp_path):
    (tmp_path / "job.toml").write_text("[job\n")
    found = reprice(tmp_path / "job.toml", demo_tables(), DAY)
    assert "job.toml:1" in found.wrong
    assert found.moves == ()


def test_a_damaged_record_says_so(job_file, tmp_path):
    shutil.copytree(job_file.parent, tmp_path / "job")
    record = next((tmp_path / "job" / "job" / "r1" / "internal").glob("*.json"))
    record.write_bytes(record.read_bytes()[:1000])
    assert "cannot be read" in reprice(tmp_path / "job" / "job.toml", demo_tables(), DAY).wrong


def test_the_sum_of_a_job_moves_with_its_notes_its_day_and_the_tables(tmp_path):
    (tmp_path / "job.toml").write_text("[job]\n")
    (tmp_path / "main.txt").write_text("12 hole 3in\n")
    file, tables = tmp_path / "job.toml", demo_tables()
    first = fingerprint(file, tables, DAY)
    assert first == fingerprint(file, tables, DAY)
    assert first != fingerprint(file, tables, date(2026, 11, 26))
    (tmp_path / "main.txt").write_text("13 hole 3in\n")
    assert first != fingerprint(file, tables, DAY)


def test_rows_that_were_kept_come_back_as_they_were(tmp_path):
    save_row(tmp_path / "kept", "a", ROW)
    save_row(tmp_path / "kept", "b", Repriced(job_file="b", wrong="it is broken"))
    assert saved_rows(tmp_path / "kept") == {"a": ROW, "b": Repriced(job_file="b", wrong="it is broken")}


@pytest.mark.parametrize("cut", [1, 10, 60])
def test_a_row_cut_short_is_as_if_it_were_not_there(tmp_path, cut):
    path = tmp_path / "kept"
    save_row(path, "a", ROW)
    save_row(path, "b", ROW)
    path.write_bytes(path.read_bytes()[:-cut])
    assert list(saved_rows(path)) in ([["a"], ["a", "b"]] if cut == 1 else [["a"]])


def test_nothing_was_kept_where_there_is_no_file(tmp_path):
    assert saved_rows(tmp_path / "kept") == {}


def test_what_is_kept_lies_beside_the_folder_not_in_it(tmp_path):
    assert progress_file(tmp_path / "jobs") == tmp_path / "jobs.repricing"
