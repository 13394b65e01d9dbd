"""What a foundation lift did to a drain: by hand, against SciPy, and over noisy draws of a lift that is known."""

import random
from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from itertools import pairwise
from pathlib import Path

import numpy
import pytest
from scipy.interpolate import RegularGridInterpolator

from estimator.cli.price_tables import tables_for
from estimator.model.afterwards import Afterwards, LiftHeight, LiftLevel
from estimator.model.job import Customer, House, Job
from estimator.model.line import Line, Mark, Pass, Tie
from estimator.model.stretch import Stretch
from estimator.onsite.after_lift import Lifted, after_lift
from estimator.onsite.elevations import NINE_OF_TEN
from estimator.onsite.lift_sheet import lift_sheet
from estimator.onsite.lift_surface import Place, surface_of
from estimator.tables.tables import Tables

CORNERS = ((0.0, 0.0), (40.0, 0.0), (0.0, 30.0), (40.0, 30.0))


@pytest.fixture(scope="module", name="tables")
def _tables() -> Tables:
    tables, _ = tables_for(date(2026, 11, 29), Path(__file__).parents[2] / "price_tables")
    assert tables is not None
    return tables


def height(x: float, y: float, inches: float) -> LiftHeight:
    walls = (("front wall", x), ("the East wall", y))
    return LiftHeight(name=f"{x:g}, {y:g}", from_walls=walls, raised_ft=inches / 12)


def mark(word: str, at: float, **more: object) -> Mark:
    return Mark(word=word, stretch=Stretch(at, at), **more)  # type: ignore[arg-type]


def house(*marks: Mark) -> Job:
    """A drain 30 ft long straight in from the front wall, 10 ft from the east wall, flowing to the street."""
    seen = Pass(number=1, access="cleanout", flow="against flow", start_ft=-3, sign=1, seen=Stretch(-3, 30))
    taped = [mark("loc", at, ties=(Tie(at, "front wall"), Tie(10.0, "east wall"))) for at in (0.0, 15.0, 30.0)]
    slab = Mark(word="slab", stretch=Stretch(0, 0), holds=True)
    line = Line(
        name="main", size_in=4, pipe="cast iron", marks=(slab, *taped, *marks), passes=(seen,), zero="slab edge", downstream=-1
    )  # fmt: skip
    return Job(
        number="1", day=date(2026, 11, 29), prepared_by="R.", customer=Customer(name="A", site="B"),
        house=House(floor="slab", jurisdiction="demo"), lines=(line,),
    )  # fmt: skip


def invert(at: float, depth_ft: float) -> Mark:
    return mark("invert", at, depth_ft=depth_ft, to="invert", surface="slab")


def lifted(job: Job, corners: list[float], tables: Tables, *levels: LiftLevel) -> Lifted:
    heights = [height(x, y, inches) for (x, y), inches in zip(CORNERS, corners, strict=True)]
    found = after_lift(job.lines[0], job, levels, surface_of(heights, 0.25), tables)
    assert found is not None
    return found


def test_four_corners_are_joined_as_scipy_joins_them() -> None:
    """Source: SciPy's RegularGridInterpolator, linear on a cell of four corners (bilinear)."""
    draw = random.Random()
    for _ in range(50):
        corners = [draw.uniform(0, 5) for _ in CORNERS]
        surface = surface_of([height(x, y, z) for (x, y), z in zip(CORNERS, corners, strict=True)], 0.01)
        grid = RegularGridInterpolator(([0, 40], [0, 30]), numpy.array(corners).reshape(2, 2, order="F"))
        x, y = draw.uniform(0, 40), draw.uniform(0, 30)
        assert surface.at(Place(x, y)).inches == pytest.approx(float(grid((x, y))), abs=0.01)


def test_two_equal_heights_raise_all_and_the_far_side_is_less_sure() -> None:
    surface = surface_of([height(0, 0, 2), height(40, 0, 2)], 0.25)
    near, far = surface.at(Place(20, 0)), surface.at(Place(20, 30))
    assert (near.inches, far.inches) == pytest.approx((2, 2), abs=0.05)
    assert far.sigma_in > 3 * near.sigma_in


