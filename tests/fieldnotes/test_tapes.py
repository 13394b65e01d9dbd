"""A tape and the reel between two locates: geometry says which of the two can be wrong."""

import pytest

from estimator.fieldnotes.agreement import tape_pairs, worst_pairs
from estimator.model.line import Line, Mark, Tie
from estimator.model.stretch import Stretch


def loc(at_ft: float, *tapes: tuple[float, str]) -> Mark:
    return Mark(word="loc", stretch=Stretch(at_ft, at_ft), ties=tuple(Tie(ft, to) for ft, to in tapes))


def line(*marks: Mark) -> Line:
    return Line(name="main", size_in=4, pipe="clay", marks=marks)


def test_a_pipe_that_runs_square_to_the_wall_shows_how_short_the_reel_reads() -> None:
    [pair] = worst_pairs(line(loc(14.5, (14.0, "front wall")), loc(28.0, (28.0, "the Front wall"))))
    assert (pair.tape_ft, pair.reel_ft, pair.short_ft) == (14.0, 13.5, 0.5)


def test_a_pipe_that_runs_along_the_wall_says_nothing_about_the_reel() -> None:
    assert list(worst_pairs(line(loc(14.5, (6.0, "front wall")), loc(28.0, (6.2, "front wall"))))) == []


def test_tapes_from_two_walls_are_never_compared() -> None:
    assert tape_pairs(line(loc(14.5, (14.0, "front wall")), loc(28.0, (40.0, "east wall")))) == ()


def test_of_several_locates_the_pair_that_shows_most_is_told_once_a_wall() -> None:
    marks = (loc(0, (0, "front wall")), loc(10, (10.2, "front wall")), loc(20, (21.0, "front wall"), (3, "hall wall")))
    [pair] = worst_pairs(line(*marks))
    assert pair.short_ft == pytest.approx(1.0)
