"""`estimator start` at a real pseudo-terminal, in a pipe, stopped, killed and closed; a house with a tired person's mistakes."""

import importlib.util
import os
import random
import signal
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

from estimator.cli.views.table import cells_wide

pytestmark = pytest.mark.usefixtures("keeps")

spec = importlib.util.spec_from_file_location("house", Path(__file__).parent / "house.py")
assert spec is not None and spec.loader is not None
house = importlib.util.module_from_spec(spec)
spec.loader.exec_module(house)


@pytest.fixture(scope="module")
def tired(tmp_path_factory, talk) -> list[str]:
    """What a tired person types, line by line, found by asking in this process; questions are answered by their names."""
    _, typist = talk(tmp_path_factory.mktemp("tired") / "job.toml", house=house.TIRED)
    assert [name for name, left in typist.rest.items() if left] == [], "every answer was asked for"
    return typist.given


def start_over(keyboard, folder, **more):
    terminal = keyboard(folder, "start", "job.toml", **more)
    terminal.until("Job number [")
    return terminal


def typed(terminal, answers) -> None:
    for answer in answers:
        terminal.answers(answer)


def run(folder, *words: str, given: bytes | None = None, **environment: str) -> subprocess.CompletedProcess:
    env = {k: v for k, v in os.environ.items() if not k.startswith("ESTIMATOR_")} | environment
    return subprocess.run(
        [sys.executable, "-m", "estimator", *words], input=given, capture_output=True, cwd=folder, env=env, check=False
    )


def test_a_whole_house_with_a_tired_persons_mistakes_from_nothing_to_options(here, keyboard, tired):
    terminal = start_over(keyboard, here)
    typed(terminal, tired[:-1])
    os.write(terminal.ours, tired[-1].encode() + b"\r")
    code, seen = terminal.ends()
    assert code == 0
    assert seen.rstrip().endswith("Next: estimator check job.toml")
    data = tomllib.loads((here / "job.toml").read_text("utf-8"))
    assert (data["job"]["prepared_by"], data["house"]["built"], data["house"]["soil"]) == (
        "Ines Calloway",
        1967,
        "firm clay",
    )
    assert (data["site"]["competent_person"], data["line"][0]["ends"]) == ("Teo Marlow", "city main")
    log = (here / "main.txt").read_text("utf-8").splitlines()
    assert log[0] == "pass front clnout to house"
    assert "14 wye 3in left live proven called hall bath" in log and "no 14.4" in log
    assert not any(line.startswith("#?") or "roots" in line for line in log)
    check = run(here, "check", "job.toml")
    assert check.returncode == 0, check.stderr.decode()
    assert b"hole 3 in, soil seen" in check.stdout
    options = run(here, "options", "job.toml")
    assert options.returncode == 0, options.stderr.decode()
    assert b"$" in options.stdout


@pytest.mark.parametrize("columns", [60, 80])
def test_nothing_the_program_says_runs_over_the_edge(here, columns, tired):
    """What somebody types may; the lines of the program may not."""
    given = "".join(answer + "\n" for answer in tired[: tired.index("done")]) + "list\ndone\ndone\nlist\n"
    done = run(here, "start", "job.toml", given=given.encode(), COLUMNS=str(columns))
    lines = [line for line in done.stdout.decode().splitlines() if not any(m in line for m in ("main>", "]: ", ": "))]
    assert len(lines) > 40
    assert max(map(cells_wide, lines)) <= columns


def test_a_killed_session_goes_on_without_loss(here, keyboard, tired):
    """SIGKILL after three answers chosen by the seed 1; the last answer typed before it is there each time, and nothing else
    is left lying in the folder."""
    places = sorted(random.Random(1).sample(range(4, len(tired) - 5), 3))
    begun = 0
    terminal = start_over(keyboard, here)
    for place in places:
        typed(terminal, tired[begun:place])
        terminal.child.send_signal(signal.SIGKILL)
        terminal.ends()
        assert tomllib.loads((here / "job.toml").read_text("utf-8"))
        assert {p.name for p in here.iterdir()} <= {"job.toml", "main.txt"}
        terminal = keyboard(here, "start", "--resume", "job.toml")
        terminal.prompt()
        begun = place
    typed(terminal, tired[begun:-1])
    os.write(terminal.ours, tired[-1].encode() + b"\r")
    assert terminal.ends()[0] == 0
    check = run(here, "check", "job.toml")
    assert check.returncode == 0, check.stderr.decode()
    assert b"hole 3 in, soil seen" in check.stdout