def test_a_lift_without_heights_is_refused() -> None:
    with pytest.raises(ValueError, match="at least one"):
        surface_of([], 0.25)


def test_a_fall_that_turns_by_hand(tables: Tables) -> None:
    """1/8 in a foot over 30 ft is 3 3/4 in; the front rose 4 1/2 in more than the back: 3/4 in uphill, 1/40 in a foot."""
    job = house(invert(0, 2.5), invert(30, 2.5 - 3.75 / 12))
    whole = lifted(job, [4.5 * 40 / 30, 0, 4.5 * 40 / 30, 0], tables)  # 40 ft of house: the drain ends at 30 of them
    assert sum(r.change * abs(r.upper.station_ft - r.lower.station_ft) for r in whole.runs) == pytest.approx(
        -4.5, abs=0.05
    )
    assert {r.turns for r in whole.runs} == {"yes"}
    assert all(r.after == pytest.approx(-0.75 / 30, abs=0.004) for r in whole.runs)


def test_levels_say_that_the_pipe_stayed_and_pulled_its_riser(tables: Tables) -> None:
    """The slab rose 2 in everywhere and the pipe lies 2 in deeper below it: it stayed, and its riser was pulled 2 in."""
    job = house(mark("branch", 12, name="hall bath", size_in=3), invert(0, 2.5), invert(30, 2.2))
    levels = [LiftLevel(line="main", at_ft=at, before_ft=2.3, after_ft=2.3 + 2 / 12) for at in (0, 12, 30)]
    found = lifted(job, [2, 2, 2, 2], tables, *levels)
    branch = next(p for p in found.points if p.what == "hall bath")
    assert branch.pipe is not None
    assert branch.pipe.inches == pytest.approx(0, abs=0.02)
    assert branch.pull.inches == pytest.approx(2, abs=0.02)
    against = [replace(level, below="benchmark", after_ft=2.3 - 2 / 12) for level in levels]
    rode = lifted(job, [2, 2, 2, 2], tables, *against)
    assert next(p for p in rode.points if p.what == "hall bath").pull.inches == pytest.approx(0, abs=0.02)


def test_the_joint_at_the_edge_by_hand(tables: Tables) -> None:
    """3 in over one length of 5 ft: 3/5 in a foot, beyond the 1/2 in a foot of clay joints (ASTM C425, from memory)."""
    found = lifted(house(), [3, 3, 3, 3], tables)
    (edge,) = found.joints
    assert edge.outside
    assert edge.turn.inches == pytest.approx(0.6, abs=0.01)
    sheet = lift_sheet(house(), Afterwards(lifts=tuple(height(x, y, 3) for x, y in CORNERS)), tables)
    assert "Joints that may open: 1" in str(sheet.answer)


def test_the_true_pull_and_turn_lie_in_their_bands_nine_times_of_ten(tables: Tables) -> None:
    """Corner heights read to 1/4 in, the drain taped with the errors the tables state; fresh draws of the readings and of the lift."""
    draw, inside, asked = random.Random(), 0, 0
    spot, tape = tables.number("locate_spot_error_ft"), tables.number("tape_error_ft")
    for _ in range(1000):
        true = [draw.uniform(0, 4) for _ in CORNERS]
        exact = surface_of([height(x, y, z) for (x, y), z in zip(CORNERS, true, strict=True)], 0.001)
        read = [z + draw.gauss(0, 0.25) for z in true]

        def tied(at: float) -> tuple[Tie, ...]:
            error = (spot**2 + tape**2) ** 0.5
            return (Tie(at + draw.gauss(0, error), "front wall"), Tie(10 + draw.gauss(0, error), "east wall"))

        job = house(mark("branch", 12, name="hall bath", size_in=3))
        line = job.lines[0]
        marks = tuple(replace(m, ties=tied(m.stretch.from_ft)) if m.ties else m for m in line.marks)
        job = replace(job, lines=(replace(line, marks=marks),))
        found = lifted(job, read, tables)
        for point in found.points:
            asked += 1
            rose = exact.at(Place(point.station_ft, 10)).inches
            inside += abs(point.slab.inches - rose) <= NINE_OF_TEN * point.slab.sigma_in
        for run in found.runs:
            asked += 1
            length = run.upper.station_ft - run.lower.station_ft
            change = exact.difference(Place(run.upper.station_ft, 10), Place(run.lower.station_ft, 10)).inches / length
            inside += abs(run.change - change) <= NINE_OF_TEN * run.sigma
    assert inside >= 0.9 * asked - 0.02 * asked  # two standard deviations of a thousand draws


