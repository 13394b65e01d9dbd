"""Killed at any call, a full disk, a refusal, two runs at once: the old revisions, or the whole new one, never a part."""

import errno
import os
import resource
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

import pytest

from estimator.disk.disk import Disk
from estimator.model.problem import CannotGoOn
from estimator.records.issue import issue
from estimator.records.lock import locked
from estimator.records.reissue import reissue
from estimator.records.revisions import newest, revisions


class Countdown:
    """Does something at the n-th change of the disk."""

    def __init__(self, calls: int, then) -> None:
        self.left, self.then = calls, then

    def __call__(self, what: str, path: Path) -> None:
        self.left -= 1
        if self.left == 0:
            self.then()


def _count(tmp_path, quote, inputs, papers) -> int:
    calls: list[str] = []
    issue(tmp_path / "counted", quote, inputs, papers(quote), Disk(lambda what, path: calls.append(what)))
    return len(calls)


def _whole(folder: Path) -> bool:
    files = [p for p in folder.rglob("*") if p.is_file()]
    return len(files) == 3 and all(p.stat().st_size > 100 for p in files)


def _in_a_child(call) -> int:
    """Runs the call in a process of its own, which may die in it."""
    child = os.fork()
    if child == 0:
        try:
            call()
        finally:
            os._exit(0)
    return os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])


def test_killed_at_any_call_the_old_or_the_whole_new_revision_is_there(tmp_path, quote_at, inputs, papers):
    quote, dearer = quote_at(), quote_at("4300.00")
    total = _count(tmp_path, quote, inputs, papers)
    assert total > 10
    for n in range(1, total + 1):
        folder = tmp_path / f"killed-{n}"
        issue(folder, quote, inputs, papers(quote))
        disk = Disk(Countdown(n, lambda: os._exit(9)))
        assert _in_a_child(lambda: issue(folder, dearer, inputs, papers(dearer), disk)) == 9  # noqa: B023
        assert [r.number for r in revisions(folder)] in ([1], [1, 2])
        assert all(_whole(r.folder) for r in revisions(folder))
        after = issue(folder, dearer, inputs, papers(dearer))
        assert after.number == 2
        assert not list(folder.glob(".estimator-*-tmp"))


@pytest.mark.parametrize(
    ("error", "code"),
    [
        (OSError(errno.ENOSPC, "No space left on device"), "records/no-space"),
        (OSError(errno.EROFS, "Read-only file system"), "records/not-allowed"),
        (OSError(errno.EIO, "Input/output error"), "records/cannot-write"),
        (PermissionError(errno.EACCES, "Permission denied"), "records/not-allowed"),
    ],
)
def test_a_refusal_at_any_call_is_a_problem_and_leaves_no_debris(tmp_path, quote, inputs, papers, error, code):
    def refuse() -> None:
        raise error

    total = _count(tmp_path, quote, inputs, papers)
    for n in range(1, total):  # the last call comes after the rename
        folder = tmp_path / f"refused-{n}"
        with pytest.raises(CannotGoOn) as stop:
            issue(folder, quote, inputs, papers(quote), Disk(Countdown(n, refuse)))
        assert [p.code for p in stop.value.problems] == [code]
        assert revisions(folder) == ()
        assert not list(folder.glob(".estimator-*-tmp"))


def test_a_full_disk_leaves_no_part_of_a_revision(tmp_path, quote, inputs, papers):
    def full() -> None:
        resource.setrlimit(resource.RLIMIT_FSIZE, (1000, 1000))
        try:
            issue(tmp_path / "job", quote, inputs, papers(quote))
        except CannotGoOn as stop:
            os._exit(7 if stop.problems[0].code == "records/no-space" else 8)

    assert _in_a_child(full) == 7
    assert revisions(tmp_path / "job") == ()
    assert not list((tmp_path / "job").glob(".estimator-*-tmp"))


@pytest.mark.parametrize("made_before", [True, False])
def test_a_folder_that_may_not_be_written_is_a_problem(quote, inputs, papers, made_before):
    """Run as another user, since the superuser may write anywhere."""
    above = Path(tempfile.mkdtemp())
    folder = above / "job"
    if made_before:
        folder.mkdir()
        folder.chmod(0o555)
    above.chmod(0o555)

    def refused() -> None:
        if os.geteuid() == 0:
            os.setuid(65534)
        try:
            issue(folder, quote, inputs, papers(quote))
        except CannotGoOn as stop:
            os._exit(7 if stop.problems[0].code == "records/not-allowed" else 8)

    try:
        assert _in_a_child(refused) == 7
        assert revisions(folder) == ()
    finally:
        above.chmod(0o755)
        shutil.rmtree(above)


