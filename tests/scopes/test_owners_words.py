"""What the job names by hand either counts or is told about; a size without a price stops nothing else."""

from dataclasses import replace
from decimal import Decimal

import pytest
from conftest import NotesOf, demo_tables

from estimator.model.job import Job
from estimator.model.problem import CannotGoOn
from estimator.model.wanted import Discount, Override, WantedOption, WantedRepair
from estimator.pipeline import run, unknown_words
from estimator.scopes.judge import counts

YARD = """
pass front cleanout to street, surface
 0      yard lawn, cleanout
 0-60   joints every 3ft
 0-60   depth 3ft from lawn
28      offset 20%, roots 30%
60      end city main, stop reached main
"""
FLOOR = "floor-margin"


def codes(job: Job) -> list[str]:
    return [p.code for p in unknown_words(job, demo_tables())]


@pytest.mark.parametrize("place", ["demo", "unknown"])
def test_a_place_of_the_tables_and_the_word_unknown_are_known(notes: NotesOf, place: str) -> None:
    job = notes(YARD)
    assert codes(replace(job, house=replace(job.house, jurisdiction=place))) == []


def test_a_misspelt_place_stops_the_price(notes: NotesOf) -> None:
    job = notes(YARD)
    with pytest.raises(CannotGoOn) as stopped:
        run(replace(job, house=replace(job.house, jurisdiction="dem")), demo_tables(), job.day)
    assert [p.code for p in stopped.value.problems] == ["job/jurisdiction"]


def test_a_soil_nobody_knows_is_told_where_it_was_written(notes: NotesOf) -> None:
    job = notes(YARD.replace("28 ", "5 soil frm clay\n28 "))
    (problem,) = unknown_words(job, demo_tables())
    assert (problem.code, problem.place.line) == ("job/soil", 29)  # the log stands inside the job file


@pytest.mark.parametrize(
    ("key", "value", "found"),
    [
        ("round_price_to", "1", []),
        ("round_price_to", "0", ["tables/setting-range"]),
        ("unit_price_step", "0", ["tables/setting-range"]),
        ("unit_price_step", "abc", ["tables/number"]),
        ("unit_price_step", "0,5", ["tables/decimal-comma"]),
        ("crew_step_days", "0", ["tables/setting-range"]),
        ("dig_step_ft", "0", ["tables/setting-range"]),
        ("factor_cap", "1", []),
        ("factor_cap", "0", ["tables/setting-range"]),
        ("accent_colour", "banana", ["tables/color"]),
    ],
)
def test_a_setting_of_one_job_is_checked_as_the_table_is(
    notes: NotesOf, key: str, value: str, found: list[str]
) -> None:
    job = replace(notes(YARD), settings=((key, value),))
    assert codes(job) == found
    if found:
        assert str(unknown_words(job, demo_tables())[0]).startswith(f"the job file [settings] {key}: ")
        with pytest.raises(CannotGoOn):
            run(job, demo_tables(), job.day)


def test_a_setting_of_one_job_may_be_written_as_money_is(notes: NotesOf) -> None:
    job = replace(notes(YARD), settings=(("round_price_to", "$500"),))
    quote = run(job, demo_tables(), job.day).quote
    assert quote is not None
    assert {o.price.total % 500 for o in quote.options} == {0}


def below_the_floor(notes: NotesOf, option: str) -> Job:
    word = Override(reason="his mother's house", rule=FLOOR, option=option)
    return replace(notes(YARD), discounts=(Discount(reason="friend", amount=Decimal(2000)),), overrides=(word,))


def test_below_the_floor_for_every_option_or_for_the_one_named(notes: NotesOf) -> None:
    everywhere = below_the_floor(notes, "")
    assert run(everywhere, demo_tables(), everywhere.day).quote is not None
    one = below_the_floor(notes, "A")
    with pytest.raises(CannotGoOn) as stopped:
        run(one, demo_tables(), one.day)
    assert {p.code for p in stopped.value.problems} == {"pricing/below-floor"}


def test_an_option_is_renamed_by_its_letter_and_then_nothing_is_told(notes: NotesOf) -> None:
    job = replace(notes(YARD), options=(WantedOption(do="rename", name="A", new_name="Cheapest"),))
    found = run(job, demo_tables(), job.day)
    assert found.choices.options[0].name == "Cheapest"
    assert found.problems == ()


def test_a_way_wanted_by_hand_that_is_offered_is_not_told_about(notes: NotesOf) -> None:
    wish = WantedOption(do="pin", repairs=(WantedRepair(method="trench", line="main", from_ft=20.0, to_ft=35.0),))
    job = replace(notes(YARD), options=(wish,))
    assert run(job, demo_tables(), job.day).problems == ()


def test_a_pipe_of_a_size_without_prices_leaves_all_other_repairs_priced(notes: NotesOf) -> None:
    second = """
[[line]]
name = "old"
size = "5 in"
pipe = "clay"
ends = "septic tank"
log = '''
pass old cleanout to tank, surface
 0      yard lawn, cleanout
 0-60   depth 3ft from lawn
28      crack open
60      end tank
'''
"""
    job = notes(YARD, more=second)
    found = run(job, demo_tables(), job.day)
    assert found.quote is not None
    assert {r.line for o in found.choices.options for r in o.scope.repairs} == {"main"}
    put_aside = [v for v in found.choices.verdicts if v.rule == "no-price-for-this-size"]
    assert {v.line for v in put_aside} == {"old"}
    assert all(counts(v, v.effect) for v in put_aside)
