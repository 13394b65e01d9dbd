"""Every key of the job file ends where the records say; what is wrong is named with its place."""

from datetime import date
from decimal import Decimal
from pathlib import Path
from typing import get_args

import pytest
from fieldnote_texts import HEAD, codes, reading

from estimator.cli.interview.document import with_values
from estimator.fieldnotes import read_job
from estimator.fieldnotes.forms import WaterTestForm
from estimator.fieldnotes.values import Language
from estimator.fieldnotes.watertests import water_test
from estimator.model.job import EdgeBeam, Job, Leg, WaterTest
from estimator.model.languages import LANGUAGES
from estimator.model.line import Join
from estimator.model.problem import CannotGoOn, Place
from estimator.model.wanted import Override, WantedRepair

EVERYTHING = Path(__file__).parent / "everything.toml"


@pytest.fixture(scope="module")
def job() -> Job:
    found = read_job(EVERYTHING)
    assert found.job is not None, "\n".join(map(str, found.problems))
    return found.job


def test_who_and_where(job: Job) -> None:
    assert (job.number, job.day, job.prepared_by, job.demo) == ("2026-200", date(2026, 11, 18), "R. Example", True)
    assert job.languages == ("en_US", "es_US")
    assert job.notes == ("dog in the yard", "gate code on the fridge")
    assert (job.customer.insurer, job.customer.policy, job.customer.claim) == ("Invented Mutual", "P-1", "C-77")
    assert job.customer.adjuster == "K. Sample, 555-0162"


def test_the_house_and_the_site(job: Job) -> None:
    house, site = job.house, job.site
    assert (house.floor, house.built, house.exits, house.bathrooms) == ("slab, tendons unknown", 1967, 2, 2)
    assert house.slab_thickness_ft == pytest.approx(4 / 12)
    assert house.slab_above_grade_ft == 0.5
    assert house.floor_price_sf == Decimal("15.50")
    assert house.fixtures == (("bathroom_groups", 2), ("kitchen_sink", 1), ("clothes_washer", 1))
    assert (house.expansive_soil, house.sewer, house.water_lines, house.in_slab) == (
        True,
        "septic",
        "copper under slab",
        "conduit",
    )
    assert (site.gate_ft, site.carry_ft, site.machine, site.located, site.caving_signs) == (3.5, 60, False, True, False)
    assert (site.water_table_ft, site.paint_sqft, site.roots_in_soil, site.competent_person) == (
        9,
        6.5,
        True,
        "R. Example",
    )


def test_wishes_and_foundation(job: Job) -> None:
    wishes = job.wishes
    assert wishes.keep_floors  # written under [house]
    assert (wishes.asked, wishes.selling, wishes.recommend, wishes.because, wishes.by) == (
        "clean only", date(2027, 1, 5), "B", "the floors are new", "R. Example"
    )  # fmt: skip
    assert (job.foundation.work, job.foundation.lift_date, job.foundation.piers) == ("planned", date(2026, 12, 4), 14)


def test_a_branch_line_joins_by_a_branchs_name_or_by_a_reading_of_the_first_pass(job: Job) -> None:
    assert job.line("hall bath").joins == Join("main", pytest.approx(11.5 - 5.3))
    assert job.line("kitchen").joins == Join("main", pytest.approx(15.0))
    assert job.line("main").joins is None


def test_water_tests_in_all_three_ways_of_writing_them(job: Job) -> None:
    first, second, third = job.water_tests
    assert first == WaterTest(
        section="under slab", kind="isolated", covers=("main", "hall bath"), when="before lift", date=date(2026, 11, 17),
        plug="front cleanout, house side", level="slab top", open_risers_in=(4, 4, 2, 1.5),
        readings=((0, 0), (5, 0.375), (10, 0.75), (20, 1.5)), held_at_in=9, result="failed", sealed=True, settled_min=10,
        rose_at="tub", not_in_test=("kitchen",), billed=True, witness="E. Every", note="slow",
    )  # fmt: skip
    assert second.readings == ((0, 0), (5, 0.375), (10, 0.75))
    assert second.open_risers_in == (4,)
    assert third.readings == ((0, 0), (20, 1.5))
    assert third.result == "could not be sealed"


