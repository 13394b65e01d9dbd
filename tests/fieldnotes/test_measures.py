"""Measures no house drain has are asked about or refused: each limit at its edge and one step off. Limits: common practice."""

import pytest
from fieldnote_texts import HEAD, codes, reading

PASS = "pass front cleanout to street, riser 2 ft\n 2 yard lawn\n"


def with_riser(said: str) -> str:
    return f"pass front cleanout to street, riser {said}\n40 yard lawn\n50 roots 30%\n"


@pytest.mark.parametrize("said", ["6", "6 ft", "28in", "28 ft"])
def test_a_riser_with_a_unit_or_short_enough_for_feet_is_taken(said: str) -> None:
    assert "log/riser-unit" not in codes(with_riser(said))


@pytest.mark.parametrize("said", ["6.1", "28"])
def test_a_long_riser_without_a_unit_is_asked_back(said: str) -> None:
    assert "log/riser-unit" in codes(with_riser(said))


def test_a_long_riser_without_a_unit_in_the_job_file_is_asked_back() -> None:
    log, access = "2 yard lawn\n30 roots 30%\n", 'access = "front cleanout"\nflow = "with flow"\n'
    problems = reading(log, f"{access}riser = 28\n").problems
    assert [p.code for p in problems] == ["job/length"]
    assert "inches or feet?" in str(problems[0].wrong)
    assert "job/length" not in codes(log, f"{access}riser = 2\n")
    assert "job/length" not in codes(log, f'{access}riser = "28 in"\n')


@pytest.mark.parametrize(
    ("said", "code", "asked"),
    [
        ("depth 25ft from lawn", "log/deep", False),
        ("depth 25.1ft from lawn", "log/deep", True),
        ("depth 30.1ft from lawn", "log/asked", True),
        ("offset 3.9in", "log/asked", False),
        ("offset 4in", "log/asked", True),
        ("hole 4in soil seen", "log/hole-above-bore", False),
        ("hole 4.1in soil seen", "log/hole-above-bore", True),
    ],
)
def test_depths_offsets_and_holes_beyond_what_can_be_are_asked(said: str, code: str, asked: bool) -> None:
    assert (code in codes(f"{PASS}30 {said}\n")) is asked


@pytest.mark.parametrize(("said", "refused"), [("18 in", False), ("18.1 in", True), ("4 ft", True)])
def test_a_slab_thicker_than_18_in_is_refused(said: str, refused: bool) -> None:
    head = HEAD.replace('floor = "slab"', f'floor = "slab"\nslab_thickness = "{said}"')
    assert ("job/thick-slab" in codes(f"{PASS}30 roots 30%\n", head=head)) is refused
