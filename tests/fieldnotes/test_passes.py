"""How passes hang on one line: by their access, by a place an earlier pass knows, by what they saw again."""

import pytest
from fieldnote_texts import HEAD, JOBS, TextFiles, codes, line_of

from estimator.fieldnotes import Limits, read_job
from estimator.fieldnotes.echo import echo_line
from estimator.fieldnotes.lines import LogFiles
from estimator.fieldnotes.reading import read_job_text
from estimator.model.line import Line

FIRST = "pass front cleanout to street, riser 2 ft\n 2 yard lawn\n12 wye 3in live proven called hall bath\n32 roots 30%\n52 end city main\n"


def second(heading: str, *lines: str) -> Line:
    return line_of(FIRST + f"pass {heading}\n" + "\n".join(lines) + "\n")


def test_from_the_same_access_the_other_way_stations_go_below_zero() -> None:
    line = second("front cleanout to house, riser 2 ft", "2 yard lawn", "7 slab", "22 crack")
    assert (line.passes[1].start_ft, line.passes[1].sign) == (0, -1)
    assert next(f for f in line.findings if f.kind == "crack").stretch.from_ft == -20


def test_a_slipped_zero_is_the_mean_of_what_was_seen_twice() -> None:
    line = second("front cleanout to street, riser 2 ft, after cleaning", "12.4 = hall bath", "32.6 = roots 5%")
    assert line.passes[1].shift_ft == pytest.approx(-0.5)
    assert [round(more, 6) for _, more in line.passes[1].ties] == [0.4, 0.6]
    roots = line.findings[0]
    assert (roots.stretch.from_ft, roots.percent, roots.history[0].percent) == (30, (5, 5), (30, 30))


def test_a_pass_from_a_named_branch_begins_there_and_its_ties_only_check() -> None:
    line = second("hall bath toilet, against flow, riser 1 ft", "6 crack")
    assert (line.passes[1].placed_by, line.passes[1].start_ft) == ("name", 10)
    assert next(f for f in line.findings if f.kind == "crack").stretch.from_ft == 5
    line = second("hall bath toilet, with flow, riser 1 ft", "21.5 = roots", "24 crack")
    assert line.passes[1].shift_ft == 0
    assert line.passes[1].ties == (("roots", 0.5),)
    assert next(f for f in line.findings if f.kind == "crack").stretch.from_ft == 33


def test_a_pass_may_say_where_it_begins_as_a_reading_of_the_first_pass() -> None:
    line = second("the main, against flow, surface, zero at 52", "15 crack")
    assert (line.passes[1].start_ft, line.passes[1].placed_by) == (50, "zero_at")
    assert next(f for f in line.findings if f.kind == "crack").stretch.from_ft == 35


def test_from_end_begins_where_the_camera_stopped() -> None:
    line = second("the other side, against flow, surface, from end", "15 crack")
    assert (line.passes[1].start_ft, line.passes[1].placed_by) == (50, "end")


def test_an_unknown_access_is_hung_by_what_it_saw_again() -> None:
    line = second("kitchen vent, with flow, riser 10 ft", "20 = hall bath", "39.4 = roots", "44.7 crack")
    # hall bath (10) less 10 ft of plan is 0; roots (30) less 29.4 is 0.6: their mean
    assert line.passes[1].start_ft == pytest.approx(0.3)
    assert line.passes[1].placed_by == "ties"


def test_a_flag_seen_by_two_passes_ties_them_without_a_word() -> None:
    log = FIRST.replace("roots 30%", "roots 30%, loc 3ft under grass, flag C")
    line = line_of(log + "pass front cleanout to street, riser 2 ft\n32.8 loc 3ft under grass, flag C\n")
    assert line.passes[1].shift_ft == pytest.approx(-0.8)


def test_a_tie_may_be_the_reading_of_the_first_pass() -> None:
    line = second("front cleanout to street, riser 2 ft", "32.3 = 32")
    assert line.passes[1].shift_ft == pytest.approx(-0.3)


def test_what_stands_beside_a_tie_lies_where_the_tied_thing_lies() -> None:
    line = second("hall bath toilet, with flow, riser 1 ft", "21.5 = roots, gap 1in")
    assert next(f for f in line.findings if f.kind == "gap").stretch.from_ft == 30


@pytest.mark.parametrize(("reading", "code"), [("35.0", None), ("35.01", "log/zero-slipped")])
def test_a_zero_may_slip_three_feet_and_no_more(reading: str, code: str | None) -> None:
    log = FIRST + f"pass front cleanout to street, riser 2 ft\n{reading} = roots\n"
    assert codes(log) == ([code] if code else [])


@pytest.mark.parametrize(("reading", "code"), [("24.0", None), ("24.01", "log/passes-disagree")])
def test_passes_may_differ_three_feet_and_no_more(reading: str, code: str | None) -> None:
    log = FIRST + f"pass hall bath toilet, with flow, riser 1 ft\n{reading} = roots\n"
    assert codes(log) == ([code] if code else [])


