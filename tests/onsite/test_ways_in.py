"""Which way in a camera takes first. Limits are common practice."""

from estimator.model.job import Customer, House, Job
from estimator.model.line import Line, Mark, Pass
from estimator.model.stretch import Stretch
from estimator.onsite.ways_in import ways_in


def job(*lines: Line) -> Job:
    from datetime import date

    house = House(floor="slab", jurisdiction="demo")
    return Job(
        number="1",
        day=date(2026, 11, 18),
        prepared_by="R.",
        customer=Customer(name="A", site="B"),
        house=house,
        lines=lines,
    )


def mark(word: str, at: float, degrees: float | None = None, name: str | None = None) -> Mark:
    return Mark(word=word, stretch=Stretch(at, at), degrees=degrees, name=name)


def line(size_in: float, *marks: Mark, ends_ft: float = 40.0) -> Line:
    seen = Pass(number=1, access="front cleanout", flow="against flow", start_ft=0.0, sign=1, seen=Stretch(0, ends_ft))
    return Line(name="main", size_in=size_in, pipe="clay", marks=marks, passes=(seen,))


def test_a_camera_in_a_two_inch_line_may_not_come_out() -> None:
    assert [w.may_stick for w in ways_in(job(line(2.0)))] == [True]
    assert [w.may_stick for w in ways_in(job(line(3.0)))] == [False]


def test_three_square_bends_are_one_too_many_and_long_sweeps_do_not_count() -> None:
    squares = [mark("bend", at, 90) for at in (5, 10, 15)]
    assert ways_in(job(line(4.0, *squares)))[0].may_stick
    assert not ways_in(job(line(4.0, *squares[:2], mark("bend", 20, 45))))[0].may_stick


def test_the_way_with_fewer_square_bends_comes_first() -> None:
    found = ways_in(
        job(
            line(
                4.0,
                mark("bend", 5, 90),
                mark("bend", 8, 90),
                mark("bend", 11, 90),
                mark("cleanout", 15, name="side yard"),
            )
        )
    )
    assert [w.name for w in found] == ["side yard", "front cleanout"]
