"""How far new pipe goes by one way in: no stub of old pipe is left to the edge, the junction or a side line's upper end."""

from dataclasses import replace

import pytest

from estimator.model.line import Join, Line
from estimator.model.profile import Profile
from estimator.model.stretch import Stretch
from estimator.scopes.extent import Extent
from estimator.scopes.reach import from_the_exit
from tests.made_up.stretch import demo_tables

LONG = Line(name="kitchen", size_in=2, pipe="galvanized", length_ft=40.0, joins=Join("main", 16.0))


def reached(line: Line, low_ft: float, high_ft: float) -> Stretch:
    return from_the_exit(Extent(Stretch(low_ft, high_ft)), Profile(line), demo_tables()).stretch


@pytest.mark.parametrize(("low_ft", "from_ft"), [(9.9, 0.0), (10.0, 10.0)], ids=["9.9 ft left", "10 ft left"])
def test_a_stub_to_the_junction_is_taken_too(low_ft: float, from_ft: float) -> None:
    """remnant_ft is 10; the junction of a line against whose flow stations grow lies at 0."""
    up = replace(LONG, downstream=-1)
    assert reached(up, low_ft, 25.0) == Stretch(from_ft, 25.0)
    assert reached(LONG, 12.0, 40.0 - low_ft) == Stretch(12.0, 40.0 - from_ft)


@pytest.mark.parametrize(("high_ft", "to_ft"), [(30.1, 40.0), (30.0, 30.0)], ids=["9.9 ft left", "10 ft left"])
def test_a_stub_to_the_upper_end_is_taken_too(high_ft: float, to_ft: float) -> None:
    assert reached(replace(LONG, downstream=-1), 15.0, high_ft) == Stretch(15.0, to_ft)


def test_a_short_branch_is_taken_whole() -> None:
    assert reached(replace(LONG, length_ft=14.0), 4.0, 9.0) == Stretch(0.0, 14.0)


def test_a_main_without_a_slab_edge_is_left_as_it_is() -> None:
    assert reached(replace(LONG, joins=None), 4.0, 9.0) == Stretch(4.0, 9.0)
