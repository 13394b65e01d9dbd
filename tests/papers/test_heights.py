"""The side view's heights: one ground for all, each depth counted from the surface it was taken from (plain arithmetic)."""

from estimator.model.line import Line, Mark, Pass
from estimator.model.profile import Profile
from estimator.model.stretch import Stretch
from estimator.papers.heights import height_at, pipe, surface

FLOOR_FT = 1.0  # 12 in over the yard


def line(*depths: tuple[float, float, str], inside: str = "slab") -> Line:
    """Six feet of yard, then twenty under the house; depths to the pipe's centre with what they were taken from."""
    zones = (("yard", -6.0), (inside, 0.0))
    held = [Mark(word=word, stretch=Stretch(at, at), holds=True) for word, at in zones]
    read = [Mark(word="depth", stretch=Stretch(at, at), depth_ft=deep, surface=on) for at, deep, on in depths]
    seen = Pass(number=1, access="cleanout", flow="against flow", start_ft=-6.0, sign=1, seen=Stretch(-6.0, 20.0))
    return Line(
        name="main", size_in=4.0, pipe="pvc", marks=(*held, *read), passes=(seen,), zero="slab edge", downstream=-1
    )


def test_thirty_inches_below_a_floor_a_foot_over_the_yard_are_eighteen_under_the_yard() -> None:
    profile = Profile(line((-6.0, 1.5, "lawn"), (10.0, 2.5, "tile")))
    assert {y for _, y in pipe(profile, FLOOR_FT)} == {-1.5}


def test_a_depth_read_inside_alone_is_carried_to_the_yard_at_its_height() -> None:
    known = pipe(Profile(line((10.0, 2.5, "tile"))), FLOOR_FT)
    assert height_at(known, -6.0) == -1.5


def test_the_floor_steps_up_at_the_wall_and_by_nothing_where_it_is_level() -> None:
    profile = Profile(line((10.0, 2.5, "tile")))
    assert surface(profile, FLOOR_FT) == ((-6.0, 0.0), (0.0, 0.0), (0.0, 1.0), (20.0, 1.0))
    assert {y for _, y in surface(profile, 0.0)} == {0.0}


def test_a_basement_floor_is_not_raised() -> None:
    profile = Profile(line((10.0, 2.5, "floor"), inside="basement"))
    assert height_at(pipe(profile, FLOOR_FT), 10.0) == -2.5