def test_how_high_a_test_was_filled_is_never_made_up(job: Job) -> None:
    assert [test.level for test in job.water_tests] == ["slab top", "", ""]
    held, problems = water_test(WaterTestForm(held_at="9 in below the cleanout"), Place("job.toml"))
    assert (held.held_at_in, held.level, problems) == (9, "cleanout", [])


def test_a_way_round(job: Job) -> None:
    (way,) = job.reroutes
    assert way.legs == (Leg(zone="wall", length_ft=12), Leg(zone="yard", length_ft=26))
    assert way.fall_available_ft == pytest.approx(14 / 12)
    assert (way.replaces_line, way.replaces_from_ft, way.replaces_to_ft) == ("main", 6, 14.7)
    assert (way.ties_into_line, way.ties_into_ft) == ("main", pytest.approx(3 - 5.3))
    assert (way.size_in, way.serves, way.turns, way.vents) == (3, (("bathroom_groups", 1),), 3, 1)
    assert way.penetrations == (("wall", 2), ("roof", 1))


def test_legs_may_be_typed_in_one_line(job: Job) -> None:
    head = HEAD.replace('log = "main.txt"\n', "") + 'filmed = false\nends = "city main"\n'
    way = '\n[[reroute]]\nname = "east"\nreplaces = { line = "main" }\nlegs = "wall 12, yard 26 ft"\n'
    found = reading("", way, head)
    assert found.job is not None
    assert found.job.reroutes[0].legs == job.reroutes[0].legs
    assert codes("", way.replace("yard 26 ft", "yard"), head) == ["job/length"]


def test_the_owners_own_word(job: Job) -> None:
    rule, number = job.overrides
    assert rule == Override(reason="she knows the dip stays", rule="lining-keeps-the-grade", line="main", where="14-15")
    assert (number.reason, number.item, number.quantity, number.hours, number.price) == (
        "I measured it", "tunnel dig", "31 ft", 3.5, Decimal(16500)
    )  # fmt: skip
    assert job.options[0].repairs == (WantedRepair(method="tunnel", line="main", from_ft=-2, to_ft=14.5, entry="exit"),)
    assert (job.options[1].do, job.options[1].new_name) == ("rename", "Cheapest")
    assert job.allowances[0].amount == Decimal(800)
    assert job.discounts[0].amount == Decimal("150.25")
    assert job.settings == (("small_parts_percent", "5.5"), ("one_language", "yes"), ("tunnel_size_ft", "3.0"))
    assert job.signs[0].what == "wet lawn"
    assert job.approvals[0].covers == ("footing-below-dig",)


def test_foundation_work_in_a_word_counts_from_the_first_of_the_month() -> None:
    found = reading(
        "",
        'filmed = false\nlength = 20\nends = "city main"\n',
        HEAD.replace('floor = "slab"', 'floor = "slab"\nfoundation_work = "done 2024-05"').replace(
            'log = "main.txt"\n', ""
        ),
    )
    assert found.job is not None
    assert (found.job.foundation.work, found.job.foundation.lift_date) == ("done", date(2024, 5, 1))


def test_every_wrong_key_is_named_at_once_with_its_line() -> None:
    head = HEAD.replace('floor = "slab"', 'flor = "slab"\nbuilt = "old"').replace('size = "4 in"', 'size = "four"')
    problems = reading("", head=head).problems
    lines = head.split("\n")
    assert [(p.code, lines[(p.place.line or 0) - 1]) for p in problems] == [
        ("job/missing-key", "[house]"),
        ("job/unknown-key", 'flor = "slab"'),
        ("job/value", 'built = "old"'),
        ("job/length", 'size = "four"'),
    ]
    assert "Did you mean “floor”?" in str(problems[1].wrong)


@pytest.mark.parametrize("number", ["inf", "nan", "1e400", "-3", "true", "[1]", "{ a = 1 }", '""', '"38,5"'])
def test_no_odd_number_becomes_a_length(number: str) -> None:
    assert codes("", head=HEAD.replace('size = "4 in"', f"size = {number}")) == ["job/length"]


def test_a_bare_number_is_inches_for_a_pipe_and_feet_for_a_length() -> None:
    found = reading("pass a to street, surface\n0 yard\n9 crack\n", "length = 85.5\n", HEAD.replace('"4 in"', "4"))
    assert found.job is not None
    assert (found.job.lines[0].size_in, found.job.lines[0].length_ft) == (4.0, 85.5)


