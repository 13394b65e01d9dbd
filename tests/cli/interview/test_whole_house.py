"""A whole house from an empty file, typed without a slip, with slips, and stopped after any answer."""

import importlib.util
import tomllib
from dataclasses import replace
from pathlib import Path

import pytest

from estimator.cli.interview.steps import Step, found, steps
from estimator.fieldnotes import read_job
from estimator.fieldnotes.answers import Known
from estimator.model.profile import Profile

spec = importlib.util.spec_from_file_location("house", Path(__file__).parent / "house.py")
assert spec is not None and spec.loader is not None
house = importlib.util.module_from_spec(spec)
spec.loader.exec_module(house)
PLAIN, TIRED, AWKWARD = house.PLAIN, house.TIRED, house.AWKWARD


def test_a_whole_house_becomes_a_job_that_can_be_read(tmp_path, interview):
    job, typist = interview(tmp_path / "job.toml", house=PLAIN)
    assert [name for name, left in typist.rest.items() if left] == [], "every answer was asked for"
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
    _, typist = interview(tmp_path / "job.toml", house=PLAIN | {"house.floor": "basement"}, until="line.0.name")
    after = typist.asked[next(n for n, text in enumerate(typist.asked) if text.startswith("Floor")) + 1 :]
    assert not any("slab" in asked for asked in after)


def test_a_crawl_space_is_asked_how_high_and_how_wet_it_is(tmp_path, interview):
    low = PLAIN | {"house.floor": "crawl space", "house.crawl_height": "14", "house.crawl_mud": "yes"}
    job, _ = interview(tmp_path / "job.toml", house=low, until="house.soil")
    assert (job.data["house"]["crawl_height"], job.data["house"]["crawl_mud"]) == ("1 ft 2 in", True)


def test_the_firms_own_facts_are_asked_while_a_row_reads_one(tmp_path, interview, known):
    _, typist = interview(tmp_path / "none" / "job.toml", house=PLAIN, until="site.gate")
    assert not any("hold here" in asked for asked in typist.asked)
    firms = replace(known, own_facts=("steep yard", "dogs"))
    told = PLAIN | {"house.own_facts": ("stepe yard, puppies", "steep yard")}
    job, typist = interview(tmp_path / "own" / "job.toml", known=firms, house=told, until="site.gate")
    assert any(asked.startswith("Your own facts: steep yard, dogs. Which of these hold here") for asked in typist.asked)
    assert job.data["house"]["own_facts"] == ["steep yard", "not dogs"]


@pytest.fixture(name="at_once", scope="module")
def _at_once(tmp_path_factory, talk):
    """The files of a house whose questions were all answered in one go."""
    folder = tmp_path_factory.mktemp("at once")
    talk(folder / "job.toml", house=PLAIN)
    return folder


@pytest.mark.parametrize("count", range(0, 90, 13))
def test_stopped_after_any_answer_it_goes_on_without_loss(tmp_path, interview, at_once, count):
    """Answers up to the n-th, a closed window, then the rest, make the same files as all of them at once."""
    _, first = interview(tmp_path / "twice" / "job.toml", house=PLAIN, most=count)
    interview(tmp_path / "twice" / "job.toml", house=first.rest)
    for name in ("job.toml", "main.txt"):
        assert (tmp_path / "twice" / name).read_text("utf-8") == (at_once / name).read_text("utf-8")


@pytest.mark.parametrize("count", range(1, 90, 17))
def test_at_every_moment_the_file_is_whole_and_holds_all_answers_so_far(tmp_path, interview, count):
    interview(tmp_path / "job.toml", house=PLAIN, most=count)
    data = tomllib.loads((tmp_path / "job.toml").read_text("utf-8"))
    assert data["job"]["number"] == "2026-001"
    if count > 4:
        assert data["customer"]["name"] == "Wren Castellane"
    assert [p.name for p in tmp_path.iterdir() if "tmp" in p.name] == []


