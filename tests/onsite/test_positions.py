"""Marks on the ground: by hand, and over noisy draws of lines whose place is known."""

import random
from math import hypot

import pytest

from estimator.model.line import Line, Mark, Tie
from estimator.model.stretch import Stretch
from estimator.onsite.positions import Errors, from_walls

ERRORS = Errors(spot_ft=0.4, tape_ft=0.1, counter=0.01, bow=0.03)


def taped(at: float, **walls: float) -> Mark:
    ties = tuple(Tie(ft, wall.replace("_", " ")) for wall, ft in walls.items())
    return Mark(word="loc", stretch=Stretch(at, at), ties=ties)


def line(*marks: Mark) -> Line:
    return Line(name="main", size_in=4.0, pipe="clay", marks=marks)


def test_halfway_between_two_tapes_by_hand() -> None:
    """12 ft 9 in at 10 ft and 21 ft 7 in at 20 ft: 17 ft 2 in at 15 ft (arithmetic)."""
    found = from_walls(line(taped(10, front_wall=12.75), taped(20, front_wall=21 + 7 / 12)), 15, ERRORS)
    assert [(f.wall, round(f.ft, 3)) for f in found] == [("front wall", 17.167)]
    assert found[0].sigma_ft == pytest.approx(hypot(hypot(0.4, 0.1) * hypot(0.5, 0.5), 0.04 * 5))


def test_one_tape_serves_its_own_place_alone() -> None:
    only = line(taped(10, front_wall=12.75))
    assert [f.ft for f in from_walls(only, 10, ERRORS)] == [12.75]
    assert from_walls(only, 11, ERRORS) == ()


def test_beyond_the_tapes_the_error_grows() -> None:
    two = line(taped(10, front_wall=10), taped(20, front_wall=20))
    (near,), (far,) = from_walls(two, 22, ERRORS), from_walls(two, 30, ERRORS)
    assert far.ft == pytest.approx(30)
    assert far.sigma_ft > near.sigma_ft


@pytest.mark.parametrize("percent", [80, 90])
def test_the_true_place_lies_within_as_often_as_said(percent: float) -> None:
    """A straight pipe square to the front wall, taped at 8 and 24 ft with the errors stated; asked at 16 ft; fresh draws."""
    draw, inside, count = random.Random(), 0, 1000
    for _ in range(count):
        bow = draw.gauss(0, 0.04 * 8)
        ends = [at + 5 + draw.gauss(0, 0.4) + draw.gauss(0, 0.1) for at in (8, 24)]
        (found,) = from_walls(line(taped(8, front_wall=ends[0]), taped(24, front_wall=ends[1])), 16, ERRORS)
        inside += abs(found.ft - (21 + bow)) <= found.within_ft(percent)
    assert inside >= (percent - 4) / 100 * count
