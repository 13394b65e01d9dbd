"""Another utility's line in the drain: a page in red for the house, without a price, and a message that says stop."""

from dataclasses import replace

import pytest

from estimator.model.line import Finding
from estimator.model.stretch import Stretch
from estimator.papers.message import LONGEST, message
from estimator.papers.stop_notice import lines_in_the_bore, stop_notice
from tests.made_up.quote import example_quote

SEEN = Finding(id="u", kind="utility", stretch=Stretch(28.5, 28.5), grade="suspected")


def crossed():
    quote = example_quote()
    line = replace(quote.job.lines[0], findings=(SEEN,))
    return replace(quote, job=replace(quote.job, lines=(line,)), options=())


@pytest.mark.parametrize(
    ("language", "words"),
    [
        ("en_US", ("STOP", "gas", "leave the house", "911", "Do not touch switches", "28 ft 6 in")),
        ("es_US", ("ALTO", "gas", "salga", "911")),
    ],
)
def test_the_notice_says_stop_gas_leave_and_911_from_outside(language: str, words: tuple[str, ...]) -> None:
    sheet = stop_notice(crossed(), language).sheets[0]
    assert sheet.rows[0].cells[0].style == "alarm"
    text = "\n".join(str(cell.value) for row in sheet.rows for cell in row.cells if cell.value)
    assert not [word for word in words if word not in text]
    assert "$" not in text


@pytest.mark.parametrize("language", ["en_US", "es_US"])
def test_the_message_without_options_is_short_and_says_what_is_attached(language: str) -> None:
    said = message(crossed(), language)
    assert len(said) < LONGEST and "911" in said and "$" not in said
    plain = message(replace(example_quote(), options=()), language)
    assert len(plain) < LONGEST and "911" not in plain


def test_a_drain_with_nothing_in_it_gets_no_notice() -> None:
    assert lines_in_the_bore(example_quote()) == []
    assert [found.kind for _, found in lines_in_the_bore(crossed())] == ["utility"]


@pytest.mark.parametrize(
    ("zero", "at_ft", "said"),
    [
        ("slab edge", 28.0, "Main line: 28 ft from the outside wall"),
        ("slab edge", -3.0, "Main line: 3 ft outside the house wall"),
        ("access", 28.0, "Main line: 28 ft from where the camera went in"),
    ],
)
def test_the_place_is_told_as_the_line_is_counted(zero: str, at_ft: float, said: str) -> None:
    quote = crossed()
    found = replace(SEEN, stretch=Stretch(at_ft, at_ft))
    line = replace(quote.job.lines[0], zero=zero, findings=(found,))
    sheet = stop_notice(replace(quote, job=replace(quote.job, lines=(line,))), "en_US").sheets[0]
    assert said in [cell.value for row in sheet.rows for cell in row.cells]
