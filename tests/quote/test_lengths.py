"""Lengths on paper: rounded once, so that what is renewed and what stays old make up the line (plain arithmetic)."""

from dataclasses import replace

import pytest

from estimator.model.line import Line
from estimator.model.profile import Profile
from estimator.model.stretch import Stretch
from estimator.quote.where import old_on_paper, on_paper
from estimator.wording.numbers import feet
from tests.made_up.quote import example_quote


def line(length_ft: float) -> Line:
    return replace(
        example_quote().job.lines[0],
        passes=(),
        findings=(),
        marks=(),
        downstream=-1,
        length_ft=length_ft,
        zero="access",
    )


@pytest.mark.parametrize(
    ("whole_ft", "renewed"),
    [
        (50.0, [(0.0, 13.5)]),
        (50.3, [(2.26, 15.74)]),
        (71.7, [(3.3, 9.9), (20.05, 33.33)]),
        (50.0, [(0.0, 10.26), (10.26, 20.52)]),
        (14.3, [(0.04, 10.66)]),
    ],
)
def test_renewed_and_old_make_up_the_whole_on_paper(whole_ft: float, renewed: list[tuple[float, float]]) -> None:
    pipe, stretches = line(whole_ft), [Stretch(a, b) for a, b in renewed]
    new = sum(on_paper(pipe, s.length_ft) for s in stretches)
    assert new + old_on_paper(pipe, stretches) == pytest.approx(on_paper(pipe, Profile(pipe).extent.length_ft))


def test_the_fresh_user_s_house_reads_as_fifty_feet() -> None:
    pipe = line(50.0)
    old = old_on_paper(pipe, [Stretch(0.0, 13.5)])
    assert (feet(on_paper(pipe, 13.5), "en_US"), feet(old, "en_US")) == ("13 ft 6 in", "36 ft 6 in")


def test_nothing_is_old_where_all_is_renewed_and_a_length_is_never_nothing() -> None:
    assert old_on_paper(line(50.2), [Stretch(0.0, 50.2)]) == 0.0
    assert on_paper(line(50.0), 0.1) == 0.5


def test_a_place_done_twice_over_is_taken_off_once() -> None:
    assert old_on_paper(line(50.0), [Stretch(10.0, 14.0), Stretch(0.0, 40.0)]) == 10.0
