"""Corners of openings on the ground: by hand, against shapely, and over noisy draws; the way along the pipe from a point that can be seen."""

import random
from datetime import date
from math import cos, hypot, radians, sin

import numpy
import pytest
from shapely import LineString
from shapely.geometry import CAP_STYLE

from estimator.model.job import Customer, House, Job
from estimator.model.line import Line, Mark, Pass, Tie
from estimator.model.opening import Opening
from estimator.model.say import Say
from estimator.model.stretch import Stretch
from estimator.onsite.corners import ends_of
from estimator.onsite.positions import Errors, from_point

ERRORS = Errors(spot_ft=0.4, tape_ft=0.1, counter=0.01, bow=0.03)


def taped(at: float, front: float, east: float) -> Mark:
    return Mark(word="loc", stretch=Stretch(at, at), ties=(Tie(front, "front wall"), Tie(east, "east wall")))


def job(*marks: Mark, access: str = "") -> Job:
    slab = Mark(word="slab", stretch=Stretch(-50, -50), holds=True)
    passes = (Pass(number=1, access=access, flow="against flow", start_ft=0.0, sign=1, seen=Stretch(0, 40)),) if access else ()  # fmt: skip
    line = Line(name="main", size_in=4, pipe="clay", marks=(slab, *marks), passes=passes, downstream=-1)
    return Job(
        number="1", day=date(2026, 11, 29), prepared_by="R.", customer=Customer(name="A", site="B"),
        house=House(floor="slab", jurisdiction="demo"), lines=(line,),
    )  # fmt: skip


def cut(low: float, high: float, wide: float, beside: float = 0.0) -> Opening:
    return Opening(
        kind="floor opening", line="main", along=Stretch(low, high), depth_ft=3, name=Say.of("a cut"),
        bottom_width_ft=wide - 1, top_width_ft=wide, offset_ft=beside,
    )  # fmt: skip


def test_corners_by_hand() -> None:
    """Straight in from the front wall, 10 ft from the east wall, 3 ft wide: 8 ft 6 in and 11 ft 6 in, at 12 and at 20 ft."""
    near, far = ends_of(cut(12, 20, 3.0), job(taped(8, 8, 10), taped(24, 24, 10)), ERRORS)
    assert sorted(near.corners) == [
        (("front wall", pytest.approx(12)), ("east wall", pytest.approx(8.5))),
        (("front wall", pytest.approx(12)), ("east wall", pytest.approx(11.5))),
    ]
    assert {round(corner[0][1], 6) for corner in far.corners} == {20}


def test_corners_of_a_slanted_pipe_are_those_of_shapely() -> None:
    """Source: shapely's buffer of a line with flat ends: the rectangle around it."""
    draw = random.Random()
    for _ in range(100):
        angle, wide = radians(draw.uniform(0, 85)), draw.uniform(2, 5)

        def place(at: float, turn: float = angle) -> tuple[float, float]:
            return 5 + at * cos(turn), 9 + at * sin(turn)

        house = job(taped(0, *place(0)), taped(30, *place(30)))
        ends = ends_of(cut(10, 18, wide), house, ERRORS)
        found = sorted((round(a, 4), round(b, 4)) for end in ends for (_, a), (_, b) in end.corners)
        box = LineString([place(10), place(18)]).buffer(wide / 2, cap_style=CAP_STYLE.flat)
        wanted = sorted((round(x, 4), round(y, 4)) for x, y in list(box.exterior.coords)[:4])
        assert numpy.array(found) == pytest.approx(numpy.array(wanted), abs=1e-3)


def test_one_wall_gives_no_corners_and_an_opening_beside_the_pipe_is_marked_there() -> None:
    one = Mark(word="loc", stretch=Stretch(8, 8), ties=(Tie(8, "front wall"),))
    two = Mark(word="loc", stretch=Stretch(20, 20), ties=(Tie(20, "front wall"),))
    assert all(not end.corners for end in ends_of(cut(10, 18, 3), job(one, two), ERRORS))
    (near, _) = ends_of(cut(12, 20, 3.0, beside=2.0), job(taped(8, 8, 10), taped(24, 24, 10)), ERRORS)
    wide = sorted(b for _, (_, b) in near.corners)
    assert wide in ([pytest.approx(6.5), pytest.approx(9.5)], [pytest.approx(10.5), pytest.approx(13.5)])


def test_the_way_along_the_pipe_by_hand() -> None:
    """From the front cleanout at 0 ft to 12 ft: the spot, the tape, and 4 % of 12 ft."""
    found = from_point(job(access="front cleanout").lines[0], 12, ERRORS)
    assert found is not None
    assert (str(found.point), found.ft, found.upstream) == ("the front cleanout", 12, True)
    assert found.sigma_ft == pytest.approx(hypot(0.4, 0.1, 0.04 * 12))


def test_a_cleanout_that_is_buried_is_no_point_to_measure_from() -> None:
    buried = Mark(word="cleanout", stretch=Stretch(5, 5), signs=("buried",))
    found = from_point(job(buried, access="front cleanout").lines[0], 6, ERRORS)
    assert found is not None and found.ft == 6


def test_the_surer_of_both_ways_counts() -> None:
    """Taped at 20 and 30 ft; at 1 ft the cleanout is 1 ft away and the tapes 19."""
    (near, far) = ends_of(cut(1, 20, 3), job(taped(20, 20, 10), taped(30, 30, 10), access="front cleanout"), ERRORS)
    assert near.point_is_surer and not far.point_is_surer
    assert near.within_ft(80) == pytest.approx(1.2816 * hypot(0.4, 0.1, 0.04), abs=1e-3)


@pytest.mark.parametrize("percent", [80.0, 90.0])
def test_the_true_corners_lie_within_as_often_as_said(percent: float) -> None:
    """A slanted pipe taped at 8 and 24 ft with the errors stated, asked at 12 and 20 ft; a thousand fresh draws."""
    draw, inside, asked = random.Random(), 0, 0
    for _ in range(1000):
        angle = radians(draw.uniform(10, 60))

        def place(at: float, turn: float = angle) -> tuple[float, float]:
            return 5 + at * cos(turn), 9 + at * sin(turn)

        def read(at: float) -> Mark:
            front, east = (ft + draw.gauss(0, 0.4) + draw.gauss(0, 0.1) for ft in place(at))
            return taped(at, front, east)

        bow = draw.gauss(0, 0.04 * 4)
        for end in ends_of(cut(12, 20, 3.0), job(read(8), read(24)), ERRORS):
            within = end.within_ft(percent)
            assert within is not None
            front, east = place(end.station_ft)
            true = (front - bow * sin(angle), east + bow * cos(angle))
            middle = [sum(c[n][1] for c in end.corners) / 2 for n in (0, 1)]
            for found, wanted in zip(middle, true, strict=True):
                asked += 1
                inside += abs(found - wanted) <= within
    assert inside >= (percent - 4) / 100 * asked


def test_the_true_place_along_the_pipe_lies_within_as_often_as_said() -> None:
    """Counter and bow drawn as the settings state them; a thousand fresh draws."""
    draw, inside = random.Random(), 0
    for _ in range(1000):
        at = draw.uniform(2, 30)
        found = from_point(job(access="front cleanout").lines[0], at, ERRORS)
        assert found is not None
        true = at * (1 + draw.gauss(0, 0.01) + draw.gauss(0, 0.03)) + draw.gauss(0, 0.4) + draw.gauss(0, 0.1)
        inside += abs(found.ft - true) <= found.within_ft(90)
    assert inside >= 0.86 * 1000  # nine of ten less four standard deviations of a thousand draws