def test_a_file_where_the_folder_should_be_is_a_problem(tmp_path, quote, inputs, papers):
    (tmp_path / "job").write_text("mine")
    with pytest.raises(CannotGoOn) as stop:
        issue(tmp_path / "job", quote, inputs, papers(quote))
    assert [p.code for p in stop.value.problems] == ["records/in-the-way"]
    assert (tmp_path / "job").read_text() == "mine"


def test_while_one_run_writes_another_is_told_to_wait(tmp_path, quote, inputs, papers):
    folder = tmp_path / "job"
    folder.mkdir()
    holder = subprocess.Popen(
        [
            sys.executable,
            "-c",
            "import sys, pathlib; from estimator.records.lock import locked\n"
            "with locked(pathlib.Path(sys.argv[1])): print('held', flush=True); sys.stdin.read()",
            str(folder),
        ],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
    )
    try:
        assert holder.stdout is not None
        assert holder.stdout.readline() == b"held\n"
        with pytest.raises(CannotGoOn) as stop:
            issue(folder, quote, inputs, papers(quote))
        assert [p.code for p in stop.value.problems] == ["records/busy"]
    finally:
        holder.communicate()
    assert issue(folder, quote, inputs, papers(quote)).number == 1


def test_the_lock_is_free_again_after_its_holder_was_killed(tmp_path):
    def die() -> None:
        with locked(tmp_path):
            os._exit(9)

    assert _in_a_child(die) == 9
    with locked(tmp_path):
        assert (tmp_path / ".lock").exists()


@pytest.mark.parametrize(
    ("refusal", "busy"),
    [
        (errno.EACCES, True),
        (errno.EAGAIN, True),
        (errno.EDEADLK, True),
        (errno.ENOLCK, False),
        (errno.EOPNOTSUPP, False),
        (errno.EINVAL, False),
        (errno.EIO, False),
    ],
)
def test_only_a_lock_that_is_held_means_wait(tmp_path, monkeypatch, refusal, busy):
    """What the systems say of a lock that is held: EAGAIN (flock, POSIX), EACCES and EDEADLK (msvcrt.locking); from memory."""

    def refuse(number: int) -> None:
        raise OSError(refusal, os.strerror(refusal))

    monkeypatch.setattr("estimator.records.lock._lock", refuse)
    try:
        with locked(tmp_path):
            found = False
    except CannotGoOn as stop:
        assert [p.code for p in stop.problems] == ["records/busy"]
        found = True
    assert found == busy


def test_made_again_and_killed_at_any_call_there_is_the_whole_folder_or_none(tmp_path, quote, inputs, papers):
    calls: list[str] = []
    folder = tmp_path / "counted"
    issue(folder, quote, inputs, papers(quote))
    reissue(newest(folder), lambda *_: papers(quote)(1), Disk(lambda what, path: calls.append(what)))
    assert len(calls) > 8
    for n in range(1, len(calls) + 1):
        folder = tmp_path / f"killed-{n}"
        issue(folder, quote, inputs, papers(quote))
        disk = Disk(Countdown(n, lambda: os._exit(9)))
        assert _in_a_child(lambda: reissue(newest(folder), lambda *_: papers(quote)(1), disk)) == 9  # noqa: B023
        assert all(len([p for p in made.rglob("*") if p.is_file()]) == 2 for made in folder.glob("r1 again*"))
        assert reissue(newest(folder), lambda *_: papers(quote)(1)).problems == ()
        assert not list(folder.glob(".*-tmp"))


def test_where_the_disk_knows_no_locks_the_rename_settles_who_gets_the_number(
    tmp_path, quote_at, inputs, papers, monkeypatch
):
    """The other run takes r1 between our writing and our rename."""
    folder, ours, theirs = tmp_path / "job", quote_at(), quote_at("4300.00")
    monkeypatch.setattr("estimator.records.lock.taken", lambda file: True)

    def other_run() -> None:
        issue(folder, theirs, inputs, papers(theirs))

    calls: list[str] = []

    def before(what: str, path: Path) -> None:
        calls.append(what)
        if what == "rename" and calls.count("rename") == 1:
            other_run()

    issued = issue(folder, ours, inputs, papers(ours), Disk(before))
    assert issued.number == 2
    totals = [r.record().data["quote"]["options"][0]["price"]["total"] for r in revisions(folder)]
    assert totals == ["4300.00", "4200.00"]
