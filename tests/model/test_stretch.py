"""Stretches: what touches, what is left over, what joins."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator.model.stretch import Stretch, joined, missing

STRETCHES = st.tuples(st.integers(-50, 50), st.integers(0, 30)).map(lambda t: Stretch(t[0], t[0] + t[1]))


def test_swapped_ends_are_refused() -> None:
    with pytest.raises(ValueError, match="runs upwards"):
        Stretch(9, 3)
    assert Stretch.between(9, 3) == Stretch(3, 9)


def test_two_that_share_only_an_end_touch_but_do_not_overlap() -> None:
    a, b = Stretch(0, 5), Stretch(5, 9)
    assert a.touches(b) and not a.overlaps(b)
    assert a.gap_ft(Stretch(7.5, 9)) == 2.5
    assert a.common(b) == Stretch(5, 5)
    assert a.common(Stretch(6, 7)) is None


@given(st.lists(STRETCHES, max_size=8))
def test_joining_keeps_every_station_and_leaves_no_two_that_touch(parts: list[Stretch]) -> None:
    whole = joined(parts)
    for at in range(-60, 90):
        assert any(s.holds(at) for s in parts) == any(s.holds(at) for s in whole)
    assert all(not a.touches(b) for i, a in enumerate(whole) for b in whole[i + 1 :])


@given(STRETCHES, st.lists(STRETCHES, max_size=6))
def test_what_is_missing_and_what_is_there_make_the_whole(whole: Stretch, parts: list[Stretch]) -> None:
    inside = [c for p in parts if (c := p.common(whole))]
    there = sum(s.length_ft for s in joined(inside))
    assert there + sum(s.length_ft for s in missing(whole, parts)) == pytest.approx(whole.length_ft)
