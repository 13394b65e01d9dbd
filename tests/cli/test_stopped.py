"""Stopped by hand in the middle of writing: the folder is as it was, and the program says so."""

import signal
import subprocess
import sys
import time

SLOW = """
import sys, time
sys.argv = ["estimator", "quote", sys.argv[1]]
from estimator.disk import disk
write = disk.Disk.write
def slowly(self, path, data):
    write(self, path, data)
    print("wrote", flush=True)
    time.sleep(30)
disk.Disk.write = slowly
from estimator.cli import main
main()
"""


def _hears_ctrl_c() -> None:
    """Also where the tests themselves run in the background, in which the shell has Ctrl-C ignored."""
    signal.signal(signal.SIGINT, signal.SIG_DFL)


def test_an_interrupt_while_writing_leaves_no_debris(small):
    run = subprocess.Popen(
        [sys.executable, "-c", SLOW, str(small)],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        preexec_fn=_hears_ctrl_c,
    )
    assert run.stdout is not None
    assert run.stdout.readline() == b"wrote\n"
    time.sleep(0.1)
    run.send_signal(signal.SIGINT)
    _, said = run.communicate(timeout=30)
    assert run.returncode == 130
    assert b"Stopped" in said
    assert b"Traceback" not in said
    assert [p.name for p in small.with_suffix("").iterdir()] == [".lock"]


def test_a_reader_that_leaves_early_is_no_fault(small):
    """`estimator options … | head -1`: the pipe is closed before the program writes."""
    run = subprocess.Popen(
        [sys.executable, "-m", "estimator", "options", str(small)],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        preexec_fn=_hears_ctrl_c,
    )
    assert run.stdout is not None
    assert run.stderr is not None
    run.stdout.close()
    said = run.stderr.read()
    assert b"Traceback" not in said
    assert b"mistake of its own" not in said
    assert b"BrokenPipe" not in said
    assert run.wait() == 0


def test_two_runs_on_one_job_write_one_whole_revision(small):
    """Each gets the revision or a plain message: the one that comes second waits for nobody and breaks nothing."""
    words = [sys.executable, "-m", "estimator", "quote", str(small), "--language", "en_US"]
    runs = [subprocess.Popen(words, stdout=subprocess.PIPE, stderr=subprocess.PIPE) for _ in range(2)]
    said = [run.communicate(timeout=120) for run in runs]
    assert {run.returncode for run in runs} <= {0, 1}
    assert 0 in {run.returncode for run in runs}
    told = b"".join(out + err for out, err in said)
    assert told.count(b"r1 is written") == 1
    assert b"records/busy" in told or b"Nothing changed since r1" in told
    assert sorted(p.name for p in small.with_suffix("").iterdir()) == [".lock", "r1"]
