"""Where a buried cleanout lies: by hand, against SciPy, and over noisy draws of runs and locates whose place is known."""

import random
from dataclasses import replace
from datetime import date
from math import hypot
from pathlib import Path

import numpy
import pytest
from scipy.linalg import lstsq

from estimator.cli.price_tables import tables_for
from estimator.model.line import Line, Mark, Origin, Pass, Tie
from estimator.model.stretch import Stretch
from estimator.onsite.buried_cleanout import buried_cleanouts
from estimator.onsite.cleanout_sheet import cleanout_sheet
from estimator.onsite.sightings import fittings_of
from estimator.tables.tables import Tables
from tests.onsite.test_after_lift import house

NINE_OF_TEN = 1.645


@pytest.fixture(scope="module", name="tables")
def _tables() -> Tables:
    tables, _ = tables_for(date(2026, 11, 29), Path(__file__).parents[2] / "price_tables")
    assert tables is not None
    return tables


def mark(word: str, at: float, run: int, reading: float, back: bool = False, **more: object) -> Mark:
    origin = Origin(pass_number=run, reading_ft=reading, back=back)
    return Mark(word=word, stretch=Stretch(at, at), origin=origin, **more)  # type: ignore[arg-type]


def run(number: int, start: float, *ties: tuple[str, float], sign: int = 1, placed: str = "first") -> Pass:
    return Pass(
        number=number, access=f"way {number}", flow="with flow", start_ft=start, sign=sign, placed_by=placed,  # type: ignore[arg-type]
        ties=tuple((what, 0.0) for what, _ in ties), tie_readings_ft=tuple((at, None) for _, at in ties),
    )  # fmt: skip


def line(marks: list[Mark], passes: list[Pass]) -> Line:
    return Line(name="main", size_in=4, pipe="PVC", marks=tuple(marks), passes=tuple(passes))


BURIED = {"signs": ("buried", "two-way")}


def test_in_and_back_are_averaged() -> None:
    """28.2 going in and 28.6 pulled back: 28.4, by hand."""
    marks = [mark("cleanout", 28.2, 1, 28.2, **BURIED), mark("cleanout", 28.6, 1, 28.6, back=True)]
    (found,) = fittings_of(line(marks, [run(1, 0.0)]), 0.3, 0.01)
    assert found.station_ft == pytest.approx(28.4, abs=0.01)
    assert found.sigma_ft == pytest.approx(hypot(0.3 / 2**0.5, 0.284), abs=0.02)
    assert len(found.sightings) == 2


def test_two_runs_are_adjusted_as_scipy_adjusts_them() -> None:
    """A run from 0 ft and one from 50 ft back, tied at a branch: unknowns two stations, a zero and a counter for each run."""
    marks = [mark("branch", 12.2, 1, 12.2, name="kitchen"), mark("cleanout", 28.2, 1, 28.2, **BURIED)]
    second = run(2, 50.0, ("branch kitchen", 37.6), ("28.2", 21.5), sign=-1, placed="ties")
    found = fittings_of(line(marks, [run(1, 0.0), second]), 0.3, 0.01)
    rows = [  # branch, cleanout, zero 1, zero 2, counter 1, counter 2
        ([1, 0, -1, 0, -12.2, 0], 12.2, 0.3), ([1, 0, 0, -1, 0, 37.6], 50 - 37.6, 0.3),
        ([0, 1, -1, 0, -28.2, 0], 28.2, 0.3), ([0, 1, 0, -1, 0, 21.5], 50 - 21.5, 0.3),
        ([0, 0, 1, 0, 0, 0], 0, 0.01), ([0, 0, 0, 1, 0, 0], 0, 5.0), ([0, 0, 0, 0, 1, 0], 0, 0.01), ([0, 0, 0, 0, 0, 1], 0, 0.01),
    ]  # fmt: skip
    matrix = numpy.array([[v / s for v in row] for row, _, s in rows])
    wanted = lstsq(matrix, numpy.array([v / s for _, v, s in rows]))[0]
    errors = numpy.sqrt(numpy.diag(numpy.linalg.inv(matrix.T @ matrix)))
    assert [f.station_ft for f in found] == pytest.approx(wanted[:2], abs=1e-6)
    assert [f.sigma_ft for f in found] == pytest.approx(errors[:2], rel=1e-6)


