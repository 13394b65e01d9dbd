"""A stretch of line in; how deep the new trench bottom is along it, and how well that is known, out."""

from typing import Literal

from estimator.knowledge.pipes import pipe_size
from estimator.knowledge.trench import bedding_in
from estimator.model.frozen import Frozen
from estimator.model.say import Feet
from estimator.model.stretch import Stretch, missing
from estimator.works.case import Case
from estimator.works.earth import Depth
from estimator.works.ground import is_rock
from estimator.works.rounding import up

INCHES_PER_FT = 12.0


class Bottom(Frozen):
    """Trench bottom below the ground along a hole, distances from the hole's own start, ft.

    `dug` is rounded up to the firm's step and gives volumes; `exact_ft` is the deepest unrounded bottom; `safety_ft` adds
    the locator's tolerance and is what limits are compared with. `unlocated`: no depth was ever read.
    """

    dug: tuple[Depth, ...]
    exact_ft: float
    tolerance_ft: float
    unlocated: bool

    @property
    def safety_ft(self) -> float:
        return self.exact_ft + self.tolerance_ft

    @property
    def deepest_ft(self) -> float:
        return max(d.depth_ft for d in self.dug)


def outside_ft(case: Case) -> float:
    """Outside diameter of the new pipe, ft."""
    return pipe_size(case.bore_in).outside_in / INCHES_PER_FT


def bedding_ft(case: Case) -> float:
    """What the firm lays under a pipe, ft; over rock never less than the published least, where that is more."""
    laid = case.number("bedding_ft")
    return max(laid, bedding_in(over_rock=True) / INCHES_PER_FT) if is_rock(case) else laid


def tolerance_ft(case: Case, depth_ft: float) -> float:
    """How far a locator's depth may be off: the larger of a share of the depth and a least amount, ft."""
    if case.line.depth_found:
        return 0.0
    share = case.number("locator_tolerance_percent") / 100
    return max(share * depth_ft, case.number("locator_tolerance_min_ft"))


def _stops(case: Case, hole: Stretch) -> list[float]:
    """The hole's ends and every station between them at which a depth was read."""
    read = [
        station
        for mark in case.profile.marks("depth", "loc", "pothole", "invert")
        if mark.depth_ft is not None
        for station in (mark.stretch.from_ft, mark.stretch.to_ft)
        if hole.from_ft < station < hole.to_ft
    ]
    return sorted({hole.from_ft, hole.to_ft, *read})


Known = Literal["read", "between", "carried", "assumed"]


def _nearest(read: list[tuple[float, float]], at_ft: float) -> float:
    """The depth known at a place or, where its ground has none such as a foot under the slab, at the place nearest to it.

    >>> _nearest([(10.0, 3.0), (20.0, 4.0)], 20.0), _nearest([(10.0, 3.0), (20.0, 4.0)], 21.0)
    (4.0, 4.0)
    """
    return min(read, key=lambda known: abs(known[0] - at_ft))[1]


def pothole_reaches(case: Case, hole: Stretch) -> bool:
    """A hand can uncover the pipe here: nowhere in the hole does its top lie deeper than the firm's deepest pothole."""
    read = [case.profile.depth_to_centre_ft(at).value for at in _stops(case, hole)]
    deepest = max((d for d in read if d is not None), default=case.number("depth_if_unlocated_ft"))
    return deepest - outside_ft(case) / 2 <= case.number("pothole_max_ft") + 1e-9


def uncovered(case: Case, hole: Stretch) -> bool:
    """The pipe was seen with the eye so near to every place of the hole that no locator's error is left.

    A pothole deeper than one can be dug by hand is no such sight.
    """
    reach, deepest = case.number("pothole_reach_ft"), case.number("pothole_max_ft")
    marks = [m for m in case.profile.marks("pothole") if m.depth_ft is None or m.depth_ft <= deepest + 1e-9]
    seen = [Stretch(m.stretch.from_ft - reach, m.stretch.to_ft + reach) for m in marks]
    return bool(seen) and not missing(hole, seen)


def bottom(case: Case, hole: Stretch) -> Bottom:
    """Depth to the pipe's centre + half its outside diameter + bedding, at every place a depth is known.

    A depth read at one place only is taken over the whole hole, and said so.
    """
    below_centre = outside_ft(case) / 2 + bedding_ft(case)
    step = case.number("dig_step_ft")
    answers = [(at, case.profile.depth_to_centre_ft(at)) for at in _stops(case, hole)]
    read = [(at, answer.value) for at, answer in answers if answer.value is not None and answer.how != "assumed"]
    unlocated = not read
    guessed = [(at, answer.value) for at, answer in answers if answer.value is not None]
    fallback = [(answers[0][0], case.number("depth_if_unlocated_ft"))]
    centres = [(at, _nearest(read or guessed or fallback, at)) for at, _ in answers]
    exact = max(centre for _, centre in centres) + below_centre
    carried: set[Known] = {"carried"} if len(read) < len(answers) else set()
    _say_how_known(case, hole, {answer.how for _, answer in answers} | carried, unlocated)
    return Bottom(
        dug=tuple(Depth(at - hole.from_ft, up(centre + below_centre, step)) for at, centre in centres),
        exact_ft=exact,
        tolerance_ft=0.0 if uncovered(case, hole) else tolerance_ft(case, max(centre for _, centre in centres)),
        unlocated=unlocated,
    )


def _say_how_known(case: Case, hole: Stretch, known: set[Known], unlocated: bool) -> None:
    readings = {
        mark.stretch for end in (hole.from_ft, hole.to_ft) for mark in case.profile.depth_to_centre_ft(end).marks
    }
    if unlocated:
        case.paper.facts.add("depth_unlocated")
        guess = case.profile.depth_to_centre_ft(hole.middle_ft).value
        depth = case.number("depth_if_unlocated_ft") if guess is None else guess
        case.paper.assume(
            "the depth is not measured; we assume {depth} to the center of the pipe over {length}",
            depth=Feet(depth),
            length=Feet(hole.length_ft),
        )
    elif len(readings) == 1 and "carried" in known:
        case.paper.assume("one located depth applies to {length}", length=Feet(hole.length_ft))
    elif "carried" in known:
        case.paper.assume(
            "past our last depth reading we assume the same depth (up to {length} of pipe)",
            length=Feet(hole.length_ft),
        )
