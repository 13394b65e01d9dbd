"""Every problem of the records in its exact words: tests/broken/records-…/deed.txt says what is done, expected.txt what is said."""

import errno
import os
from collections.abc import Callable
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from estimator.disk.disk import Disk
from estimator.model.problem import CannotGoOn, Problem
from estimator.model.say import Feet, Say
from estimator.records import bundle
from estimator.records.accepted import accept, accepted, not_before
from estimator.records.finished import doubts, finish
from estimator.records.issue import issue
from estimator.records.lock import locked
from estimator.records.problems import PROBLEMS
from estimator.records.reissue import reissue
from estimator.records.revisions import named, pair
from estimator.records.verify import verify
from tests.made_up.quote import example_quote

BROKEN = Path(__file__).parents[1] / "broken"
BY_DEED = [kind.code for kind in PROBLEMS if not (BROKEN / kind.code.replace("/", "-") / "case.py").exists()]


class Desk:
    """A job's folder with one revision in it, and what can be done to it."""

    def __init__(self, folder: Path, quote_at, inputs, papers) -> None:
        self.folder, self.quote_at, self.inputs, self.papers = folder, quote_at, inputs, papers

    def write(self, amount: str = "4200.00", disk: Disk | None = None) -> None:
        quote = self.quote_at(amount)
        issue(self.folder, quote, self.inputs, self.papers(quote), disk)

    def refused(self, error: OSError) -> None:
        def before(what: str, path: Path) -> None:
            if what == "write":
                raise error

        self.write("4300.00", Disk(before))

    def in_the_way(self) -> None:
        self.folder = self.folder / ".." / "file"
        self.folder.write_text("mine")
        self.write()

    def busy(self, monkeypatch: pytest.MonkeyPatch) -> None:
        monkeypatch.setattr("estimator.records.lock.taken", lambda file: False)
        with locked(self.folder):
            pass

    def damaged(self) -> None:
        record = named(self.folder, "r1").record_file
        record.write_bytes(record.read_bytes()[:20])
        named(self.folder, "r1").record()

    def newest_damaged(self) -> tuple[Problem, ...]:
        named(self.folder, "r1").record_file.unlink()
        quote = self.quote_at("4300.00")
        return issue(self.folder, quote, self.inputs, self.papers(quote)).problems

    def leads_out(self) -> None:
        outside = replace(self.inputs, texts={**self.inputs.texts, "../../outside.txt": "mine"})
        quote = self.quote_at("4300.00")
        issue(self.folder, quote, outside, self.papers(quote))
        reissue(named(self.folder, "r2"), lambda *_: self.papers(quote)(2))

    def changed_by_hand(self) -> None:
        record = named(self.folder, "r1").record_file
        record.write_bytes(record.read_bytes().replace(b"4200.00", b"3200.00"))
        named(self.folder, "r1").record()

    def note_damaged(self) -> None:
        (self.folder / "accepted r1.json").write_text("[1]")
        accepted(self.folder)

    def accepted_on(self, day: date) -> None:
        accept(self.folder, named(self.folder, "r1"), "A", day)

    def quoted_too_early(self) -> None:
        self.accepted_on(date(2026, 11, 20))
        not_before(self.folder, date(2026, 11, 19))

    def accepted_unfixed(self) -> None:
        quote = self.quote_at("4300.00")
        why = Say.of("The camera did not pass {at}.", at=Feet(42.0))
        waiting = replace(quote, options=(replace(quote.options[0], fixed=False, not_fixed_because=(why,)),))
        issue(self.folder, waiting, self.inputs, self.papers(waiting))
        accept(self.folder, named(self.folder, "r2"), "A", date(2026, 11, 20))

    def accepted_invented(self) -> None:
        why = Say.of("{key} in the table settings is the demo's invention", key="firm_licence")
        quote = replace(self.quote_at("4300.00"), invented=(why,))
        issue(self.folder, quote, self.inputs, self.papers(quote))
        accept(self.folder, named(self.folder, "r2"), "A", date(2026, 11, 20))

    def done_while_cancellable(self) -> tuple[Problem, ...]:
        quote = replace(self.quote_at("4300.00"), cancel_business_days=3)
        issue(self.folder, quote, self.inputs, self.papers(quote))
        accept(self.folder, named(self.folder, "r2"), "A", date(2026, 11, 20))
        return doubts(self.folder, finish(self.folder, date(2026, 11, 24)))

    def not_the_same(self) -> tuple[Problem, ...]:
        return reissue(named(self.folder, "r1"), lambda *_: self.papers(self.quote_at("1.00"))(1)).problems[:1]

    def never_issued(self) -> None:
        import openpyxl

        openpyxl.Workbook().save(self.folder / "other.xlsx")
        verify(self.folder, self.folder / "other.xlsx")

    def cannot_hold(self) -> None:
        quote = example_quote()
        long = replace(quote, job=replace(quote.job, customer=replace(quote.job.customer, name="Ana\x07")))
        bundle.papers(long, self.inputs)

    def accepted_twice(self) -> None:
        for day in (20, 21):
            accept(self.folder, named(self.folder, "r1"), "A", date(2026, 11, day))

    def done(self, *days: int) -> None:
        accept(self.folder, named(self.folder, "r1"), "A", date(2026, 11, 20))
        for day in days:
            finish(self.folder, date(2026, 11, day))


