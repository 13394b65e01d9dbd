"""What the tests of the interview share: a person at a keyboard, faked or at a real pseudo-terminal."""

import codecs
import fcntl
import os
import pty
import re
import select
import signal
import struct
import subprocess
import sys
import termios
import time
from collections.abc import Iterable, Mapping, Sequence
from datetime import date
from pathlib import Path

import pytest

from estimator.cli.interview.interview import Interview
from estimator.cli.interview.job_file import JobFile
from estimator.cli.interview.next_question import END
from estimator.cli.reader import for_reader
from estimator.fieldnotes.answers import Known

TODAY = date(2026, 11, 18)
KNOWN = Known(
    today=TODAY,
    soils=("sand", "firm clay", "hard clay", "rock", "unknown"),
    places={"demo": "Demo County (invented)", "unknown": "A place nobody has checked yet"},
    number="2026-001",
)
Answers = Mapping[str, str | Sequence[str]]
CODES = re.compile(r"\x1b\[[0-9;?]*[A-Za-z]")


class Typist:
    """Answers each question of a `house` by its name; from the question `until` on, or without a house, gives `answers` in
    their order. Then, or after `most` lines, says no more. Keeps what it was asked, said and told."""

    live = False
    columns = 80

    def __init__(
        self, answers: Iterable[str] = (), house: Answers | None = None, until: str = "", most: int = 10**6
    ) -> None:
        self.answers = iter(answers)
        self.rest = {name: [a] if isinstance(a, str) else list(a) for name, a in (house or {}).items()}
        self.by_name, self.until, self.most = house is not None, until, most
        self.talk: Interview | None = None
        self.asked: list[str] = []
        self.given: list[str] = []
        self.told: list[str] = []

    def ask(self, prompt):
        self.asked.append(for_reader(prompt))
        answer = self._answer() if len(self.given) < self.most else None
        self.given += [] if answer is None else [answer]
        return answer

    def _answer(self):
        at = self.talk.at if self.talk else ""
        if self.by_name and (at != self.until or not self.until):
            left = self.rest.get(at)
            return left.pop(0) if left else ""
        self.by_name = False
        return next(self.answers, None)

    def question(self, text, default):
        return self.ask(f"{for_reader(text)} [{default}]" if default else text)

    def say(self, rows):
        self.told += [getattr(row, "text", row) for row in rows]

    def tell(self, text, look=""):
        self.told.append(for_reader(text))


def talked(
    path: Path,
    answers: Iterable[str] = (),
    known: Known = KNOWN,
    at: str = "",
    house: Answers | None = None,
    until: str = "",
    most: int = 10**6,
) -> tuple[JobFile, Typist]:
    """The interview in this process, with a person who types these answers and then leaves."""
    typist = Typist(answers, house, until, most)
    job = JobFile(path)
    talk = Interview(job, known, typist, at)
    typist.talk = talk
    talk.run()
    if talk.at == END:
        job.stand_at("")
    return job, typist


def _at_this_terminal() -> None:
    """Ctrl-C and a closed window reach the program, also when the tests run in the background, where Ctrl-C is ignored."""
    fcntl.ioctl(0, termios.TIOCSCTTY, 0)
    signal.signal(signal.SIGINT, signal.SIG_DFL)


