"""Where the logs of an interview lie: beside the job, one a line, and nobody else's."""

import pytest

from estimator.fieldnotes import read_job

LINE = ["main", "", "ci", ""]
LOG = [
    "pass front cleanout to house, riser 28in",
    "5 roots 30%",
    "done",
    "",
    "city",
]  # Enter: what lies over it stays open


def lines(interview, path, answers):
    return interview(path, answers, at="line.0.name")


def test_each_line_has_a_file_of_its_own_name(tmp_path, interview):
    lines(interview, tmp_path / "job.toml", [*LINE, *LOG, "Hall bath / 2", "3", "pvc", "", *LOG])
    assert sorted(p.name for p in tmp_path.glob("*.txt")) == ["hall-bath-2.txt", "main.txt"]


def test_two_jobs_in_one_folder_keep_their_logs_apart(tmp_path, interview):
    lines(interview, tmp_path / "oak.toml", [*LINE, *LOG])
    lines(interview, tmp_path / "elm.toml", [*LINE, PASS2, "9 hole 2in", "done"])
    assert (tmp_path / "main.txt").read_text("utf-8").endswith("5 roots 30%\n")
    assert (tmp_path / "elm-main.txt").read_text("utf-8").endswith("9 hole 2in\n")


PASS2 = "pass roof vent, with flow, surface"


def test_a_text_file_from_a_phone_is_taken_by_its_name(tmp_path, interview):
    (tmp_path / "notes from phone.txt").write_text("pass front cleanout to house, riser 28in\n5 roots 30%\n", "utf-8")
    job, typist = lines(interview, tmp_path / "job.toml", [*LINE, "notes from phone.txt", "9 hole 2in", "done"])
    assert job.data["line"][0]["log"] == "notes from phone.txt"
    assert (tmp_path / "notes from phone.txt").read_text("utf-8").splitlines()[2] == "9 hole 2in"
    assert any("has 2 lines" in told for told in typist.told)


def test_a_log_inside_the_job_file_moves_beside_it_when_it_grows(tmp_path, interview):
    text = '[[line]]\nname = "main"\nsize = "4 in"\npipe = "clay"\nlog = """\npass vent, with flow, surface\n5 roots 30%\n"""\n'
    (tmp_path / "job.toml").write_text(text, "utf-8")
    job, _ = interview(tmp_path / "job.toml", ["go log", "9 hole 2in"])
    assert job.data["line"][0]["log"] == "main.txt"
    assert (tmp_path / "main.txt").read_text("utf-8").splitlines()[-2:] == ["5 roots 30%", "9 hole 2in"]


def test_done_says_once_what_is_left_to_mend(tmp_path, interview):
    job, typist = lines(interview, tmp_path / "job.toml", [*LINE, *LOG[:2], "9 roots here", "done", "done", "", "city"])
    assert "? asked back, kept as it is: 9 roots here" in typist.told
    assert job.data["line"][0]["ends"] == "city main"
    assert "9 roots here" in (tmp_path / "main.txt").read_text("utf-8")


def test_undo_brings_the_log_back_as_it_was(tmp_path, interview):
    _, typist = lines(interview, tmp_path / "job.toml", [*LINE, *LOG[:2], "no 6", "undo", "undo", "undo", "undo"])
    assert "taken back: no 6" in typist.told
    assert "taken back: 5 roots 30%" in typist.told
    assert "nothing to take back" in typist.told
    assert (tmp_path / "main.txt").read_text("utf-8") == ""


def test_a_log_taken_back_to_nothing_is_named_no_more(tmp_path, interview):
    job, _ = lines(interview, tmp_path / "job.toml", [*LINE, *LOG[:1], "undo"])
    assert "log" not in job.data["line"][0]


def test_back_in_a_log_is_the_camera_and_not_the_interview(tmp_path, interview):
    _, typist = lines(interview, tmp_path / "job.toml", [*LINE, *LOG[:2], "back"])
    assert any("the camera comes back" in told for told in typist.told)
    assert typist.asked[-1] == "main> "


def test_one_may_go_from_a_log_to_a_question_and_back(tmp_path, interview):
    job, _ = lines(interview, tmp_path / "job.toml", [*LINE, *LOG[:2], "go soil", "rock", "go log", "9 hole 2in"])
    assert job.data["house"]["soil"] == "rock"
    assert (tmp_path / "main.txt").read_text("utf-8").splitlines()[-1] == "9 hole 2in"


