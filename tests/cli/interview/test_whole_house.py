"""A whole house from an empty file, typed without a slip, with slips, and stopped after any answer."""

import importlib.util
import tomllib
from dataclasses import replace
from pathlib import Path

import pytest

from estimator.cli.interview import keeping
from estimator.cli.interview.steps import Step, found, steps
from estimator.fieldnotes import read_job
from estimator.fieldnotes.answers import Known

spec = importlib.util.spec_from_file_location("house", Path(__file__).parent / "house.py")
assert spec is not None and spec.loader is not None
house = importlib.util.module_from_spec(spec)
spec.loader.exec_module(house)
ANSWERS = house.ANSWERS


def test_a_whole_house_becomes_a_job_that_can_be_read(tmp_path, interview):
    job, typist = interview(tmp_path / "job.toml", ANSWERS)
    assert next(typist.answers, None) is None, "every answer was asked for"
    assert job.next_id == ""
    reading = read_job(tmp_path / "job.toml")
    assert reading.errors == ()
    read = reading.job
    assert read is not None
    assert (read.number, read.customer.name, read.house.floor) == ("2026-001", "Wren Castellane", "slab")
    assert [line.name for line in read.lines] == ["main", "hall bath"]
    assert [f.kind for f in read.lines[0].findings] == ["scale", "channel", "hole"]
    assert read.lines[1].joins is not None
    assert read.lines[1].joins.line == "main"
    assert read.water_tests[0].readings == ((0.0, 0.0), (5.0, 0.375), (10.0, 0.875), (20.0, 1.625))
    assert read.reroutes[0].legs[1].length_ft == 26
    assert read.foundation.piers == 14
    assert read.wishes.keep_floors


def test_nobody_is_asked_about_a_slab_who_has_a_basement(tmp_path, interview):
    _, typist = interview(tmp_path / "job.toml", [*ANSWERS[:9], "basement", *[""] * 12])
    assert not any("slab" in asked for asked in typist.asked[10:])


@pytest.mark.parametrize("count", range(0, len(ANSWERS), 9))
def test_stopped_after_any_answer_it_goes_on_without_loss(tmp_path, interview, count):
    """Answers up to the n-th, a closed window, then the rest, make the same files as all of them at once."""
    interview(tmp_path / "at once" / "job.toml", ANSWERS)
    interview(tmp_path / "twice" / "job.toml", ANSWERS[:count])
    interview(tmp_path / "twice" / "job.toml", ANSWERS[count:])
    for name in ("job.toml", "main.txt"):
        assert (tmp_path / "twice" / name).read_text("utf-8") == (tmp_path / "at once" / name).read_text("utf-8")


@pytest.mark.parametrize("count", range(1, len(ANSWERS), 11))
def test_at_every_moment_the_file_is_whole_and_holds_all_answers_so_far(tmp_path, interview, count):
    interview(tmp_path / "job.toml", ANSWERS[:count])
    data = tomllib.loads((tmp_path / "job.toml").read_text("utf-8"))
    assert data["job"]["number"] == "2026-001"
    if count > 4:
        assert data["customer"]["name"] == "Wren Castellane"
    assert [p.name for p in tmp_path.iterdir() if "tmp" in p.name] == []