def test_a_write_that_fails_leaves_the_file_as_it_was(tmp_path, interview, monkeypatch):
    job, _ = interview(tmp_path / "job.toml", house=PLAIN, most=6)
    before = (tmp_path / "job.toml").read_bytes()

    def refuse(*given: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("estimator.disk.disk.Disk.replace", refuse)
    with pytest.raises(OSError, match="No space"):
        job.put(("customer",), {"phone": "555-0100"})
    assert (tmp_path / "job.toml").read_bytes() == before
    assert [p.name for p in tmp_path.iterdir()] == ["job.toml"]


# ── back, undo, go ────────────────────────────────────────────────────────────────────────────


def test_back_asks_the_question_before_again_and_shows_its_answer(tmp_path, interview):
    job, typist = interview(tmp_path / "job.toml", ["", "11/16", "Ines Caloway", "back", "Ines Calloway", "English"])
    assert typist.asked[4] == "Your name [Ines Caloway]"
    assert job.data["job"]["prepared_by"] == "Ines Calloway"
    assert typist.asked[5].startswith("Quote in English"), "it goes on where it was"


def test_back_and_enter_walks_over_every_question_to_where_it_was(tmp_path, interview):
    answers = ["", "11/16", "Ines Calloway", "both", "back", "back", "back", "", "", "", ""]
    job, typist = interview(tmp_path / "job.toml", answers)
    heads = [asked.partition(" [")[0] for asked in typist.asked[7:12]]
    assert heads == [
        "Day of the visit",
        "Your name",
        "Quote in English, Spanish or both",
        "Customer's name",
        "Address of the house",
    ]
    assert job.data["job"]["prepared_by"] == "Ines Calloway"


def test_undo_takes_the_last_answer_out_of_the_file(tmp_path, interview):
    job, typist = interview(tmp_path / "job.toml", ["", "11/16", "Ines Calloway", "undo"])
    assert "prepared_by" not in job.data["job"]
    assert typist.asked[-1] == "Your name"


def test_undo_twice_takes_two_back_and_an_older_value_comes_again(tmp_path, interview):
    then = ["go name", "Somebody Else", "undo", "undo"]
    job, typist = interview(tmp_path / "job.toml", then, house=PLAIN, until="house.floor")
    assert job.data["customer"]["name"] == "Wren Castellane"
    assert "house" not in job.data
    assert typist.asked[-1] == "Built in what year"


def test_a_skipped_question_is_found_again_and_then_it_goes_on_where_it_was(tmp_path, interview):
    job, typist = interview(tmp_path / "job.toml", ["go phone", "555-0199", ""], house=PLAIN, until="house.floor")
    assert job.data["customer"]["phone"] == "555-0199"
    assert typist.asked[-2].startswith("Floor")


@pytest.mark.parametrize(
    ("words", "asked"),
    [("soil", "Soil"), ("line 2", "Name of the line"), ("house", "Built"), ("hall bath size", "Size"), ("tests", "What was tested")],
)  # fmt: skip
def test_a_question_is_found_by_what_people_call_it(tmp_path, interview, words, asked):
    interview(tmp_path / "job.toml", house=PLAIN)
    _, typist = interview(tmp_path / "job.toml", [f"go {words}"])
    assert typist.asked[-1].startswith(asked)


def test_every_name_that_list_shows_may_be_gone_to(tmp_path, interview):
    """Of several tests the last is meant; a name that stands in two parts is the first's, and the other is named."""
    job, _ = interview(tmp_path / "job.toml", house=PLAIN)
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
    house = PLAIN | {"customer.name": "", "customer.site": ""}
    _, typist = interview(tmp_path / "job.toml", ["list"], house=house, until="house.floor")
    told = "\n".join(typist.told)
    assert "  built             1962" in told
    assert "  name   needed for a price" in told


def test_a_question_mark_explains_with_an_example_and_asks_again(tmp_path, interview):
    _, typist = interview(tmp_path / "job.toml", ["?"])
    assert "Such as: 2026-131" in typist.told
    assert typist.asked[0] == typist.asked[1]


def test_a_misspelt_word_is_offered_and_enter_takes_it(tmp_path, interview):
    then = ["psot tensioned slab", "", ""]
    job, typist = interview(tmp_path / "job.toml", then, house=PLAIN, until="house.floor")
    assert job.data["house"]["floor"] == "post-tensioned slab"
    assert "Floor [post-tensioned slab]" in typist.asked


def test_undo_after_an_offer_only_refuses_the_offer(tmp_path, interview):
    then = ["psot tensioned slab", "undo"]
    job, typist = interview(tmp_path / "job.toml", then, house=PLAIN, until="house.floor")
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
    job, _ = interview(path, house=PLAIN, most=6)
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
    job, _ = interview(
        tmp_path / "job.toml", [], now, house={"customer.name": "W", "customer.site": "1 Elm"}, until="site.gate"
    )
    assert job.data["job"]["number"] == "2026-132"
    assert job.data["job"]["prepared_by"] == "Ines Calloway"
    assert job.data["job"]["language"] == ["es_US"]
    assert job.data["house"]["jurisdiction"] == "demo"
    assert "soil" not in job.data["house"], "the soil of another house is a guess"


def test_the_floor_of_the_last_house_is_not_taken_for_this_one(tmp_path, interview, known):
    """Another house may have tendons: nothing said stays unknown."""
    now = replace(known, last={"house": {"floor": "slab"}})
    _, typist = interview(tmp_path / "job.toml", [], now, house=PLAIN, until="house.floor")
    assert typist.asked[-1].endswith("[slab, tendons unknown]")


def test_proof_of_no_tendons_and_the_edge_beam_go_into_the_house(tmp_path, interview):
    named = PLAIN | {"house.tendons": "engineer's drawing", "house.edge_beam": ("24 x 12", "")}
    job, typist = interview(tmp_path / "job.toml", house=named, until="house.soil")
    assert job.data["house"]["tendons"] == "none, engineer's drawing"
    assert job.data["house"]["edge_beam"] == "24in deep 12in wide"
    assert any(asked.endswith("[24in deep 12in wide]") for asked in typist.asked), (
        "which number is the depth is asked back"
    )


def test_a_floor_said_later_brings_its_own_questions(tmp_path, interview):
    named = PLAIN | {
        "house.floor": ("", "slab"),
        "house.expansive_soil": ("go floor", ""),
        "house.tendons": "scan of Nov 12",
    }
    job, typist = interview(tmp_path / "job.toml", house=named, until="house.jurisdiction")
    floor = next(n for n, text in enumerate(typist.asked) if text.startswith("Floor") and n > 12)
    assert typist.asked[floor + 1] == "Which paper proves that it has no tendons"
    assert job.data["house"]["tendons"] == "none, scan of Nov 12"
    assert typist.asked[floor + 2].startswith("Does the ground swell"), "then it goes on where it was"


def test_what_is_written_by_hand_is_told_so(tmp_path, interview):
    _, typist = interview(tmp_path / "job.toml", ["?", "go overrides"])
    assert sum("By hand in the job file" in told for told in typist.told) == 2


def test_water_is_the_tests_and_the_water_lines_are_named_too(tmp_path, interview):
    _, typist = interview(tmp_path / "job.toml", ["go water"], house=PLAIN, until="house.floor")
    assert typist.asked[-1].startswith("What was tested")
    assert "also: go water lines" in typist.told


def test_an_offer_left_open_at_the_end_is_told(tmp_path, interview):
    _, typist = interview(tmp_path / "job.toml", ["basment", "done"], house=PLAIN, until="house.floor")
    assert any("was offered and not taken" in told for told in typist.told)


@pytest.mark.parametrize(
    ("log", "name", "offered"),
    [((), "yard", "city main"), ((), "kitchen", ""), (("2 yard", "5 branch 2in left live called kitchen"), "kitchen", "kitchen")],
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
    named = PLAIN | {"house.floor": "basement", "house.soil": answer, "house.expansive_soil": answer}
    job, typist = interview(tmp_path / "job.toml", house=named, until="house.sewer")
    assert job.data["house"]["soil"] == "unknown"
    assert "expansive_soil" not in job.data["house"]
    assert len(typist.asked) == len(set(typist.asked)), "nothing is asked twice"


def test_a_year_of_two_digits_is_offered_whole(tmp_path, interview):
    named = PLAIN | {"house.built": ("78", "")}
    job, typist = interview(tmp_path / "job.toml", house=named, until="house.floor")
    assert job.data["house"]["built"] == 1978
    assert "Built in what year [1978]" in typist.asked


def test_a_place_said_later_brings_the_question_whether_it_is_a_trial(tmp_path, interview):
    named = PLAIN | {"house.floor": "basement", "house.jurisdiction": "unknown"}
    then = ["go jurisdiction", "demo", "yes"]
    job, _ = interview(tmp_path / "job.toml", then, house=named, until="site.carry")
    assert job.data["job"]["demo"] is True


def test_a_yes_to_another_line_is_no_name_of_one(tmp_path, interview):
    lines = ["main", "", "ci", "n", "20 ft", "city main", "y", "kitchen"]
    job, typist = interview(tmp_path / "job.toml", lines, at="line.0.name")
    assert "which? such as: main, yard, kitchen" in typist.told
    assert [line["name"] for line in job.data["line"]] == ["main", "kitchen"]


def test_no_is_no_insurer_and_no_day(tmp_path, interview):
    answers = ["yes", "Some Mutual", "", "C-7", "K. Sample", "go insurer", "no", "yes", "", "no"]
    job, typist = interview(tmp_path / "job.toml", answers, at="customer.insurer")
    assert job.data.get("customer", {}) == {}
    assert any("what is it called" in told for told in typist.told)
    assert "selling" not in job.data["wishes"]


def test_stations_stay_as_they_were_told_once_it_is_said_where_the_line_ends(tmp_path, interview):
    """The slab edge at reading 12 and a hole at 20.2: 20.2 − 12 = 8.2 inside [computed], before and after."""
    path = tmp_path / "job.toml"
    interview(path, house=PLAIN, until="line.0.name")
    log = ["pass front cleanout to house, riser 28in", "3 yard", "12 slab tile", "20.2 hole 4in", "done"]
    _, typist = interview(path, ["yard", "4", "clay", "no", "30 ft", "city main"], at="line.0.name")
    _, typist = interview(path, ["main", "4", "ci", "yes", *log, "", "yard at 2"], at="line.1.name")
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


# ── answers that are none, and what is asked to the point ─────────────────────────────────────


@pytest.mark.parametrize(
    ("at", "answer", "key"),
    [
        ("site.competent_person", "me", "competent_person"),
        ("customer.site", "no", "site"),
        ("customer.phone", "yes", "phone"),
        ("water_test.0.plug", "yes", "plug"),
        ("sign.0.where", "yes", "where"),
        ("line.0.joins", "no", "ends"),
    ],
)
def test_an_answer_that_is_none_is_asked_back_once_and_kept_when_given_again(tmp_path, interview, at, answer, key):
    (tmp_path / "job.toml").write_text(
        '[[line]]\nname = "main"\n[[water_test]]\nsection = "a"\n[[sign]]\nwhat = "wet lawn"\n'
    )
    job, _ = interview(tmp_path / "job.toml", [answer], at=at)
    table = at.partition(".")[0]
    assert not any(key in item for item in job.data.get(table, []) if isinstance(item, dict))
    assert key not in (job.data.get(table) if isinstance(job.data.get(table), dict) else {})
    job, typist = interview(tmp_path / "job.toml", [answer, answer], at=at)
    written = job.data[table][0] if isinstance(job.data[table], list) else job.data[table]
    assert written[key] == answer
    assert typist.asked[0].partition(" [")[0] == typist.asked[1].partition(" [")[0]


@pytest.mark.parametrize(
    "answer", ["main at 17", "at 17 on main", "17 on the main", "main 17", "into the main at 17 ft", "17 ft into main"]
)
def test_where_a_line_joins_is_understood_in_every_order(tmp_path, interview, answer):
    (tmp_path / "job.toml").write_text('[[line]]\nname = "main"\nends = "city main"\n[[line]]\nname = "kitchen"\n')
    job, _ = interview(tmp_path / "job.toml", [answer], at="line.1.joins")
    assert job.data["line"][1]["joins"] == {"line": "main", "at": 17.0}


def test_a_verdict_against_the_drop_is_asked_back_and_the_drop_is_said_before(tmp_path, interview):
    (tmp_path / "job.toml").write_text('[[water_test]]\nsection = "a"\nreadings = "0:0 in, 20:1 1/2 in"\n')
    job, typist = interview(tmp_path / "job.toml", ["passed", ""], at="water_test.0.result")
    assert typist.asked[0] == "It fell 1 1/2 in in 20 min. Passed, failed or could not be sealed [failed]"
    assert "It fell 1 1/2 in in 20 min. “passed” all the same? The same again keeps it" in typist.told
    assert job.data["water_test"][0]["result"] == "failed"


def test_of_a_small_drop_enter_takes_no_verdict(tmp_path, interview):
    (tmp_path / "job.toml").write_text('[[water_test]]\nsection = "a"\nreadings = "0:0 in, 20:1/8 in"\n')
    job, _ = interview(tmp_path / "job.toml", [""], at="water_test.0.result")
    assert "result" not in job.data["water_test"][0]


def test_a_test_begun_later_is_followed_by_the_question_for_another(tmp_path, interview):
    interview(tmp_path / "job.toml", house=PLAIN | {"water_test.0.section": ""})
    once = {"foundation.work": ""}
    then = ["go tests", "hall bath branch", "", "hall bath", "", "", "", "", "held 30 min", "y", ""]
    path = tmp_path / "job.toml"
    interview(path, house=once, until="-", most=0)
    _, typist = interview(path, [*then], at="customer.policy")
    assert typist.asked[-1] == "Another test? What was tested, or Enter"


def test_a_branch_that_failed_its_test_and_was_not_filmed_gets_its_line(tmp_path, interview):
    job, typist = interview(tmp_path / "job.toml", house=AWKWARD)
    assert [name for name, left in typist.rest.items() if left] == [], "every answer was asked for"
    assert job.data["line"][2] == {
        "name": "hall bath",
        "joins": "hall bath",
        "size": "3 in",
        "pipe": "PVC",
        "filmed": False,
        "length": "11 ft",
    }
    assert any("hall bath failed its test" in told for told in typist.told)


def test_what_a_log_lacks_is_asked_with_its_readings_and_written_into_it(tmp_path, interview):
    _, typist = interview(tmp_path / "job.toml", house=AWKWARD)
    asked = "\n".join(typist.asked)
    assert "How deep is the pipe under the floor at 18.6 ft, or at another reading there" in asked
    assert "below the slab top (or one fixed mark) at 26 ft and at 36 ft" in asked
    log = (tmp_path / "main.txt").read_text("utf-8").splitlines()
    assert log[-3:] == ["18.6 depth 28in from tile", "26 invert 30 1/4in below slab", "36 invert 29in below slab"]
    main = read_job(tmp_path / "job.toml").job.lines[0]
    assert Profile(main).fall_ft(20.7, 30.7).value == pytest.approx(1.25 / 12)  # stations, 5.3 ft less than the reel


def test_a_depth_from_the_lawn_alone_is_asked_for_under_the_floor(tmp_path, interview):
    (tmp_path / "job.toml").write_text(
        '[house]\nfloor = "slab"\n[[line]]\nname = "main"\nsize = "4 in"\npipe = "clay"\n'
    )
    log = ["pass cleanout to house, surface", "0 yard", "2 loc 5'2\" under lawn", "18 slab", "30 hole 2in", "done"]
    _, typist = interview(tmp_path / "job.toml", [*log, "", "city main"], at="line.0.log")
    assert any(
        a.startswith("How deep is the pipe under the floor") and "5 ft 2 in under the lawn" in a for a in typist.asked
    )


def test_what_lies_over_the_start_is_asked_where_nobody_said(tmp_path, interview):
    (tmp_path / "job.toml").write_text('[[line]]\nname = "main"\nsize = "4 in"\npipe = "clay"\n')
    log = ["pass cleanout to house, surface", "3 roots 20%", "18 slab", "40 end", "done"]
    _, typist = interview(tmp_path / "job.toml", [*log, "lawn"], at="line.0.log")
    assert typist.asked[5].startswith("What lies over the pipe from 3 ft to 18 ft")
    assert (tmp_path / "main.txt").read_text("utf-8").splitlines()[-1] == "3 yard"


def test_what_lies_over_the_start_is_not_asked_where_it_was_said_at_the_lip_of_the_riser(tmp_path, interview):
    (tmp_path / "job.toml").write_text('[[line]]\nname = "main"\nsize = "4 in"\npipe = "clay"\n')
    log = ["pass cleanout to house, riser 24in", "0 yard", "3 roots 20%", "18 slab", "40 end", "done"]
    _, typist = interview(tmp_path / "job.toml", log, at="line.0.log")
    assert not any(asked.startswith("What lies over") for asked in typist.asked)


def test_a_still_beside_the_job_is_asked_which_reading_it_shows(tmp_path, interview):
    (tmp_path / "hole.jpg").write_bytes(b"x")
    (tmp_path / "job.toml").write_text('[[line]]\nname = "main"\nsize = "4 in"\npipe = "clay"\n')
    log = ["pass cleanout to house, surface", "0 yard", "18.6 hole 2in ; bad", "done", ""]
    interview(tmp_path / "job.toml", [*log, "18.6"], at="line.0.log")
    assert "18.6 hole 2in, photo 1 hole.jpg ; bad" in (tmp_path / "main.txt").read_text("utf-8").splitlines()


def test_a_smell_of_gas_is_told_at_once_what_to_do(tmp_path, interview):
    """Leave, no switch, call from outside: what every US gas utility and 911 tell the public; common practice."""
    _, typist = interview(tmp_path / "job.toml", ["gas smell by the washer"], at="sign.0.what")
    assert any("911" in told for told in typist.told)


def test_done_at_the_name_of_a_line_renames_nothing(tmp_path, interview):
    (tmp_path / "job.toml").write_text('[[line]]\nname = "main"\nsize = "4 in"\n')
    job, _ = interview(tmp_path / "job.toml", ["done"], at="line.0.name")
    assert job.data["line"][0]["name"] == "main"


def test_an_owner_with_an_awkward_house_gets_to_options_in_under_120_entries(tmp_path, interview, monkeypatch):
    """From the first line to options: two lines, a dip with levels, a failed branch, two tests, a way round."""
    from typer.testing import CliRunner

    from estimator.cli.app import build

    job, typist = interview(tmp_path / "job.toml", house=AWKWARD)
    assert job.next_id == ""
    assert len(typist.given) < 120
    assert read_job(tmp_path / "job.toml").errors == ()
    words = ["options", str(tmp_path / "job.toml")]
    done = CliRunner().invoke(build(words), words)
    assert done.exit_code == 0, done.output
    assert "$" in done.output