def test_a_closed_window_keeps_what_was_answered(here, keyboard, tired):
    terminal = start_over(keyboard, here)
    typed(terminal, tired[:5])
    os.close(terminal.ours)
    terminal.child.wait(timeout=30)
    assert tomllib.loads((here / "job.toml").read_text("utf-8"))["job"]["prepared_by"] == "Ines Calloway"
    assert sorted(p.name for p in here.iterdir()) == ["job.toml"]


def test_stopping_by_hand_says_what_was_kept_and_how_to_go_on(here, keyboard, tired):
    terminal = start_over(keyboard, here)
    typed(terminal, tired[:3])
    code, seen = terminal.interrupted()
    assert code == 130
    assert "Stopped. Kept: job.toml." in seen
    assert "estimator start --resume job.toml" in seen
    assert "Traceback" not in seen
    assert tomllib.loads((here / "job.toml").read_text("utf-8"))["job"]["prepared_by"] == "Ines Calowy"


def test_stopping_in_the_middle_of_a_log_keeps_the_log(here, keyboard):
    terminal = keyboard(here, "start", "job.toml", "--log", "main")
    terminal.until("main>")
    terminal.types("pass front cleanout to house, riser 26in", "main>")
    terminal.types("18.6 hole 3in", "main>")
    code, seen = terminal.interrupted()
    assert code == 130
    assert "Kept: job.toml, main.txt." in seen
    assert (here / "main.txt").read_text("utf-8").splitlines()[1] == "18.6 hole 3in"


def test_two_interviews_on_one_file_are_told_so(here, keyboard):
    terminal = start_over(keyboard, here)
    terminal.answers("2026-7")
    second = run(here, "start", "--resume", "job.toml", given=b"\n")
    assert second.returncode == 1
    assert b"another window" in second.stderr
    terminal.answers("11/16")
    assert terminal.child.poll() is None
    terminal.child.kill()
    terminal.ends()
    assert run(here, "start", "--resume", "job.toml", given=b"\n").returncode == 0, "a killed one holds nothing"
    assert tomllib.loads((here / "job.toml").read_text("utf-8"))["job"]["number"] == "2026-7"


def test_a_job_file_that_is_a_link_stays_one(here, tmp_path):
    real = tmp_path / "real.toml"
    real.write_text('[job]\nnumber = "7"\n', "utf-8")
    (here / "job.toml").symlink_to(real)
    assert run(here, "start", "--resume", "job.toml", given=b"11/16\nInes Calloway\n").returncode == 0
    assert (here / "job.toml").is_symlink()
    assert tomllib.loads(real.read_text("utf-8"))["job"]["prepared_by"] == "Ines Calloway"


def test_the_end_of_input_ends_it(here, keyboard):
    terminal = start_over(keyboard, here)
    os.write(terminal.ours, b"\x04")
    code, seen = terminal.ends()
    assert code == 0
    assert "Nothing was answered, so nothing was written." in seen
    assert list(here.iterdir()) == []


def test_the_arrow_key_brings_the_line_before_again(here, keyboard):
    terminal = keyboard(here, "start", "job.toml", "--log", "main", TERM="xterm")
    terminal.until("main>")
    terminal.types("pass front cleanout to house, riser 26in", "main>")
    terminal.types("18.6 hole 3in", "main>")
    os.write(terminal.ours, b"\x1b[A, dirt\r")
    terminal.until("main>")
    terminal.child.kill()
    terminal.ends()
    assert (here / "main.txt").read_text("utf-8").splitlines()[2] == "18.6 hole 3in, dirt"


