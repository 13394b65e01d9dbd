"""A sign with a slip of the finger is never lost without a word: what was meant is read."""

import pytest
from fieldnote_texts import line_of

PASS = "pass front cleanout to street, riser 2 ft\n 2 yard lawn\n"


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("soil sene at 5-7", "soil seen"),
        ("soil see", "soil seen"),
        ("sol seen", "soil seen"),
        ("sharpp", "sharp"),
        ("viod", "void"),
    ],
)
def test_a_sign_with_a_slip_is_the_sign(typed: str, meant: str) -> None:
    (found,) = line_of(f"{PASS}30 hole 3in {typed}\n").findings
    assert found.signs == (meant,)


def test_what_is_denied_is_no_sign_and_is_kept_as_typed() -> None:
    (found,) = line_of(f"{PASS}30 hole 3in no roots\n").findings
    assert (found.kind, found.signs, found.note) == ("hole", (), "no roots")


def test_soils_and_the_sign_itself_are_taken() -> None:
    line = line_of(f"{PASS}30 hole 3in soil seen at 5-7\n35 soil sandy clay\n")
    assert (line.findings[0].signs, line.findings[0].clock) == (("soil seen",), (5, 7))
    assert [m.choice for m in line.marks if m.word == "soil"] == ["sandy clay"]
