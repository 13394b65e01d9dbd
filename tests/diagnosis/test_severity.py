"""The level of a finding by the firm's limits, at each edge and one step on. Limits: common practice, editable.

One home-inspector standard asks to report an offset over 1/4 in and standing water over 1 in (read second-hand).
"""

import pytest

from estimator.diagnosis.severity import severity
from tests.diagnosis.making import case


@pytest.mark.parametrize(
    "text, level",
    [
        ("roots hair", 1), ("roots 5%", 1), ("roots 6%", 2), ("roots 25%", 2), ("roots 26%", 3), ("roots 10% cut yearly", 3),
        ("roots 90% cannot pass", 4), ("roots 90% no flow", 4),
        ("offset 10%", 1), ("offset 11%", 2), ("offset 25%", 2), ("offset 26%", 3), ("offset 5% catches paper", 3),
        ("offset 60% cannot pass", 4), ("offset 0.25in", 1), ("offset 0.5in", 2), ("offset 1.1in", 3),  # of a 4 in bore
        ("gap", 1), ("gap 1in", 1), ("gap 1.1in", 2), ("gap soil seen", 2), ("gap washing", 3), ("gap void", 3),
        ("crack hairline", 1), ("crack", 2), ("crack open", 2), ("crack loose", 3), ("crack soil seen", 3),
        ("hole 0.9in", 2), ("hole 1in", 3), ("hole 0.5in soil seen", 3), ("hole", 3),
        ("collapse still flows", 3), ("collapse", 3), ("collapse no flow", 4),
        ("channel smooth", 1), ("channel sharp", 2), ("channel gone", 3), ("channel soil seen", 3), ("channel gone, running out", 4),
        ("scale 15%", 1), ("scale 16%", 2), ("scale 35%", 2), ("scale 36%", 3), ("scale 20% drags", 3), ("grease 100% full", 4),
        ("oval 5%", 1), ("oval 6%", 2), ("oval 10%", 2), ("oval 11%", 3), ("oval 40% flat", 4),
        ("blocked soft", 2), ("blocked hard", 3), ("blocked no flow", 4),
        ("intruding 9%", 2), ("intruding 10%", 2), ("intruding 11%", 3), ("utility", 4),
        ("fitting", 1), ("fitting catches paper", 2), ("leak stain", 1), ("leak drip", 2), ("leak running in", 3),
        ("mud", 1), ("insects", 1), ("reverse fall flat", 2), ("reverse fall", 3), ("backfall long", 4),
    ],
)  # fmt: skip
def test_a_finding_has_the_level_of_its_amount_and_signs(text: str, level: int) -> None:
    here = case(text)
    assert severity(here.line.findings[0], here) == level


@pytest.mark.parametrize(
    "text, level",
    [
        ("10-12.9 sag 15%", 1), ("10-13 sag 15%", 2), ("10-12 sag 16%", 2), ("10-12 sag 35%", 2), ("10-12 sag 36%", 3),
        ("10-12 sag 20% lens under", 3), ("10-15 sag full", 3), ("10-15.1 sag full", 4),
        ("10-12 sag 60%", 3),  # short but deep: a 2 ft belly at 60 % is no note
        ("10-12 sag 1in", 2),  # 1 in is 25 % of a 4 in pipe [computed]
    ],
)  # fmt: skip
def test_a_dip_is_a_note_only_when_it_is_shallow_and_short(text: str, level: int) -> None:
    here = case(text)
    assert severity(here.line.findings[0], here) == level


@pytest.mark.parametrize("percent, level", [("12.5", 1), ("13", 2)])
def test_an_inch_of_standing_water_is_the_line_between_a_note_and_a_plan(percent: str, level: int) -> None:
    here = case(f"10-12 sag {percent}%", size_in=8.0)  # 12.5 % of 8 in is 1 in [computed]
    assert severity(here.line.findings[0], here) == level


def test_water_seen_only_in_use_counts_one_less() -> None:
    here, quiet = case("10-12 sag 30% only in use"), case("10-12 sag 30%")
    assert severity(here.line.findings[0], here) == severity(quiet.line.findings[0], quiet) - 1


def test_a_hollow_is_an_emergency_under_slab_or_drive_only() -> None:
    assert [
        severity(c.line.findings[0], c) for c in (case("hole void", zone=z) for z in ("slab", "drive", "yard"))
    ] == [4, 4, 3]


def test_a_word_stands_in_where_nobody_gave_an_amount() -> None:
    from dataclasses import replace

    here = case("roots")
    levels = [severity(replace(here.line.findings[0], grade_word=w), here) for w in ("light", "moderate", "severe")]
    assert levels == [1, 2, 3]