def test_a_sighting_that_does_not_fit_is_named() -> None:
    """Seen at 28.2 and 28.3 by the first run; the second, tied in at two branches, makes it 1.4 ft more."""
    marks = [mark("cleanout", at, 1, at, back=back, **BURIED) for at, back in ((28.2, False), (28.3, True))]
    marks += [mark("branch", at, 1, at, name=name) for at, name in ((10.0, "kitchen"), (20.0, "hall bath"))]
    ties = ("branch kitchen", 40.0), ("branch hall bath", 30.0), ("cleanout", 20.4)
    (*_, found) = fittings_of(line(marks, [run(1, 0.0), run(2, 50.0, *ties, sign=-1, placed="ties")]), 0.3, 0.01)
    assert [(s.run, s.reading_ft) for s in found.odd] == [(2, 20.4)]


def test_two_wyes_up_may_be_one(tables: Tables) -> None:
    marks = [mark("branch", at, 1, at, side="up") for at in (30.0, 31.2)] + [mark("branch", 40, 1, 40, side="left")]
    (spot,) = buried_cleanouts(line(marks, [run(1, 0.0)]), tables)
    assert spot.suspected
    assert spot.fitting.station_ft == pytest.approx(30, abs=0.1)
    assert not buried_cleanouts(line(marks[::2], [run(1, 0.0)]), tables)


def test_a_locate_at_the_fitting_counts_and_one_elsewhere_does_not(tables: Tables) -> None:
    walls = (Tie(6.0, "front wall"), Tie(11.0, "the East wall"))
    marks = [mark("cleanout", 28.2, 1, 28.2, **BURIED), mark("loc", 28.2, 1, 28.2, ties=walls)]
    (spot,) = buried_cleanouts(line(marks, [run(1, 0.0)]), tables)
    assert (spot.located, [(w.wall, w.ft) for w in spot.walls]) == (1, [("east wall", 11.0), ("front wall", 6.0)])
    away = [marks[0], mark("loc", 20, 1, 20, ties=walls)]
    (spot,) = buried_cleanouts(line(away, [run(1, 0.0)]), tables)
    assert (spot.located, spot.walls) == (0, ())


def test_the_true_spot_lies_in_its_band_nine_times_of_ten(tables: Tables) -> None:
    """Two runs with counters of their own, in and back, each with a locate at the fitting, read with the errors the tables state."""
    draw, along, on_ground, asked = random.Random(), 0, 0, 0
    reading, counter = tables.number("reel_reading_error_ft"), tables.number("counter_error_percent") / 100
    spot_error = hypot(tables.number("locate_spot_error_ft"), tables.number("tape_error_ft"))
    for _ in range(1000):
        true, branch = draw.uniform(20, 35), draw.uniform(5, 15)
        first, second = (1 + draw.gauss(0, counter) for _ in range(2))
        reads = [true * first + draw.gauss(0, reading) for _ in range(2)]
        back = [(50 - at) * second + draw.gauss(0, reading) for at in (branch, true)]
        tied = [Tie(true + 5 + draw.gauss(0, spot_error) + draw.gauss(0, reading), "front wall") for _ in range(2)]
        marks = [
            mark("branch", 0, 1, branch * first + draw.gauss(0, reading), name="kitchen"),
            mark("cleanout", reads[0], 1, reads[0], **BURIED),
            mark("cleanout", reads[1], 1, reads[1], back=True),
            mark("loc", reads[0], 1, reads[0], ties=(tied[0],)),
            mark("loc", reads[0], 2, back[1], ties=(tied[1],)),
        ]  # fmt: skip
        marks[0] = replace(marks[0], stretch=Stretch(branch, branch))
        other = run(2, 50.0, ("branch kitchen", back[0]), ("cleanout", back[1]), sign=-1, placed="ties")
        (spot,) = buried_cleanouts(line(marks, [run(1, 0.0), other]), tables)
        asked += 1
        along += abs(spot.fitting.station_ft - true) <= NINE_OF_TEN * spot.fitting.sigma_ft
        (wall,) = spot.walls
        on_ground += abs(wall.ft - true - 5) <= wall.within_ft(90)
    assert along >= 0.86 * asked  # nine of ten less four standard deviations of a thousand draws
    assert on_ground >= 0.86 * asked


def test_the_sheet_says_what_to_log_where_none_is_noted(tables: Tables) -> None:
    assert "two-way buried" in str(cleanout_sheet(house(), tables).answer)