def test_the_tolerances_can_be_given() -> None:
    log = FIRST + "pass hall bath toilet, with flow, riser 1 ft\n21.5 = roots\n"
    strict = read_job_text(HEAD, "job.toml", TextFiles({"main.txt": log}), Limits(passes_disagree_ft=0.4))
    assert [p.code for p in strict.problems] == ["log/passes-disagree"]


@pytest.mark.parametrize(("reading", "merged"), [("33.0", True), ("33.1", False)])
def test_two_sights_of_a_kind_within_a_foot_are_one_finding(reading: str, merged: bool) -> None:
    line = second("front cleanout to street, riser 2 ft, after cleaning", f"{reading} roots 5%")
    assert len(line.findings) == (1 if merged else 2)


def test_two_sights_in_one_pass_are_two_findings() -> None:
    assert len(line_of(FIRST + "32.5 roots 10%\n".replace("52", "50")).findings) == 2


def test_a_later_sight_keeps_what_only_the_earlier_said() -> None:
    log = FIRST.replace("roots 30%", "hole 2in soil seen at 5-7")
    hole = line_of(log + "pass front cleanout to street, riser 2 ft, after cleaning\n32 hole 3in\n").findings[0]
    assert (hole.size_in, hole.signs, hole.clock, hole.after_cleaning) == (3, ("soil seen",), (5, 7), True)


def test_cleaning_takes_scale_away_but_never_roots_or_holes() -> None:
    log = FIRST.replace("32 roots", "20 scale 30%\n25 hole 1in\n32 roots")
    cleaned = line_of(log + "pass front cleanout to street, riser 2 ft, after cleaning\n50 crack\n")
    assert [f.kind for f in cleaned.superseded] == ["scale"]
    assert {"hole", "roots"} <= {f.kind for f in cleaned.findings}
    short = line_of(log + "pass front cleanout to street, riser 2 ft, after cleaning\n21 crack\n")
    assert [f.kind for f in short.superseded] == ["scale"]
    not_so_far = line_of(log + "pass front cleanout to street, riser 2 ft, after jet to 19\n50 crack\n")
    assert not_so_far.superseded == ()


def test_what_the_pass_after_cleaning_saw_itself_stays() -> None:
    line = second("front cleanout to street, riser 2 ft, after cleaning", "20 scale 10%", "50 crack")
    assert line.superseded == ()
    assert "scale" in {f.kind for f in line.findings}


@pytest.mark.parametrize(("first", "later"), [("hole 2in?", "hole 2in"), ("hole 2in", "hole 2in?")])
def test_seen_once_is_seen(first: str, later: str) -> None:
    log = FIRST.replace("roots 30%", first)
    hole = line_of(log + f"pass front cleanout to street, riser 2 ft\n32 {later}\n").findings[0]
    assert hole.grade == "seen"
    assert len(hole.history) == 1


def test_a_block_that_a_later_pass_went_by_is_no_block_any_more() -> None:
    log = FIRST.replace("52 end city main", "40 blocked soft")
    assert [f.kind for f in line_of(log).findings] == ["roots", "blocked"]
    later = line_of(log + "pass front cleanout to street, riser 2 ft, after cleaning\n52 end city main\n")
    assert [f.kind for f in later.superseded] == ["blocked"]


def test_a_hole_missed_going_in_puts_the_groove_over_it_in_doubt() -> None:
    log = "pass front cleanout to street, riser 2 ft\n2 yard\n8-33 channel smooth\n{}20 hole 2in\n"
    groove = next(f for f in line_of(log.format("back\n")).findings if f.kind == "channel")
    assert groove.grade == "suspected"
    groove = next(f for f in line_of(log.format("")).findings if f.kind == "channel")
    assert groove.grade == "seen"
    both_ways = log.format("20.2 hole 2in\nback\n")
    assert next(f for f in line_of(both_ways).findings if f.kind == "channel").grade == "seen"


def test_zero_is_the_slab_edge_when_the_camera_crosses_it_going_in_else_the_access() -> None:
    going_in = "pass front cleanout to house, riser 2 ft\n2 yard\n7 slab\n20 crack\n"
    assert (line_of(going_in).zero, line_of(going_in).findings[0].stretch.from_ft) == ("slab edge", 13)
    assert line_of(going_in, 'zero = "access"\n').findings[0].stretch.from_ft == 18
    unsaid = going_in.replace("2 yard\n", "")
    assert line_of(unsaid).zero == "slab edge"
    assert line_of(unsaid.replace("7 slab", "3.1 slab")).zero == "slab edge"
    assert line_of(unsaid.replace("7 slab", "3 slab")).zero == "access"  # a foot from where it went in: it began there
    going_out = "pass hall toilet to street, riser 2 ft\n2 slab\n22 yard\n12 crack\n"
    assert (line_of(going_out).zero, line_of(going_out).downstream) == ("access", 1)
    out = line_of(going_out, 'zero = "slab edge"\n')
    assert (out.findings[0].stretch.from_ft, out.downstream, out.passes[0].sign) == (10, -1, -1)
    uphill_out = going_out.replace(" to street", ", against flow")
    assert line_of(uphill_out, 'zero = "slab edge"\n').downstream == 1


