"""`estimator check` at a pseudo-terminal: lines that are asked back take their answers there, and nothing else is touched."""

import os
import tomllib

from estimator.cli.interview.answering import PROMPT, answer_all

HEAD = """# kept remark
[job]
number = "1"
date = 2026-11-18
prepared_by = "R. Example"
[customer]
name = "A. Customer"
site = "1 Demo Street"
[house]
floor = "slab"
jurisdiction = "demo"
[[line]]
name = "main"
size = "4 in"
pipe = "cast iron"
log = {log}
"""
LOG = """# typed at night
pass front cleanout to house, surface
0 yard lawn
25 slab
28 belly starts
30 roots 50
33 bad joint   ; in the hall
34 hole 2in
36 branch left
40 belly ends
44 pipe is shot
"""


def job_in(folder, log='"main.txt"', text=LOG):
    (folder / "job.toml").write_text(HEAD.format(log=log), "utf-8")
    (folder / "main.txt").write_text(text, "utf-8")
    return folder / "job.toml"


def test_answers_go_into_the_log_line_by_line_and_what_is_left_open_stays_as_it_was_typed(tmp_path, typist):
    job = job_in(tmp_path)
    person = typist(["1", "7", "1", "2", "", "2"])
    assert answer_all(job, person) == 4
    assert (tmp_path / "main.txt").read_text("utf-8").splitlines() == [
        *LOG.splitlines()[:4],
        "28 sag moderate starts ; typed: 28 belly starts",
        "30 roots 50% ; typed: 30 roots 50",
        "33 gap ; typed: 33 bad joint   , in the hall",
        "34 hole 2in",
        "36 branch 3in left ; typed: 36 branch left",
        "40 belly ends",
        "44 pipe is shot",
    ]
    assert job.read_text("utf-8") == HEAD.format(log='"main.txt"')
    assert "there is no answer 7" in person.told


def test_a_line_may_be_typed_again_or_kept_as_a_remark_and_is_asked_anew_where_it_still_leaves_something_open(
    tmp_path, typist
):
    job = job_in(tmp_path, text="pass front cleanout to house, surface\n0 slab\n30 roots 50\n36 branch left\n")
    answer_all(job, typist(["30 roots", "30 roots light", "-"]))
    assert (tmp_path / "main.txt").read_text("utf-8").splitlines()[2:] == ["30 roots light", "# 36 branch left"]


def test_a_log_inside_the_job_file_is_answered_too(tmp_path, typist):
    job = job_in(tmp_path, log="'''\npass front cleanout to house, surface\n0 slab\n30 roots 50\n'''")
    assert answer_all(job, typist(["1"])) == 1
    name = tomllib.loads(job.read_text("utf-8"))["line"][0]["log"]
    assert "30 roots 50% ; typed: 30 roots 50" in (tmp_path / name).read_text("utf-8").splitlines()


def test_whoever_goes_away_in_the_middle_keeps_what_was_answered(tmp_path, typist):
    job = job_in(tmp_path)
    answer_all(job, typist(["1"]))
    assert (tmp_path / "main.txt").read_text("utf-8") == LOG.replace(
        "30 roots 50\n", "30 roots 50% ; typed: 30 roots 50\n"
    )


def test_check_asks_at_a_terminal_and_then_shows_the_job_as_it_now_stands(tmp_path, keyboard):
    job_in(tmp_path, text="pass front cleanout to house, surface\n0 slab\n30 roots 50\n32 end\n")
    screen = keyboard(tmp_path, "check", "job.toml")
    assert "2 30-50 roots" in screen.until(f"{PROMPT}:", seconds=60)
    os.write(screen.ours, b"1\r")
    code, seen = screen.ends(seconds=60)
    assert code == 1  # the invented place
    assert "roots 50 %" in seen.rpartition(str(PROMPT))[2]