@pytest.mark.parametrize("word", ["?", "list", "undo", "done"])
def test_commands_are_no_lines_of_a_log(tmp_path, interview, word):
    lines(interview, tmp_path / "job.toml", [*LINE, *LOG[:2], word])
    rows = (tmp_path / "main.txt").read_text("utf-8").splitlines()
    assert word not in rows


HEAD = """[job]
number = "1"
date = 2026-11-18
prepared_by = "R. Example"

[customer]
name = "A. Customer (invented)"
site = "1 Demo Street"

[house]
floor = "basement"
jurisdiction = "demo"
"""
PHONE = "pass front cleanout to house, riser 28in\n5 roots 30%\n"


def test_a_misspelt_file_is_no_note_and_the_nearest_is_named(tmp_path, interview):
    (tmp_path / "notes.txt").write_text(PHONE, "utf-8")
    job, typist = lines(interview, tmp_path / "job.toml", [*LINE, "nots.txt", "notes.txt", "done"])
    assert "there is no file nots.txt beside the job. Did you mean notes.txt?" in typist.told
    assert job.data["line"][0]["log"] == "notes.txt"
    assert (tmp_path / "notes.txt").read_text("utf-8") == PHONE


@pytest.mark.parametrize(("answer", "taken"), [("", True), ("no", False)])
def test_a_file_named_after_some_lines_is_offered_and_they_are_kept(tmp_path, interview, answer, taken):
    (tmp_path / "notes.txt").write_text(PHONE, "utf-8")
    job, typist = lines(interview, tmp_path / "job.toml", [*LINE, "9 hole 2in", "notes.txt", answer, "done", "done"])
    assert any("Read notes.txt, and put what is typed here after it" in asked for asked in typist.asked)
    name = job.data["line"][0]["log"]
    assert name == ("notes.txt" if taken else "main.txt")
    assert (tmp_path / name).read_text("utf-8") == (PHONE if taken else "") + "9 hole 2in\n"


def test_a_line_left_unread_is_named_by_check(tmp_path, interview):
    """Else a hole that was typed would be in no price."""
    (tmp_path / "job.toml").write_text(HEAD, "utf-8")
    lines(interview, tmp_path / "job.toml", [*LINE, LOG[0], "9 murk 2in", "done", "done"])
    found = [p for p in read_job(tmp_path / "job.toml").problems if p.code == "log/asked"]
    assert [(p.place.file, p.place.line) for p in found] == [("main.txt", 2)]
    assert "9 murk 2in" in str(found[0].wrong)


def test_the_name_of_a_branch_is_kept(tmp_path, interview):
    lines = ["pass vent, with flow, surface", "13 branch kitchen left 2in live", "done", "done"]
    interview(tmp_path / "job.toml", ["main", "4", "ci", "yes", *lines], at="line.0.name")
    job, _ = interview(tmp_path / "job.toml", ["under slab", "whole", "kitchen"], at="water_test.0.section")
    assert job.data["water_test"][0]["covers"] == ["kitchen"]


def test_a_line_in_the_middle_is_changed_or_struck_by_its_number(tmp_path, interview):
    log = [
        "pass cleanout to house, surface",
        "0 yard",
        "5 roots 30%",
        "9 hole 2in",
        "lines",
        "change 3 6 roots 40%",
        "strike 4",
    ]
    _, typist = lines(interview, tmp_path / "job.toml", [*LINE, *log])
    assert "  3  5 roots 30%" in typist.told
    rows = (tmp_path / "main.txt").read_text("utf-8").splitlines()
    assert rows == ["pass cleanout to house, surface", "0 yard", "6 roots 40%", "# struck: 9 hole 2in"]
    lines(interview, tmp_path / "job.toml", [])
    _, typist = interview(tmp_path / "job.toml", ["strike 9", "change 3", "strike 3", "undo"], at="line.0.log")
    assert (tmp_path / "main.txt").read_text("utf-8").splitlines() == rows
    assert any("there is no line 9" in told for told in typist.told)


def test_the_drawing_of_a_log_letters_what_was_found_in_order_as_check_does(tmp_path, interview):
    log = ["pass cleanout to house, surface", "0 yard", "5 roots 30%", "9 hole 2in", "2 crack open", "40 end", "list"]
    _, typist = lines(interview, tmp_path / "job.toml", [*LINE, *log])
    assert any(told.startswith("a crack, b roots, c hole, ") for told in typist.told)
    drawn = next(told for told in typist.told if told.strip().startswith("0 ") and "a" in told and "c" in told)
    assert drawn.index("a") < drawn.index("b") < drawn.index("c")
