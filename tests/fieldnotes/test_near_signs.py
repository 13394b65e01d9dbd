"""A sign with a slip of the finger is never lost without a word: it is asked back with the sign that was meant."""

import pytest
from fieldnote_texts import line_of, reading

PASS = "pass front cleanout to street, riser 2 ft\n 2 yard lawn\n"


@pytest.mark.parametrize("typed", ["soil sene at 5-7", "soil see", "soil sand at 5-7"])
def test_a_soil_called_nearly_seen_or_at_a_clock_is_asked_back(typed: str) -> None:
    assert [p.code for p in reading(f"{PASS}30 hole 3in {typed}\n").problems] == ["log/near-sign"]


@pytest.mark.parametrize(
    ("typed", "meant"), [("sol seen", "soil seen"), ("sharpp", "sharp"), ("hairlin", "hairline"), ("viod", "void")]
)
def test_an_unknown_word_near_a_sign_is_told_the_sign(typed: str, meant: str) -> None:
    problems = reading(f"{PASS}30 hole 3in {typed}\n").problems
    assert [p.code for p in problems] == ["log/word"]
    assert f"Did you mean “{meant}”?" in problems[0].wrong


def test_what_is_denied_is_likened_to_no_sign() -> None:
    assert "Did you mean" not in reading(f"{PASS}30 hole 3in no roots\n").problems[0].wrong


def test_soils_and_the_sign_itself_are_taken() -> None:
    line = line_of(f"{PASS}30 hole 3in soil seen at 5-7\n35 soil sandy clay\n")
    assert (line.findings[0].signs, line.findings[0].clock) == (("soil seen",), (5, 7))
    assert [m.choice for m in line.marks if m.word == "soil"] == ["sandy clay"]