@pytest.mark.parametrize(("size", "fine"), [("1 in", True), ("0.9 in", False), ("24 in", True), ("24.1 in", False)])
def test_a_house_drain_is_one_to_twenty_four_inches(size: str, fine: bool) -> None:
    found = codes("pass a to street, surface\n0 yard\n9 crack\n", head=HEAD.replace('"4 in"', f'"{size}"'))
    assert found == ([] if fine else ["job/size"])


@pytest.mark.parametrize(("length", "fine"), [("9 ft", True), ("8.9 ft", False)])
def test_a_line_is_not_shorter_than_what_was_seen_of_it(length: str, fine: bool) -> None:
    found = codes("pass a to street, surface\n0 yard\n9 crack\n", f'length = "{length}"\n')
    assert found == ([] if fine else ["job/beyond-length"])


@pytest.mark.parametrize(("other", "fine"), [("3.9ft", True), ("3.91ft", False)])
def test_two_depths_at_one_station_may_differ_by_half_a_foot(other: str, fine: bool) -> None:
    log = f"pass a to street, surface\n0 yard\n9 depth 3.4ft from lawn\n9 depth {other} from lawn\n"
    assert codes(log) == ([] if fine else ["log/depths-differ"])


def test_depths_from_two_surfaces_are_two_numbers() -> None:
    log = (
        "pass a to street, surface\n0 yard\n9 depth 3.4ft from lawn\n9 depth 4.1ft from slab\n9 invert 2ft below slab\n"
    )
    assert codes(log) == []


@pytest.mark.parametrize(("size", "asked"), [("3.75in", False), ("3.74in", True), ("6in", False)])
def test_a_pipe_that_gets_smaller_downstream_is_asked_about(size: str, asked: bool) -> None:
    log = f"pass a to street, surface\n0 yard\n9 size {size}\n20 crack\n"
    assert codes(log) == (["log/size-shrinks"] if asked else [])
    uphill = f"pass a to house, surface\n0 yard\n9 size {size}\n20 crack\n"
    assert codes(uphill) == (["log/size-shrinks"] if size == "6in" else [])


def test_an_error_stops_the_job_and_a_question_does_not() -> None:
    start = "pass a to street, surface\n0 yard\n"
    assert reading(start + "9 branch 2in not proven\n").job is not None
    assert reading(start + "9 branch\n").job is not None
    assert reading("pass a, surface\n9 crack\n").job is None


def test_the_programs_own_edits_keep_comments_and_order() -> None:
    text = '# mine\n[job]\nnumber = "1"  # keep\n\n[[line]]\nname = "main" # first\n'
    edited = with_values(with_values(text, ("wishes",), {"recommend": "B"}), ("line", 0), {"length": "85 ft"})
    assert edited.startswith(
        '# mine\n[job]\nnumber = "1"  # keep\n\n[[line]]\nname = "main" # first\nlength = "85 ft"\n'
    )
    assert 'recommend = "B"' in edited
    assert with_values(edited, ("job",), {"number": "2"}).splitlines()[2] == 'number = "2"  # keep'
    assert with_values(text, ("option", 0), {"do": "pin"}).endswith('[[option]]\ndo = "pin"\n')


def test_an_edit_with_no_place_says_so() -> None:
    with pytest.raises(CannotGoOn):
        with_values("wishes = 3", ("wishes",), {"recommend": "B"})


SHORT = "pass front cleanout to street, riser 2 ft\n 2 yard lawn\n12 end city main\n"


def _house(line: str) -> str:
    return HEAD.replace('floor = "slab"', f'floor = "slab"\n{line}')


@pytest.mark.parametrize(
    ("words", "deep_ft", "wide_ft"),
    [("none", 0.0, 0.0), ("24in deep 12in wide", 2.0, 1.0), ("2 ft 6 in deep, 10 in wide", 2.5, 10 / 12)],
)
def test_the_beam_along_the_slabs_edge_is_read(words: str, deep_ft: float, wide_ft: float) -> None:
    found = reading(SHORT, head=_house(f'edge_beam = "{words}"'))
    assert found.job is not None, found.problems
    assert found.job.house.edge_beam == EdgeBeam(deep_ft, pytest.approx(wide_ft))


