"""Outputs that take no letters, or only plain ones: a quiet end and plain substitutes, never a fault of the program."""

import os
import re
import subprocess
import sys
from pathlib import Path

import pytest

from estimator import demo
from estimator.cli.streams import plain

pytestmark = pytest.mark.usefixtures("keeps")

JOB = Path(demo.__file__).parent / "job.toml"
PLAIN_TERMINAL = {"LC_ALL": "C", "PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0"}
CLOSED = "import os, sys; os.close(int(sys.argv[1])); os.execv(sys.executable, [sys.executable, '-m', 'estimator', *sys.argv[2:]])"


def test_a_terminal_of_plain_letters_reads_spanish_without_question_marks_for_letters():
    words = [sys.executable, "-m", "estimator", "check", str(JOB), "--language", "es_US"]
    run = subprocess.run(words, capture_output=True, env=os.environ | PLAIN_TERMINAL)
    assert b"Traceback" not in run.stderr
    assert run.returncode == 0
    said = run.stdout.decode("ascii")
    assert "oxido" in said
    assert not re.search(r"\?\w", said)  # a question still ends in its mark


@pytest.mark.parametrize("words", [("options", str(JOB)), ("check", str(JOB)), ("--version",), ("--help",)])
@pytest.mark.parametrize("output", ["1", "2"])
def test_an_output_that_was_closed_before_the_start_is_a_quiet_end(output, words):
    run = subprocess.run([sys.executable, "-c", CLOSED, output, *words], capture_output=True)
    assert run.returncode == 0
    assert b"mistake of its own" not in run.stdout + run.stderr


@pytest.mark.parametrize(
    ("letters", "instead"), [("3″ × 4½ ft", '3" x 41/2 ft'), ("señal", "senal"), ("┌─┐", "+-+"), ("\ue000", "?")]
)
def test_what_stands_for_a_letter(letters, instead):
    assert "".join(map(plain, letters)) == instead