LEVELS_AT = (0.0, 8.0, 15.0, 24.0, 30.0)


def left_behind(pulls: Sequence[float], error_in: float = 0.0, draw: random.Random | None = None) -> list[LiftLevel]:
    """Levels below the slab top of a pipe that stayed so far behind the slab, inches, each read with an error."""

    def read(feet: float) -> float:
        return feet + (draw.gauss(0, error_in) / 12 if draw else 0.0)

    return [
        LiftLevel(line="main", at_ft=at, before_ft=read(2.4), after_ft=read(2.4 + pull / 12))
        for at, pull in zip(LEVELS_AT, pulls, strict=True)
    ]


def test_between_two_levels_pipe_runs_straight_and_its_risers_are_told(tables: Tables) -> None:
    """The pipe stayed 1 in behind at 8 ft and 4 in at 15 ft: a riser at 12 ft was pulled 2 5/7 in (arithmetic)."""
    job = house(mark("branch", 12, name="hall bath", size_in=3), invert(0, 2.4), invert(30, 2.1))
    found = lifted(job, [3, 3, 3, 3], tables, *left_behind([0, 1, 4, 4, 4]))
    branch = next(p for p in found.points if p.what == "hall bath")
    assert branch.pull.inches == pytest.approx(1 + 3 * 4 / 7)
    own = next(p for p in found.points if p.station_ft == 15)
    assert branch.pull.sigma_in < own.pull.sigma_in  # two levels share the error
    told = {(r.lower.station_ft, r.upper.station_ft): r for r in found.runs}
    assert all(run.measured for run in found.runs)
    assert told[12, 15].change == pytest.approx(told[8, 12].change) == pytest.approx(-3 / 7)  # one straight piece
    assert told[12, 15].sigma == pytest.approx(told[8, 12].sigma, rel=0.2)


def test_falls_beyond_the_last_level_are_not_known(tables: Tables) -> None:
    found = lifted(house(invert(0, 2.5), invert(15, 2.3)), [2, 2, 2, 2], tables)
    assert [run.before is None for run in found.runs] == [True, False]
    assert not any(run.turns for run in found.runs if run.before is None)


def test_every_joint_that_turned_is_told_by_hand(tables: Tables) -> None:
    """Left behind 0, 0, 4.2, 4.2 and 0 in at 0, 8, 15, 24 and 30 ft: joints turn 0.6, 0.6 and 0.7 in a foot (arithmetic)."""
    found = lifted(house(), [5, 5, 5, 5], tables, *left_behind([0, 0, 4.2, 4.2, 0]))
    turned = {joint.point.station_ft: abs(joint.turn.inches) for joint in found.joints if not joint.outside}
    assert turned == pytest.approx({8: 0.6, 15: 0.6, 24: 0.7})
    after = Afterwards(
        lifts=tuple(height(x, y, 5) for x, y in CORNERS), lift_levels=tuple(left_behind([0, 0, 4.2, 4.2, 0]))
    )
    sheet = lift_sheet(house(), after, tables)
    joints = next(b for b in sheet.blocks if "joints" in str(b.heading))
    assert len(joints.rows) == 4  # those and the first one outside
    first = next(b for b in sheet.blocks if "first" in str(b.heading))
    assert sum("Camera: line main, the joint at" in str(line) for line in first.lines) == 3
    assert "Joints that may open: 4" in str(sheet.answer)


def test_a_joint_turns_by_the_angle_between_its_two_pipes(tables: Tables) -> None:
    """Source: the angle between two vectors (numpy); for small angles its tangent is the change of slope."""
    draw = random.Random()
    for _ in range(50):
        pulls = [draw.uniform(0, 2) for _ in LEVELS_AT]
        found = lifted(house(), [3, 3, 3, 3], tables, *left_behind(pulls))
        ways = [
            numpy.array([b - a, (q - p) / 12])
            for a, b, p, q in zip(LEVELS_AT, LEVELS_AT[1:], pulls, pulls[1:], strict=False)
        ]
        angles = [
            numpy.arccos(min(1.0, one @ other / numpy.linalg.norm(one) / numpy.linalg.norm(other)))
            for one, other in pairwise(ways)
        ]
        turned = [abs(joint.turn.inches) for joint in reversed(found.joints) if not joint.outside]
        assert turned == pytest.approx([12 * numpy.tan(angle) for angle in angles], abs=0.01)