def test_where_nobody_wrote_of_an_edge_beam_nothing_is_known() -> None:
    found = reading(SHORT, head=HEAD)
    assert found.job is not None and found.job.house.edge_beam is None


@pytest.mark.parametrize(
    "words", ["", "24in", "0in deep 12in wide", "deep", "12in wide 24in deep", "24 lb deep 3 wide"]
)
def test_an_edge_beam_that_cannot_be_read_is_refused(words: str) -> None:
    assert "edge_beam" in " ".join(str(p) for p in reading(SHORT, head=_house(f'edge_beam = "{words}"')).problems)


@pytest.mark.parametrize(
    ("words", "taken"),
    [
        ("none, engineer's drawing", True),
        ("unknown", True),
        ("yes", True),
        ("none", False),
        ("None, ", False),
        ("no", False),
    ],
)
def test_no_tendons_counts_only_with_what_proves_it(words: str, taken: bool) -> None:
    found = reading(SHORT, head=_house(f'tendons = "{words}"'))
    assert (found.job is not None and found.job.house.tendons == words) is taken


def test_papers_are_written_in_the_languages_there_are() -> None:
    assert get_args(Language) == LANGUAGES
    log = "pass front cleanout to street, riser 2 ft\n2 yard lawn\n30 roots 30%\n"
    french = HEAD.replace('prepared_by = "R. Example"', 'prepared_by = "R. Example"\nlanguages = ["en_US", "fr_FR"]')
    (problem,) = reading(log, head=french).problems
    assert problem.code == "job/choice"
    assert "fr_FR" in str(problem.wrong) and "es_US" in str(problem.write)
    assert reading(log, head=french.replace("fr_FR", "es_US")).problems == ()


@pytest.mark.parametrize(
    ("where", "found"),
    [
        ("5-28", []),
        ("-3-31", []),  # the line is known from 0 to 28; a reel and a tape agree to 3 ft at best
        ("5-31.1", ["job/off-the-line"]),
        ("-3.1-20", ["job/off-the-line"]),
        ("200-900", ["job/off-the-line"]),
        ("9-9", ["job/no-length"]),
    ],
)
def test_a_repair_by_hand_lies_on_the_line(where: str, found: list[str]) -> None:
    wish = f'\n[[option]]\ndo = "add"\nname = "Mine"\nrepairs = [{{ method = "trench", line = "main", where = "{where}" }}]\n'
    assert codes("pass front cleanout to street, riser 2 ft\n2 yard lawn\n30 roots 30%\n", wish) == found


@pytest.mark.parametrize(
    ("first", "second", "found"),
    [
        ("5-15", "15-20", []),
        ("5-15", "14.9-20", []),  # a tenth of a foot is one station
        ("5-15", "14.8-20", ["job/overlap"]),
    ],
)
def test_the_same_foot_is_never_sold_twice(first: str, second: str, found: list[str]) -> None:
    one, other = (
        f'{{ method = "{m}", line = "main", where = "{w}" }}' for m, w in (("trench", first), ("burst", second))
    )
    wish = f'\n[[option]]\ndo = "add"\nname = "Mine"\nrepairs = [{one}, {other}]\n'
    assert codes("pass front cleanout to street, riser 2 ft\n2 yard lawn\n30 roots 30%\n", wish) == found


@pytest.mark.parametrize(
    ("key", "text", "found"),
    [
        ("where", "14", []),
        ("where", "14-15", []),
        ("where", "by the tree", ["job/where"]),
        ("where", "1.2.3", ["job/where"]),
        ("quantity", "100000 ft", []),
        ("quantity", "100001 ft", ["job/quantity"]),
        ("quantity", "0 ft", ["job/quantity"]),
        ("quantity", "some", ["job/quantity"]),
    ],
)
def test_the_owners_own_place_and_number_can_be_read(key: str, text: str, found: list[str]) -> None:
    word = f'\n[[override]]\nreason = "seen"\nitem = "tunnel dig"\n{key} = "{text}"\n'
    assert codes("pass front cleanout to street, riser 2 ft\n2 yard lawn\n30 roots 30%\n", word) == found