DEEDS: dict[str, Callable[[Desk, pytest.MonkeyPatch], tuple[Problem, ...] | None]] = {
    "the disk is full": lambda desk, _: desk.refused(OSError(errno.ENOSPC, "No space left on device")),
    "the file is open elsewhere": lambda desk, _: desk.refused(
        PermissionError(errno.EACCES, "Permission denied", "Drain quote r2.xlsx")
    ),
    "the disk fails": lambda desk, _: desk.refused(OSError(errno.EIO, "Input/output error")),
    "a file stands where the folder should be": lambda desk, _: desk.in_the_way(),
    "another run holds the lock": lambda desk, patch: desk.busy(patch),
    "revision r7 is asked for": lambda desk, _: named(desk.folder, "r7") and None,
    "changes are asked for after one revision": lambda desk, _: pair(desk.folder, "", "") and None,
    "the record is cut short": lambda desk, _: desk.damaged(),
    "the newest record is gone": lambda desk, _: desk.newest_damaged(),
    "a record names a file outside its folder": lambda desk, _: desk.leads_out(),
    "a price in the record is changed by hand": lambda desk, _: desk.changed_by_hand(),
    "a list stands where the acceptance should be": lambda desk, _: desk.note_damaged(),
    "option A is accepted the day before the quote": lambda desk, _: desk.accepted_on(date(2026, 11, 17)),
    "option A is accepted the day after the offer": lambda desk, _: desk.accepted_on(date(2026, 12, 19)),
    "a quote on the demo's papers is accepted": lambda desk, _: desk.accepted_invented(),
    "option A waits for a confirmation and is accepted": lambda desk, _: desk.accepted_unfixed(),
    "the work is done on the last day to cancel": lambda desk, _: desk.done_while_cancellable(),
    "option C is accepted": lambda desk, _: (
        accept(desk.folder, named(desk.folder, "r1"), "C", date(2026, 11, 20)) and None
    ),
    "the work is done before anybody signed": lambda desk, _: finish(desk.folder, date(2026, 11, 20)) and None,
    "the work is done a day before the signature": lambda desk, _: desk.done(19),
    "the work is done twice": lambda desk, _: desk.done(25, 26),
    "a revision is dated the day before the signature": lambda desk, _: desk.quoted_too_early(),
    "option A is accepted twice": lambda desk, _: desk.accepted_twice(),
    "a name holds a control character": lambda desk, _: desk.cannot_hold(),
    "another workbook comes back": lambda desk, _: desk.never_issued(),
    "the papers come out otherwise": lambda desk, _: desk.not_the_same(),
}


@pytest.mark.parametrize("code", BY_DEED)
def test_a_problem_of_the_records_comes_out_in_its_exact_words(code, tmp_path, quote_at, inputs, papers, monkeypatch):
    folder = BROKEN / code.replace("/", "-")
    monkeypatch.setattr("estimator.records.record.LIBRARIES", ())
    monkeypatch.setattr("estimator.__version__", "1.0.0")
    desk = Desk(tmp_path / "job", quote_at, inputs, papers)
    desk.write()
    try:
        problems = DEEDS[(folder / "deed.txt").read_text("utf-8").strip()](desk, monkeypatch) or ()
    except CannotGoOn as stop:
        problems = stop.problems
    printed = "\n".join(map(str, problems)).replace(str(tmp_path), "FOLDER") + "\n"
    if os.environ.get("ESTIMATOR_WRITE_EXPECTED"):
        (folder / "expected.txt").write_text(printed, "utf-8")
    assert printed == (folder / "expected.txt").read_text("utf-8")
    assert f"({code})" in printed