def test_a_house_raised_evenly_turns_no_joint_under_it(tables: Tables) -> None:
    found = lifted(house(), [4, 2, 4, 2], tables, *left_behind([0] * 5))
    assert all(joint.turn.inches == pytest.approx(0) for joint in found.joints if not joint.outside)


def test_without_levels_joints_under_the_slab_are_not_told(tables: Tables) -> None:
    sheet = lift_sheet(house(), Afterwards(lifts=tuple(height(x, y, 3) for x, y in CORNERS)), tables)
    assert any("Joints under the slab: not known" in str(line) for b in sheet.blocks for line in b.lines)


def test_the_true_turn_of_a_joint_lies_in_its_band_nine_times_of_ten(tables: Tables) -> None:
    """Levels read with the error the tables state, a thousand fresh draws; and a riser's pull beside them."""
    draw, inside, pulled, asked = random.Random(), 0, 0, 0
    error = tables.number("level_error_in")
    for _ in range(1000):
        pulls = [draw.uniform(0, 3) for _ in LEVELS_AT]
        truth = {
            j.point.station_ft: j.turn.inches for j in lifted(house(), [4] * 4, tables, *left_behind(pulls)).joints
        }
        found = lifted(house(), [4] * 4, tables, *left_behind(pulls, error, draw))
        for joint in found.joints:
            if not joint.outside:
                asked += 1
                inside += abs(joint.turn.inches - truth[joint.point.station_ft]) <= NINE_OF_TEN * joint.turn.sigma_in
        middle = next(p for p in found.points if p.station_ft == 15)
        pulled += abs(middle.pull.inches - pulls[2]) <= NINE_OF_TEN * middle.pull.sigma_in
    assert inside >= 0.86 * asked  # nine of ten less four standard deviations of a thousand draws
    assert pulled >= 0.86 * 1000


def test_without_heights_the_sheet_says_what_to_type(tables: Tables) -> None:
    assert "[[lift]]" in str(lift_sheet(house(), Afterwards(), tables).answer)


def test_without_three_levels_the_stations_that_tell_the_joints_are_named(tables: Tables) -> None:
    """Read before at 0, 3, 15 and 30 ft: the two ends and the one nearest their middle; one read already leaves two."""
    before = [invert(at, 2.5 - at / 96) for at in (0, 3, 15, 30)]
    assert lifted(house(*before), [2, 2, 2, 2], tables).again == (0, 15, 30)
    one = LiftLevel(line="main", at_ft=15, before_ft=2.3, after_ft=2.3)
    assert lifted(house(*before), [2, 2, 2, 2], tables, one).again == (0, 30)
    three = [LiftLevel(line="main", at_ft=at, before_ft=2.3, after_ft=2.3) for at in (0, 15, 30)]
    done = lifted(house(*before), [2, 2, 2, 2], tables, *three)
    assert (done.again, done.another) == ((), ())
    told = [joint for joint in done.joints if not joint.outside]
    assert len(told) == 1


def test_where_too_few_were_read_before_the_sheet_says_what_to_read_another_time(tables: Tables) -> None:
    found = lifted(house(invert(0, 2.5)), [2, 2, 2, 2], tables)
    assert (found.again, found.another) == ((), (0, 15, 30))
    heights = [height(x, y, 2) for x, y in CORNERS]
    sheet = lift_sheet(house(invert(0, 2.5)), Afterwards(lifts=tuple(heights)), tables)
    assert any("Before another lift" in str(line) for line in sheet.blocks[0].lines)
    again = lift_sheet(house(*(invert(at, 2.5) for at in (0, 15, 30))), Afterwards(lifts=tuple(heights)), tables)
    assert any("again at" in str(line) for line in again.blocks[0].lines)
