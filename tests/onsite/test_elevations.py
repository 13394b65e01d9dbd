"""A profile fitted to readings: against SciPy, by hand, and over noisy draws of houses whose pipe is known."""

import random
from dataclasses import replace
from pathlib import Path

import numpy
import pytest
from scipy.linalg import lstsq

from estimator.fieldnotes import read_job
from estimator.model.answers import Answer
from estimator.model.job import Job
from estimator.model.line import Finding, Line, Mark, Pass
from estimator.model.stretch import Stretch
from estimator.onsite.elevations import elevations
from estimator.onsite.least_squares import Equation, solve
from estimator.tables.read import demo_folder, read_tables
from estimator.tables.tables import Tables
from estimator.takeoff.quantities import FACTS, QUANTITIES
from estimator.works.methods import names

DEMO = Path(__file__).parents[2] / "estimator" / "demo" / "job.toml"
NINE_OF_TEN = 1.645


@pytest.fixture(scope="module")
def house() -> tuple[Job, Tables]:
    job = read_job(DEMO).job
    assert job is not None
    tables = read_tables(
        demo_folder(), job.day, {n: u for n, (u, _) in QUANTITIES.items()}, FACTS, (*names(), "job")
    ).tables
    assert tables is not None
    return job, tables


def test_the_answer_and_its_errors_are_those_of_scipy() -> None:
    draw = random.Random()
    for _ in range(50):
        count = draw.randint(2, 9)
        equations = [Equation(((n, 1.0),), draw.uniform(-5, 5), draw.uniform(0.1, 2)) for n in range(count)]
        equations += [
            Equation(
                ((draw.randrange(count), draw.uniform(-2, 2)), (draw.randrange(count), 1.0)), draw.uniform(-5, 5), 0.5
            )
            for _ in range(12)
        ]
        rows = numpy.zeros((len(equations), count))
        for row, e in zip(rows, equations, strict=True):
            for n, factor in e.parts:
                row[n] += factor / e.sigma
        right = numpy.array([e.value / e.sigma for e in equations])
        found = solve(count, equations)
        assert found.values == pytest.approx(lstsq(rows, right)[0], abs=1e-8)
        errors = numpy.sqrt(numpy.diag(numpy.linalg.inv(rows.T @ rows)))
        assert [found.sigma([(n, 1.0)]) for n in range(count)] == pytest.approx(errors, rel=1e-6)


def test_readings_that_leave_a_height_open_are_refused() -> None:
    with pytest.raises(ValueError, match="open"):
        solve(2, [Equation(((0, 1.0),), 1.0, 1.0)])


def level(at: float, depth_ft: float) -> Mark:
    return Mark(word="invert", stretch=Stretch(at, at), depth_ft=depth_ft, to="invert", surface="slab")


def located(at: float, depth_ft: float) -> Mark:
    return Mark(word="loc", stretch=Stretch(at, at), depth_ft=depth_ft, surface="tile")


def belly(low: float, high: float, percent: float) -> Finding:
    return Finding(id="s", kind="sag", stretch=Stretch(low, high), percent=(percent, percent))


def bore(_: float) -> Answer[float]:
    return Answer(4.0, "read")


def plain(*marks: Mark, findings: tuple[Finding, ...] = ()) -> Line:
    return Line(name="main", size_in=4.0, pipe="cast iron", marks=marks, findings=findings, downstream=-1)


def test_two_levels_give_the_slope_by_hand(house: tuple[Job, Tables]) -> None:
    """30 in at 0 ft and 25 in at 40 ft fall 5 in in 40 ft, 1/8 in a foot (arithmetic)."""
    job, tables = house
    found = elevations(job, plain(level(0, 2.5), level(40, 25 / 12)), tables)
    assert found is not None
    assert found.slope_in_per_ft(Stretch(0, 40), -1) == pytest.approx(0.125, abs=0.002)


def test_a_reading_that_does_not_fit_is_named_and_no_other(house: tuple[Job, Tables]) -> None:
    job, tables = house
    marks = [level(at, 2.5 - at / 96) for at in (0, 10, 30, 40)]
    found = elevations(job, plain(*marks, located(20, 4.0)), tables)
    assert found is not None
    assert [h.kind for h in found.heard if h.odd] == ["locate"]


def test_standing_water_levels_its_two_ends(house: tuple[Job, Tables]) -> None:
    """A level at one end of the water alone gives the other end: 28 in at 20 ft is 28 in at 26 ft; half a 4 in pipe is 2 in lower between."""
    job, tables = house
    found = elevations(job, plain(level(20, 28 / 12), findings=(belly(20, 26, 50),)), tables)
    assert found is not None
    assert 12 * found.at(26).below_slab_ft == pytest.approx(28, abs=0.01)
    assert 12 * (found.at(23).below_slab_ft - found.at(26).below_slab_ft) == pytest.approx(2, abs=0.01)


def test_true_heights_lie_in_their_bands_nine_times_of_ten(house: tuple[Job, Tables]) -> None:
    """A drain that falls 1/4 in a foot with a belly of 1 1/2 in from 20 to 28 ft, read with the errors the tables state; fresh draws."""
    job, tables = house
    draw, inside, asked = random.Random(), 0, 0
    level_sigma, eye = tables.number("level_error_in") / 12, tables.number("eye_tolerance_percent") / 2
    rise = 0.25 / 12

    def true(at: float) -> float:
        """The bottom below the slab top: both ends of the water are equally high, so the fall is lost over the belly."""
        return 3.0 - rise * min(at, 20) - rise * max(at - 28, 0)

    for _ in range(1000):
        marks = [level(at, true(at) + draw.gauss(0, level_sigma)) for at in (0, 20, 45)]
        for at in (10, 35):
            center = true(at) - 4 / 24
            marks.append(located(at, center + draw.gauss(0, max(0.1 * center, 0.5) / 2)))
        water = belly(20, 28, 37.5 + draw.gauss(0, eye))
        found = elevations(job, replace(plain(*marks), findings=(water,)), tables)
        assert found is not None
        for at, deep in ((24, true(20) + 1.5 / 12), (28, true(28)), (35, true(35))):
            height = found.at(at)
            asked += 1
            inside += abs(height.below_slab_ft - deep) <= NINE_OF_TEN * height.sigma_ft
    assert inside >= 0.9 * asked


