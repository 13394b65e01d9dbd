"""`estimator start` at a real pseudo-terminal, in a pipe, stopped, killed and closed; a house with a tired person's mistakes."""

import os
import random
import signal
import subprocess
import sys
import tomllib

import pytest

from estimator.cli.views.table import cells_wide

TIRED: tuple[tuple[str, str], ...] = (
    # what is typed, and the prompt that comes after it
    ("", "Day of the visit [", ),
    ("11/16/2026", "Your name:"),
    ("Ines Calowy", "Quote in English, Spanish or both [English]:"),
    ("back", "Your name [Ines Calowy]:"),
    ("Ines Calloway", "Quote in English, Spanish or both [English]:"),
    ("bothe", "Quote in English, Spanish or both [both]:"),
    ("", "Customer's name:"),
    ("417 Larkspur Court", "Address of the house:"),
    ("undo", "Customer's name:"),
    ("Wren Castellane", "Address of the house:"),
    ("417 Larkspur Court, Fernbrook", "Phone:"),
    ("", "E-mail:"),
    ("", "Built in what year:"),
    ("19 62", "Built in what year:"),
    ("1962", "[slab, tendons unknown]:"),
    ("slba", "Floor [slab, tendons unknown]:"),
    ("?", "Floor [slab, tendons unknown]:"),
    ("slab", "Which paper proves that it has no tendons:"),
    ("no stamp", "Which paper proves that it has no tendons:"),
    ("", "How thick is the slab:"),
    ("four", "How thick is the slab:"),
    ("4”", "How far is the slab's top above the ground:"),
    ("", "deep and wide, or none:"),
    ("24 x 12", "[24in deep 12in wide]:"),
    ("", "Soil:"),
    ("clay", "Soil:"),
    ("firm cly", "Soil [firm clay]:"),
    ("", "Does the ground swell and shrink:"),
    ("yes", "Place, by its row in your tables [unknown]:"),
    ("dmo", "Place, by its row in your tables [demo]:"),
    ("y", "City sewer or septic [city]:"),
    ("", "Does somebody live there now [yes]:"),
    ("", "What drains there:"),
    ("2 baths, kitchn, washer", "What drains there [2 baths, 1 kitchen, washer]:"),
    ("", "[unknown]:"),
    ("copper", "[unknown]:"),
    ("nothing", "Floor over the pipe:"),
    ("tile", "What a square foot of it costs, put back:"),
    ("ask", "What a square foot of it costs, put back:"),
    ("$14 a sq ft", "Only a trial, as that place is invented [yes]:"),
    ("", "Narrowest gate:"),
    ("3'6", "How far the spoil is carried:"),
    ("go built", "Built in what year [1962]:"),
    ("1967", "How far the spoil is carried:"),
    ("35 ft", "Can a small digger get to the yard pipe [yes]:"),
    ("", "Are the public utilities marked [no]:"),
    ("", "Who looks after the excavation:"),
    ("Teo Marlow", "Name of the line [main]:"),
    ("", "Size of the pipe [4 in]:"),
    ("", "Pipe: cast iron, clay, PVC, ABS …:"),
    ("ci", "Was a camera in it [yes]:"),
    ("", "main>"),
    ("2.2 yard lawn", "main (no pass yet)>"),
    ("pass front clnout to house", "main>"),
    ("riser 26in", "main>"),
    ("5.3 slab tile", "main>"),
    ("5.3 invert 30in below slab", "main>"),
    ("7-30 scl 35, drags", "main>"),
    ("35%", "main>"),
    ("14 wye 3in left live proven called hall bath", "main>"),
    ("no 14.4", "main>"),
    ("16-24 grv sharp. like a saw", "main>"),
    ("18.6 hloe 3in, dirt", "“hloe” means [hole]:"),
    ("", "main>"),
    ("18.6 loc 25.5in under tile, 12-9 from frt wall, flag A", "main>"),
    ("19 roots 30%", "main>"),
    ("undo", "main>"),
    ("42.6 end closet bend", "main>"),
    ("done", "Where does it end [city main]:"),
    ("", "Another line? Its name, or Enter:"),
    ("", "What was tested, or Enter:"),
    ("under slab", "Whole, isolated or new pipe [whole]:"),
    ("", "Lines and branches in the test:"),
    ("main", "[routine]:"),
    ("before lift", "Day of the test ["),
    ("", "Where the ball sat:"),
    ("front cleanout, house side", "Sizes of the open risers:"),
    ("4,4,2", "Minutes and drop:"),
    ("5 min 3/8, 10 min 7/8", "Did the ball seal [yes]:"),
    ("", "Passed, failed or could not be sealed:"),
    ("failled", "Passed, failed or could not be sealed [failed]:"),
    ("", "Another test? What was tested, or Enter:"),
    ("none", "Wet lawn, smell, a hole in the yard; or Enter:"),
    ("", "Name and legs, or Enter:"),
    ("", "[none]:"),
    ("planned jan 2027", "Who lifts:"),
    ("Fernbrook Lifting (invented)", "How many piers:"),
    ("14", "Insurance company, if one is asked to pay:"),
    ("no", "Do they want the floors left whole:"),
    ("y", "What they asked for, in their words:"),
    ("slow hall bath", "Selling on:"),
)  # fmt: skip