OTHER = '[[line]]\nname = "other"\nsize = "4 in"\npipe = "clay"\nfilmed = false\nlength = "20 ft"\nends = "city main"\n'


@pytest.mark.parametrize("end", ['joins = { line = "other", at = 2 }', 'ends = "city main"'])
def test_where_a_line_ends_does_not_move_its_zero(end: str) -> None:
    """Station = 20 − 7 = 13 [computed]; it is typed before anybody asks where the line ends."""
    going_in = "pass front cleanout to house, riser 2 ft\n2 yard\n7 slab\n20 crack\n"
    line = line_of(going_in, f"{end}\n{OTHER}")
    assert (line.zero, line.findings[0].stretch.from_ft) == ("slab edge", 13)
    assert line_of(going_in, f'zero = "access"\n{end}\n{OTHER}').findings[0].stretch.from_ft == 18


def test_a_pass_of_the_job_file_has_its_own_log_and_access() -> None:
    more = '\n[[line.pass]]\nwhy = "flow stopped"\nfrom = "end"\nflow = "against flow"\nriser = 0\nlog = "two.txt"\n'
    logs = TextFiles({"main.txt": FIRST, "two.txt": "15 crack\n"})
    found = read_job_text(HEAD + more, "job.toml", logs)
    assert found.job is not None, found.problems
    assert found.job.lines[0].passes[1].when == "flow stopped"
    assert [f.stretch.from_ft for f in found.job.lines[0].findings if f.kind == "crack"] == [35]


def test_a_short_log_may_stand_in_the_job_file_with_its_keys() -> None:
    head = HEAD.replace(
        'log = "main.txt"',
        "riser = \"2'6\"\nflow = \"with flow\"\naccess = \"front cleanout\"\nlog = '''\n 2 yard\n12.5 crack\n13 oval\n'''",
    )
    found = read_job_text(head, "job.toml", LogFiles(JOBS))
    assert [(p.code, p.place.file, head.split("\n")[(p.place.line or 0) - 1]) for p in found.problems] == [
        ("log/asked", "job.toml", "13 oval")
    ]
    good = read_job_text(head.replace("13 oval\n", ""), "job.toml", LogFiles(JOBS))
    assert good.job is not None
    assert good.job.lines[0].findings[0].stretch.from_ft == 10


@pytest.mark.parametrize(
    ("keys", "code"),
    [
        ('access = "front cleanout"\nriser = 0', "log/riser"),
        ('access = "front cleanout"\nsurface = true', None),
        ('access = "open trench"\nriser = 0', None),
        ('access = "roof vent"', "log/riser-none"),
        ('access = "front cleanout"\nriser = "28 in"', None),
    ],
)
def test_a_cleanout_has_a_riser_unless_it_is_said_to_have_none(keys: str, code: str | None) -> None:
    assert codes("0 yard\n9 crack\n", f'{keys}\nflow = "with flow"\n') == ([code] if code else [])


def test_a_line_without_a_camera_says_so() -> None:
    line = line_of("", 'filmed = false\nlength = "14 ft"\n', HEAD.replace('log = "main.txt"\n', ""))
    assert (line.filmed, line.length_ft, line.passes) == (False, 14, ())
    assert "nothing of it is inspected" in echo_line(line)[1]


def test_the_files_read_are_handed_on_with_their_names() -> None:
    reading = read_job(JOBS / "alder" / "job.toml")
    assert [name for name, _ in reading.files] == ["job.toml", "main.txt"]


@pytest.mark.parametrize("row", ["2 blocked end", "2 end\n2 blocked", "2 blocked\n2 end"])
def test_where_it_is_blocked_nobody_saw_the_end_of_the_pipe_whichever_was_typed_first(row: str) -> None:
    line = line_of(f"pass front cleanout to street, riser 2 ft\n2 yard lawn\n0 slab\n{row}\n")
    assert line.passes[0].stopped_because == "blocked"


def test_what_is_noted_on_the_way_back_does_not_say_why_the_camera_stopped() -> None:
    line = line_of("pass front cleanout to street, riser 2 ft\n2 yard lawn\n30 end city main\nback\n12 blocked soft\n")
    assert line.passes[0].stopped_because == "city main"


def test_what_was_seen_after_a_cleaning_is_another_thing_than_what_the_same_run_saw_beside_it() -> None:
    log = FIRST.replace("52 end city main", "40 hole 2in after cleaning\n40.5 hole 3in\n52 end city main")
    holes = [f for f in line_of(log).findings if f.kind == "hole"]
    assert [(f.size_in, f.after_cleaning, f.history) for f in holes] == [(2.0, True, ()), (3.0, False, ())]
    before = line_of(log.replace("40.5 hole 3in", "40.5 hole 3in after cleaning").replace("2in after cleaning", "2in"))
    assert [(f.size_in, len(f.history)) for f in before.findings if f.kind == "hole"] == [(3.0, 1)]