def test_a_write_that_fails_leaves_the_file_as_it_was(tmp_path, interview, monkeypatch):
    job, _ = interview(tmp_path / "job.toml", ANSWERS[:6])
    before = (tmp_path / "job.toml").read_bytes()

    def refuse(*given: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(keeping.os, "replace", refuse)
    with pytest.raises(OSError, match="No space"):
        job.put(("customer",), {"phone": "555-0100"})
    assert (tmp_path / "job.toml").read_bytes() == before
    assert [p.name for p in tmp_path.iterdir()] == ["job.toml"]


def test_back_asks_the_question_before_again_and_shows_its_answer(tmp_path, interview):
    job, typist = interview(tmp_path / "job.toml", ["", "11/16", "Ines Caloway", "back", "Ines Calloway", "English"])
    assert typist.asked[4] == "Your name [Ines Caloway]"
    assert job.data["job"]["prepared_by"] == "Ines Calloway"
    assert typist.asked[5].startswith("Quote in English"), "it goes on where it was"


def test_undo_takes_the_last_answer_out_of_the_file(tmp_path, interview):
    job, typist = interview(tmp_path / "job.toml", ["", "11/16", "Ines Calloway", "undo"])
    assert "prepared_by" not in job.data["job"]
    assert typist.asked[-1] == "Your name"


def test_undo_twice_takes_two_back_and_an_older_value_comes_again(tmp_path, interview):
    answers = [*ANSWERS[:9], "go name", "Somebody Else", "undo", "undo"]
    job, typist = interview(tmp_path / "job.toml", answers)
    assert job.data["customer"]["name"] == "Wren Castellane"
    assert "house" not in job.data
    assert typist.asked[-1] == "Built in what year"


def test_a_skipped_question_is_found_again_and_then_it_goes_on_where_it_was(tmp_path, interview):
    job, typist = interview(tmp_path / "job.toml", [*ANSWERS[:9], "go phone", "555-0199", ""])
    assert job.data["customer"]["phone"] == "555-0199"
    assert typist.asked[-1].startswith("How thick") or typist.asked[-2].startswith("Floor")


@pytest.mark.parametrize(
    ("words", "asked"),
    [("soil", "Soil"), ("line 2", "Name of the line"), ("house", "Built"), ("hall bath size", "Size"), ("tests", "What was tested")],
)  # fmt: skip
def test_a_question_is_found_by_what_people_call_it(tmp_path, interview, words, asked):
    interview(tmp_path / "job.toml", ANSWERS)
    _, typist = interview(tmp_path / "job.toml", [f"go {words}"])
    assert typist.asked[-1].startswith(asked)


def test_every_name_that_list_shows_may_be_gone_to(tmp_path, interview):
    """Of several tests the last is meant; a name that stands in two parts is the first's, and the other is named."""
    job, _ = interview(tmp_path / "job.toml", ANSWERS)
    for step in steps(job.data):
        name = step.question.key.replace("_", " ")
        there, _ = found(name, job.data)
        assert isinstance(there, Step), name
        assert there.question.key == step.question.key, name
    two = {"water_test": [{"section": "whole house"}, {"section": "kitchen"}]}
    for name in ("covers", "plug", "readings", "result", "section"):
        there, others = found(name, two)
        assert isinstance(there, Step)
        assert (there.id, others) == (f"water_test.1.{name}", ())
    assert found("date", two)[1] == ("water test 2 date",)
    _, typist = interview(tmp_path / "job.toml", ["go covers"])
    assert typist.asked[-1].startswith("Lines and branches in the test")


def test_a_question_nobody_knows_gets_the_nearest(tmp_path, interview):
    _, typist = interview(tmp_path / "job.toml", ["go custmer"])
    assert "there is no question “custmer”; go customer?" in typist.told


def test_list_shows_answers_and_what_a_price_still_needs(tmp_path, interview):
    _, typist = interview(tmp_path / "job.toml", [*ANSWERS[:4], "", "", "", "", "1962", "list"])
    told = "\n".join(typist.told)
    assert "  built             1962" in told
    assert "  name   needed for a price" in told


def test_a_question_mark_explains_with_an_example_and_asks_again(tmp_path, interview):
    _, typist = interview(tmp_path / "job.toml", ["?"])
    assert "Such as: 2026-131" in typist.told
    assert typist.asked[0] == typist.asked[1]


def test_a_misspelt_word_is_offered_and_enter_takes_it(tmp_path, interview):
    job, typist = interview(tmp_path / "job.toml", [*ANSWERS[:9], "psot tensioned slab", "", ""])
    assert job.data["house"]["floor"] == "post-tensioned slab"
    assert typist.asked[10] == "Floor [post-tensioned slab]"


def test_undo_after_an_offer_only_refuses_the_offer(tmp_path, interview):
    job, typist = interview(tmp_path / "job.toml", [*ANSWERS[:9], "psot tensioned slab", "undo"])
    assert typist.asked[-1] == "Floor [slab, tendons unknown]"
    assert job.data["house"]["built"] == 1962


def test_comments_and_order_of_a_plain_file_are_kept(tmp_path, interview):
    text = '# mine\n[job] # the job\nnumber = "7"  # odd\n\n[house]\nfloor = "slab"\n'
    (tmp_path / "job.toml").write_text(text, "utf-8")
    interview(tmp_path / "job.toml", ["11/16"])
    now = (tmp_path / "job.toml").read_text("utf-8")
    for kept in ("# mine\n", "[job] # the job\n", 'number = "7"  # odd\n', '[house]\nfloor = "slab"\n'):
        assert kept in now
    assert tomllib.loads(now)["job"]["date"].isoformat() == "2026-11-16"


def test_a_plain_file_goes_on_at_what_a_price_needs(tmp_path, interview):
    (tmp_path / "job.toml").write_text('[job]\nnumber = "7"\ndate = 2026-11-18\nprepared_by = "I"\n', "utf-8")
    _, typist = interview(tmp_path / "job.toml", [])
    assert typist.asked == ["Customer's name"]


def test_a_file_mended_in_another_window_keeps_what_was_written_there(tmp_path, interview):
    path = tmp_path / "job.toml"
    job, _ = interview(path, ANSWERS[:6])
    path.write_text(path.read_text("utf-8").replace("[customer]", '[customer]\nemail = "w@example.com"'), "utf-8")
    job.put(("customer",), {"phone": "555-0147"})
    data = tomllib.loads(path.read_text("utf-8"))
    assert (data["customer"]["email"], data["customer"]["phone"]) == ("w@example.com", "555-0147")


def test_the_last_job_and_the_tables_give_the_defaults(tmp_path, interview, known):
    last = {
        "job": {"prepared_by": "Ines Calloway", "language": ["es_US"]},
        "house": {"soil": "firm clay", "jurisdiction": "demo"},
    }
    now: Known = replace(known, last=last, number="2026-132")
    job, _ = interview(tmp_path / "job.toml", ["", "", "", "", "W", "1 Elm", *[""] * 10], now)
    assert job.data["job"]["number"] == "2026-132"
    assert job.data["job"]["prepared_by"] == "Ines Calloway"
    assert job.data["job"]["language"] == ["es_US"]
    assert (job.data["house"]["soil"], job.data["house"]["jurisdiction"]) == ("firm clay", "demo")


def test_the_floor_of_the_last_house_is_not_taken_for_this_one(tmp_path, interview, known):
    """Another house may have tendons: nothing said stays unknown."""
    now = replace(known, last={"house": {"floor": "slab"}})
    _, typist = interview(tmp_path / "job.toml", ANSWERS[:9], now)
    assert typist.asked[-1].endswith("[slab, tendons unknown]")


def test_proof_of_no_tendons_and_the_edge_beam_go_into_the_house(tmp_path, interview):
    answers = [*ANSWERS[:10], "engineer's drawing", "4", "6 in", "24 x 12", "", "firm clay"]
    job, typist = interview(tmp_path / "job.toml", answers)
    assert job.data["house"]["tendons"] == "none, engineer's drawing"
    assert job.data["house"]["edge_beam"] == "24in deep 12in wide"
    assert typist.asked[14].endswith("[24in deep 12in wide]"), "which number is the depth is asked back"


def test_a_floor_said_later_brings_its_own_questions(tmp_path, interview):
    answers = [*ANSWERS[:9], "", "", "", "", "firm clay", "go floor", "slab", "scan of Nov 12"]
    job, typist = interview(tmp_path / "job.toml", answers)
    assert typist.asked[16] == "Which paper proves that it has no tendons"
    assert job.data["house"]["tendons"] == "none, scan of Nov 12"
    assert typist.asked[17].startswith("Does the ground swell"), "then it goes on where it was"


def test_what_is_written_by_hand_is_told_so(tmp_path, interview):
    _, typist = interview(tmp_path / "job.toml", ["?", "go overrides"])
    assert sum("By hand in the job file" in told for told in typist.told) == 2


def test_water_is_the_tests_and_the_water_lines_are_named_too(tmp_path, interview):
    _, typist = interview(tmp_path / "job.toml", [*ANSWERS[:9], "go water"])
    assert typist.asked[-1].startswith("What was tested")
    assert "also: go water lines" in typist.told


def test_an_offer_left_open_at_the_end_is_told(tmp_path, interview):
    _, typist = interview(tmp_path / "job.toml", [*ANSWERS[:9], "basment", "done"])
    assert any("was offered and not taken" in told for told in typist.told)


@pytest.mark.parametrize(
    ("log", "name", "offered"),
    [((), "yard", "city main"), ((), "kitchen", ""), (("5 branch 2in left live called kitchen",), "kitchen", "kitchen")],
)  # fmt: skip
def test_where_a_second_line_ends_is_offered_where_it_can_be_known(tmp_path, interview, log, name, offered):
    first = ["main", "", "ci", "", "pass cleanout to house, riser 2 ft", *log, "done", "city main"]
    _, typist = interview(
        tmp_path / "job.toml",
        [*first, name, "4", "clay", "", "pass cleanout to street, surface", "done"],
        at="line.0.name",
    )
    assert typist.asked[-1] == f"Where does it end{f' [{offered}]' if offered else ''}"


def test_two_lines_to_one_main_are_asked_whether_one_runs_into_the_other(tmp_path, interview):
    lines = ["main", "", "ci", "n", "20 ft", "city main", "yard", "4", "clay", "n", "50 ft", ""]
    _, typist = interview(tmp_path / "job.toml", lines, at="line.0.name")
    assert "ends at the city main; so does main: if it runs into yard, go main joins" in typist.told


@pytest.mark.parametrize("answer", ["i dont know", "dunno", "no idea", "not sure yet"])
def test_somebody_who_does_not_know_leaves_it_open_or_unknown(tmp_path, interview, answer):
    """Where `unknown` is an answer it is taken, elsewhere the question stays open; nobody is asked twice."""
    job, typist = interview(tmp_path / "job.toml", [*ANSWERS[:8], "1962", "basement", answer, answer, ""])
    assert job.data["house"]["soil"] == "unknown"
    assert "expansive_soil" not in job.data["house"]
    assert typist.asked[-1].startswith("City sewer"), "nothing is asked twice"


def test_a_year_of_two_digits_is_offered_whole(tmp_path, interview):
    job, typist = interview(tmp_path / "job.toml", [*ANSWERS[:8], "78", "", "basement"])
    assert job.data["house"]["built"] == 1978
    assert typist.asked[9] == "Built in what year [1978]"


def test_a_place_said_later_brings_the_question_whether_it_is_a_trial(tmp_path, interview):
    answers = [
        *ANSWERS[:8],
        "1962",
        "basement",
        "firm clay",
        "",
        "unknown",
        *[""] * 9,
        "go jurisdiction",
        "demo",
        "yes",
    ]
    job, _ = interview(tmp_path / "job.toml", answers)
    assert job.data["job"]["demo"] is True


def test_a_yes_to_another_line_is_no_name_of_one(tmp_path, interview):
    lines = ["main", "", "ci", "n", "20 ft", "city main", "y", "kitchen"]
    job, typist = interview(tmp_path / "job.toml", lines, at="line.0.name")
    assert "which? such as: main, yard, kitchen" in typist.told
    assert [line["name"] for line in job.data["line"]] == ["main", "kitchen"]


def test_no_is_no_insurer_and_no_day(tmp_path, interview):
    answers = ["yes", "Some Mutual", "", "C-7", "go insurer", "no", "yes", "", "no"]
    job, typist = interview(tmp_path / "job.toml", answers, at="customer.insurer")
    assert job.data.get("customer", {}) == {}
    assert any("what is it called" in told for told in typist.told)
    assert "selling" not in job.data["wishes"]


def test_stations_stay_as_they_were_told_once_it_is_said_where_the_line_ends(tmp_path, interview):
    """The slab edge at reading 12 and a hole at 20.2: 20.2 − 12 = 8.2 inside [computed], before and after."""
    house_answers = [*ANSWERS[: ANSWERS.index("main")]]
    path = tmp_path / "job.toml"
    interview(path, house_answers)
    log = ["pass front cleanout to house, riser 28in", "3 yard", "12 slab tile", "20.2 hole 4in", "done"]
    _, typist = interview(path, ["yard", "4", "clay", "no", "30 ft", "city main"], at="line.0.name")
    _, typist = interview(path, ["main", "4", "ci", "yes", *log, "yard at 2"], at="line.1.name")
    assert any(told.strip().startswith("8.2") and "hole" in told for told in typist.told)
    main = read_job(path).job.lines[1]
    assert main.joins is not None
    assert (main.zero, main.findings[0].stretch.from_ft) == ("slab edge", 8.2)


def test_what_is_odd_is_asked_back_once(tmp_path, interview):
    job, typist = interview(
        tmp_path / "job.toml", ["both", "Both", "4 Elm", "", "ana at mail", "ana@example.com"], at="customer.name"
    )
    assert job.data["customer"] == {"name": "Both", "site": "4 Elm", "email": "ana@example.com"}
    assert sum("same again keeps it" in told for told in typist.told) == 2
    other, _ = interview(tmp_path / "other.toml", ["both", "no", "Wren"], at="customer.name")
    assert other.data["customer"] == {"name": "Wren"}


def test_enter_after_a_soil_nobody_knows_takes_no_guess(tmp_path, interview):
    job, typist = interview(tmp_path / "job.toml", ["fat clay", ""], at="house.soil")
    assert "soil" not in job.data.get("house", {})
    assert typist.asked[1] == "Soil"