def start_over(keyboard, folder, **more):
    terminal = keyboard(folder, "start", "job.toml", **more)
    terminal.until("Job number [")
    return terminal


def typed(terminal, pairs) -> None:
    for answer, prompt in pairs:
        terminal.types(answer, prompt)


def run(folder, *words: str, given: bytes | None = None, **environment: str) -> subprocess.CompletedProcess:
    env = {k: v for k, v in os.environ.items() if not k.startswith("ESTIMATOR_")} | environment
    return subprocess.run(
        [sys.executable, "-m", "estimator", *words], input=given, capture_output=True, cwd=folder, env=env, check=False
    )


def test_a_whole_house_with_a_tired_persons_mistakes_from_nothing_to_options(here, keyboard):
    terminal = start_over(keyboard, here)
    typed(terminal, TIRED)
    os.write(terminal.ours, b"\r")
    code, seen = terminal.ends()
    assert code == 0
    assert seen.rstrip().endswith("Next: estimator check job.toml")
    data = tomllib.loads((here / "job.toml").read_text("utf-8"))
    assert (data["job"]["prepared_by"], data["house"]["built"], data["house"]["soil"]) == (
        "Ines Calloway",
        1967,
        "firm clay",
    )
    assert data["words"] == {"hloe": "hole"}
    log = (here / "main.txt").read_text("utf-8").splitlines()
    assert log[0] == "pass front clnout to house, riser 26in"
    assert "14 no 14.4 wye 3in left live proven called hall bath" in log
    assert not any(line.startswith("#?") or "roots" in line for line in log)
    check = run(here, "check", "job.toml")
    assert check.returncode == 0, check.stderr.decode()
    assert b"hole 3 in, soil seen" in check.stdout
    options = run(here, "options", "job.toml")
    assert options.returncode == 0, options.stderr.decode()
    assert b"$" in options.stdout


@pytest.mark.parametrize("columns", [60, 80])
def test_nothing_the_program_says_runs_over_the_edge(here, columns):
    """What somebody types may; the lines of the program may not."""
    given = "".join(answer + "\n" for answer, _ in TIRED[:62]) + "list\ndone\ndone\nlist\n"
    done = run(here, "start", "job.toml", given=given.encode(), COLUMNS=str(columns))
    lines = [line for line in done.stdout.decode().splitlines() if not any(m in line for m in ("main>", "]: ", ": "))]
    assert len(lines) > 40
    assert max(map(cells_wide, lines)) <= columns


def test_a_killed_session_goes_on_without_loss(here, keyboard):
    """SIGKILL after three answers chosen by the seed 1; the last answer typed before it is there each time."""
    places = sorted(random.Random(1).sample(range(4, 58), 3))
    begun = 0
    terminal = start_over(keyboard, here)
    for place in places:
        typed(terminal, TIRED[begun:place])
        terminal.child.send_signal(signal.SIGKILL)
        terminal.ends()
        assert tomllib.loads((here / "job.toml").read_text("utf-8"))
        terminal = keyboard(here, "start", "--resume", "job.toml")
        prompt = TIRED[place - 1][1]
        terminal.until(prompt.replace(" [Ines Calowy]", ""))
        begun = place
    typed(terminal, TIRED[begun:])
    os.write(terminal.ours, b"\r")
    assert terminal.ends()[0] == 0
    check = run(here, "check", "job.toml")
    assert check.returncode == 0, check.stderr.decode()
    assert b"hole 3 in, soil seen" in check.stdout


def test_a_closed_window_keeps_what_was_answered(here, keyboard):
    terminal = start_over(keyboard, here)
    typed(terminal, TIRED[:5])
    os.close(terminal.ours)
    terminal.child.wait(timeout=30)
    assert tomllib.loads((here / "job.toml").read_text("utf-8"))["job"]["prepared_by"] == "Ines Calloway"
    assert sorted(p.name for p in here.iterdir()) == ["job.toml"]


def test_stopping_by_hand_says_what_was_kept_and_how_to_go_on(here, keyboard):
    terminal = start_over(keyboard, here)
    typed(terminal, TIRED[:3])
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
    assert (here / "main.txt").read_text("utf-8").splitlines()[2] == "18.6 hole 3in, soil seen"


def test_somebody_who_only_types_the_log_is_asked_the_rest_afterwards(here):
    given = "pass front cleanout to house, riser 26in\n18.6 hole 3in\ndone\ncity\n4\nci\n2026-7\n"
    done = run(here, "start", "job.toml", "--log", "main", given=given.encode())
    assert done.returncode == 0
    data = tomllib.loads((here / "job.toml").read_text("utf-8"))
    assert data["job"]["number"] == "2026-7"
    assert (data["line"][0]["size"], data["line"][0]["pipe"]) == ("4 in", "cast iron")
    assert data["line"][0]["name"] == "main"
    assert (here / "main.txt").read_text("utf-8").count("\n") == 2


def test_answers_may_come_through_a_pipe(here):
    given = "".join(answer + "\n" for answer, _ in TIRED) + "\n"
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