class Keyboard:
    """The program at a real pseudo-terminal of so many columns."""

    def __init__(self, folder: Path, *words: str, columns: int = 80, **environment: str) -> None:
        self.ours, theirs = pty.openpty()
        fcntl.ioctl(theirs, termios.TIOCSWINSZ, struct.pack("HHHH", 40, columns, 0, 0))
        left_out = ("NO_COLOR", "COLUMNS", "LINES", "FORCE_COLOR", "ESTIMATOR_TABLES")
        env = {k: v for k, v in os.environ.items() if k not in left_out}
        self.child = subprocess.Popen(
            [sys.executable, "-m", "estimator", *words],
            stdin=theirs,
            stdout=theirs,
            stderr=theirs,
            cwd=folder,
            env=env | {"TERM": "dumb", "NO_COLOR": "1"} | environment,
            close_fds=True,
            start_new_session=True,
            preexec_fn=_at_this_terminal,
        )
        os.close(theirs)
        self.seen = ""
        self.letters = codecs.getincrementaldecoder("utf-8")("replace")  # a letter may come in two parts

    def _read(self, seconds: float) -> bool:
        """False at the end of what the program says."""
        if not select.select([self.ours], [], [], seconds)[0]:
            return True
        try:
            part = os.read(self.ours, 65536)
        except OSError:
            return False
        self.seen += CODES.sub("", self.letters.decode(part)).replace("\r", "")
        return bool(part)

    def _waits(self) -> bool:
        """The program has said all it has to say and sits at the keyboard: half a prompt ends like a whole one."""
        stat = Path(f"/proc/{self.child.pid}/stat")
        asleep = stat.read_text("ascii").rpartition(")")[2].split()[0] == "S" if stat.exists() else None
        return asleep is not False and not select.select([self.ours], [], [], 0 if asleep else 0.2)[0]

    def _said(self, wanted: str, seconds: float, what: str) -> str:
        """What is said up to the next prompt of this form; nothing where the program has ended."""
        start, deadline = len(self.seen), time.monotonic() + seconds
        while not (re.search(wanted, self.seen[start:]) and self._waits()):
            if time.monotonic() > deadline:
                self.child.kill()
                raise AssertionError(f"no {what} in:\n{self.seen[-1500:]}")
            if not self._read(0.02):
                return ""
        return self.seen[start:]

    def until(self, prompt: str, seconds: float = 20) -> str:
        """What is said up to this prompt, which stands at the end; one that ends in [ may go on to its ]:"""
        said = self._said(
            re.escape(prompt) + (r"[^\n]*\]:" if prompt.endswith("[") else "") + r" *\Z", seconds, f"“{prompt}”"
        )
        assert said, f"it ended without “{prompt}”:\n{self.seen[-1500:]}"
        return said

    def prompt(self, seconds: float = 20) -> str:
        """What is said up to the next prompt, whichever it is."""
        said = self.prompt_or_end(seconds)
        assert said, f"it ended:\n{self.seen[-1500:]}"
        return said

    def prompt_or_end(self, seconds: float = 20) -> str:
        """What is said up to the next prompt; nothing where the program has ended."""
        return self._said(r"(?::|>) \Z", seconds, "prompt")

    def answers(self, answer: str) -> str:
        """One line typed; what is said until the next prompt."""
        os.write(self.ours, answer.encode() + b"\r")
        return self.prompt()

    def types(self, answer: str, then: str) -> str:
        """One line typed; what is said until the next prompt."""
        os.write(self.ours, answer.encode() + b"\r")
        return self.until(then)

    def interrupted(self) -> tuple[int, str]:
        """Ctrl-C until it ends, as a person would: one typed in the very moment the prompt appears, before the line
        editor listens, is only noted by Python and acted on at the next key."""
        for _ in range(5):
            os.write(self.ours, b"\x03")
            quiet_until = time.monotonic() + 4
            while time.monotonic() < quiet_until and "Stopped." not in self.seen:
                if not self._read(0.2):
                    break
            if "Stopped." in self.seen or self.child.poll() is not None:
                break
        return self.ends()

    def ends(self, seconds: float = 30) -> tuple[int, str]:
        """Its exit code and all that was seen, when it has gone by itself."""
        deadline = time.monotonic() + seconds
        while self._read(0.2):
            if time.monotonic() > deadline:
                self.child.kill()
                raise AssertionError(f"it does not end:\n{self.seen[-1500:]}")
        code = self.child.wait(timeout=10)
        os.close(self.ours)
        return code, self.seen


@pytest.fixture(scope="session")
def talk():
    return talked


@pytest.fixture
def interview(talk):
    return talk


@pytest.fixture
def keyboard():
    return Keyboard


@pytest.fixture
def typist():
    return Typist


@pytest.fixture
def known():
    return KNOWN


@pytest.fixture
def here(tmp_path):
    """A folder beside no other job, so that no other test is leaned on."""
    folder = tmp_path / "jobs" / "house"
    folder.mkdir(parents=True)
    return folder
