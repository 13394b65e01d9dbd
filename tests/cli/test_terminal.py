"""Driven through a real pseudo-terminal: the window's width, colour and its absence; and through pipes of old code pages."""

import fcntl
import os
import pty
import re
import struct
import subprocess
import sys
import termios
from pathlib import Path

import pytest

from estimator import demo
from estimator.cli.views.table import cells_wide

pytestmark = pytest.mark.usefixtures("keeps")

JOB = Path(demo.__file__).parent / "job.toml"
COLOUR = re.compile(r"\x1b\[[0-9;]*m")


def in_a_terminal(columns: int, *words: str, **environment: str) -> str:
    """What a terminal of that width is sent by the program."""
    ours, theirs = pty.openpty()
    fcntl.ioctl(theirs, termios.TIOCSWINSZ, struct.pack("HHHH", 40, columns, 0, 0))
    env = {k: v for k, v in os.environ.items() if k not in ("NO_COLOR", "COLUMNS", "LINES", "FORCE_COLOR")}
    child = subprocess.Popen(
        [sys.executable, "-m", "estimator", *words],
        stdin=theirs,
        stdout=theirs,
        stderr=theirs,
        env=env | {"TERM": "xterm-256color"} | environment,
        close_fds=True,
    )
    os.close(theirs)
    sent = b""
    while True:
        try:
            part = os.read(ours, 65536)
        except OSError:  # the other end was closed
            break
        if not part:
            break
        sent += part
    os.close(ours)
    assert child.wait() == 0, sent.decode()
    return sent.decode().replace("\r\n", "\n")


@pytest.mark.parametrize("columns", [60, 80, 132])
@pytest.mark.parametrize("words", [("check",), ("options",)])
def test_nothing_runs_over_the_edge_of_the_window(columns, words):
    lines = COLOUR.sub("", in_a_terminal(columns, *words, str(JOB))).splitlines()
    assert len(lines) > 40
    assert max(map(cells_wide, lines)) <= columns


def test_headings_stand_out_in_a_terminal_and_not_where_no_colour_is_wanted():
    assert COLOUR.search(in_a_terminal(80, "check", str(JOB)))
    assert not COLOUR.search(in_a_terminal(80, "check", str(JOB), NO_COLOR="1"))


def test_a_wide_window_is_used():
    narrow, wide = (COLOUR.sub("", in_a_terminal(c, "check", str(JOB))) for c in (80, 120))
    assert max(map(len, wide.splitlines())) > max(map(len, narrow.splitlines()))


@pytest.mark.parametrize("encoding", ["cp437", "cp1252", "ascii", "utf-8"])
def test_a_pipe_of_an_old_code_page_gets_the_drawing_in_marks_it_has(encoding):
    done = subprocess.run(
        [sys.executable, "-m", "estimator", "options", str(JOB)],
        capture_output=True,
        env=os.environ | {"PYTHONIOENCODING": encoding, "PYTHONUTF8": "0"},
        check=False,
    )
    assert done.returncode == 0
    text = done.stdout.decode(encoding)
    assert "\x1b" not in text
    drawn = next(line for line in text.splitlines() if line.startswith("2.5 ft"))
    assert drawn.count("?") == 0
    assert max(map(len, text.splitlines())) <= 80
