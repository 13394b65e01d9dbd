"""The demo's papers, whole: whose dig a depth is, a way round by its legs, no talk of prices for the crew, tests promised where they are."""

import io
from pathlib import Path

import pytest
from openpyxl import load_workbook

from estimator import demo
from estimator.cli.way import priced
from estimator.papers.crew import crew
from estimator.papers.homeowner import homeowner
from estimator.papers.letter import Letter
from estimator.sheets.write import write

JOB = Path(demo.__file__).parent / "job.toml"


@pytest.fixture(scope="module", name="quote")
def _quote():
    return priced(JOB, None).quote


def lines_of(book):
    read = load_workbook(io.BytesIO(write(book)), data_only=True)
    return {s.title: [str(c.value) for row in s.iter_rows() for c in row if c.value is not None] for s in read}


def test_what_a_depth_asks_for_names_its_dig_and_its_option(quote):
    said = [t for t in lines_of(crew(quote, "en_US"))["Safety"] if "forces a system" in t or "slope, shore or box" in t]
    assert said
    assert [t for t in said if "(option " not in t] == []
    trench = with_way(quote, "trench")
    assert any(
        t.startswith(f"! yard line: from 16 ft 10 in to 56 ft 6 in (option {trench}): The trench") and "5 ft 1 in" in t
        for t in said
    )


def with_way(quote, method):
    """The letter of an option with this way of repair."""
    return next(o.letter for o in quote.options if method in {r.method for r in o.scope.repairs})


def test_a_way_round_is_told_by_its_legs_and_not_by_stations_of_the_old_line(quote):
    letter = with_way(quote, "reroute")
    work = lines_of(crew(quote, "en_US", letter))[f"Work {letter}"]
    assert "New way “kitchen along the east wall”" in work
    assert "34 ft 6 in of new 2 inch pipe, turns and uprights counted" in work
    assert {"Leg 1: 9 ft, along a wall", "Leg 2: 24 ft, under the yard", "Ties into: yard line, at 4 ft"} <= set(work)
    assert [t for t in work if t.startswith("kitchen line: from")] == []


@pytest.mark.parametrize(
    ("language", "words"),
    [("en_US", ("price", "cost", "$", "allowance", "offer")), ("es_US", ("precio", "$", "costo"))],
)
def test_the_crew_reads_nothing_about_prices(quote, language, words):
    texts = [text for sheet in lines_of(crew(quote, language)).values() for text in sheet]
    assert [t for t in texts for word in words if word in t.lower()] == []


def test_a_water_test_is_promised_for_the_lines_that_have_one_in_the_price(quote):
    by_letter = {option.letter: Letter(quote, "en_US").say(option.water_test_text) for option in quote.options}
    spot = next(option for option in quote.options if option.letter == with_way(quote, "yard spot"))
    assert [t.repair.line for t in spot.takeoffs if t.repair.method == "yard spot" and not t.value("tests")] == ["yard"]
    assert by_letter[spot.letter].startswith("We water-test the new part of the kitchen line and main line only.")
    trench = with_way(quote, "trench")
    assert by_letter[trench].startswith("We water-test the new pipe only.")


def test_a_floor_is_said_to_be_opened_only_where_one_is(quote):
    sheets = lines_of(homeowner(quote, "en_US"))
    floor, tunnel = with_way(quote, "break-through"), with_way(quote, "tunnel")
    care = sheets["Before, during, after"]
    assert any(t.startswith(f"! {floor}: Opening the floor cuts the soil") for t in care)
    assert any(t.startswith(f"! {tunnel}: Digging under the floor breaks the soil") for t in care)