def test_the_riser_of_a_way_in_is_a_reading_and_one_hung_on_ties_is_not(house: tuple[Job, Tables]) -> None:
    """26 in of riser in a yard 6 in below the slab, pipe of 4 in: the bottom lies 34 in below the slab top (arithmetic)."""
    job, tables = house
    job = replace(job, house=replace(job.house, slab_above_grade_ft=0.5))
    seen = Pass(number=1, access="front cleanout", flow="against flow", start_ft=-3.0, sign=1, riser_ft=26 / 12, seen=Stretch(-3, 40), placed_by="first")  # fmt: skip
    yard, slab = (Mark(word=w, stretch=Stretch(at, at), holds=True) for w, at in (("yard", -3), ("slab", 0)))
    line = replace(plain(yard, slab, level(0, 33.5 / 12), level(40, 28.5 / 12)), passes=(seen,))
    found = elevations(job, line, tables)
    assert found is not None
    (riser,) = [h for h in found.heard if h.kind == "riser"]
    assert 12 * riser.says_ft == pytest.approx(34)
    assert not riser.odd
    tied = elevations(job, replace(line, passes=(replace(seen, placed_by="ties"),)), tables)
    assert tied is not None and not any(h.kind == "riser" for h in tied.heard)


def test_inside_standing_water_the_pipe_hangs_like_a_cable(house: tuple[Job, Tables]) -> None:
    """A locate within a belly of 2 in, a quarter of the way in, makes no step there: a parabola lies 1 1/2 in down (arithmetic)."""
    job, tables = house
    line = plain(level(20, 28 / 12), located(22, 28 / 12 - 4 / 24 + 1.5 / 12), findings=(belly(20, 28, 50),))
    found = elevations(job, line, tables)
    assert found is not None
    assert 12 * found.at(22).below_slab_ft == pytest.approx(29.5, abs=0.1)
    off = elevations(job, replace(line, marks=(line.marks[0], located(22, 3.0))), tables)
    assert off is not None
    assert 12 * off.at(22).below_slab_ft < 33  # a locate may be 6 in off; the water may not


def test_where_the_leak_is_the_sheet_looks_nine_times_of_ten(house: tuple[Job, Tables]) -> None:
    """A leak in the side of a known drain, its height known to an inch: the stretches named hold its station; a thousand fresh draws."""
    job, tables = house
    draw, inside = random.Random(), 0
    error, rise = tables.number("level_error_in") / 12, 0.25 / 12
    for _ in range(1000):
        marks = [level(at, 3.0 - rise * at + draw.gauss(0, error)) for at in (0, 20, 40)]
        found = elevations(job, plain(*marks), tables)
        assert found is not None
        leak = draw.uniform(1, 39)
        bottom = 12 * (3.0 - rise * leak)
        height = bottom - draw.uniform(0, 4) + draw.gauss(0, 0.5)
        parts = found.holding(height - 0.8, height + 0.8, bore)
        inside += any(part.holds(leak) for part in parts)
    assert inside >= 0.9 * 1000


def test_beyond_the_last_reading_the_pipe_goes_on_as_it_is_laid_and_less_surely(house: tuple[Job, Tables]) -> None:
    """12 ft beyond a level, at the fall and with the error the tables state; a thousand fresh draws of what was laid there."""
    job, tables = house
    fall, error = (tables.number(n) / 12 for n in ("fall_if_unknown_in_per_ft", "slope_as_laid_error_in_per_ft"))
    draw, inside = random.Random(), 0
    for _ in range(1000):
        read = [level(at, 3.0 - fall * at + draw.gauss(0, tables.number("level_error_in") / 12)) for at in (0, 20)]
        found = elevations(job, plain(*read), tables)
        assert found is not None
        true = 3.0 - fall * 20 - (fall + draw.gauss(0, error)) * 12
        height = found.at(32)
        inside += abs(height.below_slab_ft - true) <= NINE_OF_TEN * height.sigma_ft
    assert inside >= 0.86 * 1000  # nine of ten less four standard deviations of a thousand draws


def test_what_lies_at_a_height_by_hand(house: tuple[Job, Tables]) -> None:
    """From 36 in at 0 ft to 24 in at 40 ft: pipe of 4 in reaches from 20 in to 36; 31 in lies in pipe whose bottom is at 31 to 35 in, 3 1/3 to 16 2/3 ft."""
    job, tables = house
    found = elevations(job, plain(level(0, 3.0), level(40, 2.0)), tables)
    assert found is not None
    (part,) = found.holding(31, 31, bore)
    off = 40 / 12 * NINE_OF_TEN * 12 * max(found.at(at).sigma_ft for at in (3.3, 16.7))
    assert part.from_ft == pytest.approx(10 / 3, abs=off + 0.5)
    assert part.to_ft == pytest.approx(50 / 3, abs=off + 0.5)
    assert found.holding(10, 12, bore) == ()


def test_a_line_nobody_measured_has_no_profile(house: tuple[Job, Tables]) -> None:
    job, tables = house
    assert elevations(job, plain(), tables) is None
