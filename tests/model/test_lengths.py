"""Lengths as people write them come in; the same feet go out and back."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from estimator.model.lengths import MOST_FT, parse_length, show, show_inches
from estimator.model.say import Say

WRITTEN = {  # [computed]: twelfths of a foot; the metre by the international foot, 0.3048 m exactly (NIST SP 811)
    "12.5": 12.5,
    "12'6\"": 12.5,
    "12' 6 1/2\"": 12 + 6.5 / 12,
    "12'-6\"": 12.5,
    "12’6”": 12.5,
    "12'6": 12.5,
    "2 ft 8 in": 32 / 12,
    "2ft8in": 32 / 12,
    "2 feet 8 inches": 32 / 12,
    "30 in": 2.5,
    "30''": 2.5,
    "3/8 in": 0.03125,
    "1½ in": 0.125,
    "1-1/2 in": 0.125,
    "3.048 m": 10.0,
    "304.8 mm": 1.0,
    "30.48cm": 1.0,
    "0": 0.0,
}


@pytest.mark.parametrize(("text", "feet"), WRITTEN.items())
def test_a_length_is_read_the_way_a_carpenter_means_it(text: str, feet: float) -> None:
    assert parse_length(text) == pytest.approx(feet, abs=1e-12)


@pytest.mark.parametrize(
    "text", ["", "  ", "38,5", "-3", "3 yards", "ft", "2 ft 12 in", "1/0 in", "3 4 5", "12 mud", "9" * 5000]
)
def test_what_is_no_length_gives_a_reason(text: str) -> None:
    assert isinstance(parse_length(text), Say)


def test_a_comma_gets_the_point_it_should_have_been() -> None:
    assert str(parse_length("38,5")) == "a comma is no decimal point: write 38.5"


def test_eleven_inches_after_feet_is_the_most() -> None:
    assert parse_length("2 ft 11 in") == pytest.approx(35 / 12)
    assert str(parse_length("2 ft 12 in")) == "inches after feet stay below 12"


def test_a_bare_number_takes_the_unit_asked_for_or_is_refused() -> None:
    assert parse_length("4", bare="in") == pytest.approx(1 / 3)
    assert parse_length("4", bare="ft") == 4.0
    assert str(parse_length("4", bare="")) == "say the unit: ft, in, m, cm or mm"


@settings(deadline=None)
@given(st.floats(min_value=0, max_value=MOST_FT, allow_nan=False, allow_infinity=False))
def test_any_length_shown_and_read_again_is_the_same_float(feet: float) -> None:
    assert parse_length(show(feet)) == feet
    assert parse_length(show_inches(feet)) == feet


@settings(deadline=None)
@given(st.integers(0, MOST_FT - 1), st.integers(0, 11), st.integers(0, 15))
def test_what_was_shown_once_is_shown_the_same_again(feet: int, inches: int, sixteenths: int) -> None:
    read = parse_length(f"{feet} ft {inches} {sixteenths}/16 in")
    assert isinstance(read, float)
    again = parse_length(show(read))
    assert isinstance(again, float)
    assert show(again) == show(read)
    assert " ft" not in show(read) or "." not in show(read)


@settings(deadline=None)
@given(st.text(max_size=30))
def test_any_text_is_a_length_or_a_reason(text: str) -> None:
    assert isinstance(parse_length(text), float | Say)


@pytest.mark.parametrize("bad", [-0.1, float("inf"), float("nan")])
def test_what_is_no_length_is_not_shown(bad: float) -> None:
    with pytest.raises(ValueError, match="no length"):
        show(bad)
    with pytest.raises(ValueError, match="no length"):
        show_inches(bad)


def test_nothing_about_a_house_is_longer_than_ten_thousand_feet() -> None:
    assert parse_length("10000 ft") == 10_000
    assert str(parse_length("10000 ft 1 in")) == "nothing about a house is longer than 10,000 ft: look for a slip"
    assert isinstance(parse_length("99999999999999999999", bare="in"), Say)