def test_somebody_who_only_types_the_log_is_asked_the_rest_afterwards(here):
    given = "pass front cleanout to house, riser 26in\n18.6 hole 3in\ndone\nyard\n\ncity\n4\nci\n2026-7\n"
    done = run(here, "start", "job.toml", "--log", "main", given=given.encode())
    assert done.returncode == 0
    data = tomllib.loads((here / "job.toml").read_text("utf-8"))
    assert data["job"]["number"] == "2026-7"
    assert (data["line"][0]["size"], data["line"][0]["pipe"]) == ("4 in", "cast iron")
    assert data["line"][0]["name"] == "main"
    assert (here / "main.txt").read_text("utf-8").splitlines()[1:] == ["18.6 hole 3in", "18.6 yard"]


def test_answers_may_come_through_a_pipe(here, tired):
    given = "".join(answer + "\n" for answer in tired)
    done = run(here, "start", "job.toml", given=given.encode())
    assert done.returncode == 0, done.stderr.decode()
    assert done.stderr == b""
    text = done.stdout.decode()
    assert text.rstrip().endswith("Next: estimator check job.toml")
    assert "\x1b" not in text
    assert run(here, "check", "job.toml").returncode == 0


@pytest.mark.parametrize("encoding", ["cp437", "ascii", "utf-8"])
def test_an_old_code_page_is_no_hindrance(here, encoding):
    env = os.environ | {"PYTHONIOENCODING": encoding, "PYTHONUTF8": "0"}
    given = b"\n\nIn\xe9s \xff\x00\nboth\n\x1b[31m\n"
    done = subprocess.run(
        [sys.executable, "-m", "estimator", "start", "job.toml"],
        input=given,
        capture_output=True,
        cwd=here,
        env=env,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    assert b"Traceback" not in done.stderr
    assert tomllib.loads((here / "job.toml").read_text("utf-8"))["job"]["language"] == ["en_US", "es_US"]


def test_a_job_that_is_there_is_not_begun_anew_through_a_pipe(here):
    (here / "job.toml").write_text('[job]\nnumber = "7"\n', "utf-8")
    done = run(here, "start", "job.toml", given=b"8\n")
    assert done.returncode == 1
    assert b"start --resume job.toml" in done.stdout
    assert (here / "job.toml").read_text("utf-8") == '[job]\nnumber = "7"\n'


@pytest.mark.parametrize(
    ("data", "said"),
    [(b"[job\n", b"job.toml:1:5"), (b"\xff\xfe[\x00", b"UTF-16"), (b"PK\x03\x04zip", b"not a text file")],
)  # fmt: skip
def test_a_file_that_cannot_be_read_is_said_and_left_alone(here, data, said):
    (here / "job.toml").write_bytes(data)
    done = run(here, "start", "--resume", "job.toml", given=b"8\n")
    assert done.returncode == 1
    assert said in done.stderr
    assert (here / "job.toml").read_bytes() == data


def test_a_folder_gets_a_job_file_of_its_own(here):
    assert run(here, "start", "larkspur", given=b"2026-9\n").returncode == 0
    assert tomllib.loads((here / "larkspur" / "job.toml").read_text("utf-8"))["job"]["number"] == "2026-9"


def test_the_next_job_beside_leans_on_the_last(here):
    run(here, "start", "one", given=b"2026-131\n11/16\nInes Calloway\nboth\n")
    done = run(here, "start", "two", given=b"")
    assert b"Your name [Ines Calloway]" not in done.stdout, "the first question has no answer yet"
    assert done.stdout.decode().count("Job number [") == 1
    done = run(here, "start", "two", given=b"\n\n\n\n")
    text = done.stdout.decode()
    assert "Your name [Ines Calloway]" in text
    assert "Quote in English, Spanish or both [both]" in text
    year = text.partition("Job number [")[2][:4]
    assert f"[{year}-" in text
