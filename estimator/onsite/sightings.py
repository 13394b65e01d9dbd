"""Fittings seen on several camera runs, in and back, in; each one's station with its error, and sightings that do not fit, out.

Every sighting says: station = where the run began + reading, but for what the counter is off (a share of the way, one for each
run), for how well the run was tied in (one length for each run), and for the reading itself. All are adjusted at once by least
squares (Gauss and Markov), so a run pulled back, and a run from another way in, each make the place surer.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from estimator.model.frozen import Frozen
from estimator.model.line import Line, Pass
from estimator.onsite.least_squares import Equation, solve

FITTINGS = ("branch", "cleanout")
SAME_FT = 1.5
"""Sightings of one kind nearer to each other than this are one fitting."""
ODD = 2.5
"""Standard errors from what the other sightings say (one sound sighting in eighty)."""
ZERO_FT, TIED_FT = 0.5, 5.0
"""How far a run's own zero may be off where it began at a known access, and where it hangs on ties alone (judgment)."""


class Sighting(Frozen):
    """A fitting as one run saw it: the run's number, its reading, and whether the camera was pulled back."""

    run: int
    reading_ft: float
    back: bool


class Fitting(Frozen):
    """A fitting with all sightings of it; `odd` are those that do not fit the others."""

    word: str
    name: str
    signs: frozenset[str]
    station_ft: float
    sigma_ft: float
    sightings: tuple[Sighting, ...]
    odd: tuple[Sighting, ...]


@dataclass(slots=True)
class _Seen:
    word: str
    name: str
    signs: set[str]
    rough_ft: float
    sightings: list[Sighting]


def fittings_of(line: Line, reading_error_ft: float, counter_error: float) -> tuple[Fitting, ...]:
    """Return the line's branches and cleanouts, in order of station. `counter_error` is a share of the way."""
    seen = _grouped(line)
    runs = {p.number: p for p in line.passes}
    first = min(runs, default=1)
    numbers = list(runs)
    offset, scale = len(seen), len(seen) + len(numbers)
    equations: list[Equation] = []
    whose: list[tuple[int, Sighting]] = []
    for n, one in enumerate(seen):
        for sighting in one.sightings:
            run = runs[sighting.run]
            way = run.sign * (sighting.reading_ft - run.riser_ft)
            at = numbers.index(sighting.run)
            parts = ((n, 1.0), (offset + at, -1.0), (scale + at, -way))
            equations.append(Equation(parts, run.start_ft + way + run.sign * run.shift_ft, reading_error_ft))
            whose.append((n, sighting))
    for at, number in enumerate(numbers):
        equations.append(Equation(((offset + at, 1.0),), 0.0, _zero_error(runs[number], number == first)))
        equations.append(Equation(((scale + at, 1.0),), 0.0, counter_error))
    if not whose:
        return ()
    solution = solve(len(seen) + 2 * len(numbers), equations)
    odd = [pair for pair, e in zip(whose, equations, strict=False) if abs(solution.misfit(e)) > ODD]
    found = [
        Fitting(
            one.word,
            one.name,
            frozenset(one.signs),
            solution.values[n],
            solution.sigma([(n, 1.0)]),
            tuple(one.sightings),
            tuple(s for m, s in odd if m == n),
        )
        for n, one in enumerate(seen)
    ]
    return tuple(sorted(found, key=lambda f: f.station_ft))


def _zero_error(run: Pass, first: bool) -> float:
    """How well the run's beginning is known on the line: the first run makes the zero itself."""
    if first:
        return 0.01
    return TIED_FT if run.placed_by == "ties" or run.shift_ft else ZERO_FT


def _grouped(line: Line) -> list[_Seen]:
    """Fittings with their sightings: those written as marks, and those by which later runs were tied in."""
    seen: list[_Seen] = []
    runs = {p.number for p in line.passes}
    for mark in line.marks:
        reading, number = mark.origin.reading_ft, mark.origin.pass_number
        if mark.word in FITTINGS and reading is not None and number in runs:
            sighting = Sighting(number, reading, mark.origin.back)
            one = _near(seen, mark.stretch.from_ft, (mark.word,), sighting)
            if one is None:
                one = _Seen(mark.word, mark.name or "", set(), mark.stretch.from_ft, [])
                seen.append(one)
            one.name = one.name or mark.name or ""
            one.signs |= set(mark.signs) | ({"up"} if mark.side == "up" else set())
            one.sightings.append(sighting)
    for run in line.passes:
        for (low, _), (what, _) in zip(run.tie_readings_ft, run.ties, strict=True):
            words = tuple(w for w in FITTINGS if w in what) or FITTINGS
            sighting = Sighting(run.number, low, False)
            one = _near(seen, run.station(low), words, sighting)
            if one is not None:
                one.sightings.append(sighting)
    return seen


def _near(seen: Sequence[_Seen], station_ft: float, words: Iterable[str], sighting: Sighting) -> _Seen | None:
    """The fitting this may be a sighting of: one run sees a fitting once on its way in and once on its way back."""
    close = [s for s in seen if s.word in set(words) and abs(s.rough_ft - station_ft) < SAME_FT]
    free = [s for s in close if not any((o.run, o.back) == (sighting.run, sighting.back) for o in s.sightings)]
    return min(free, key=lambda s: abs(s.rough_ft - station_ft), default=None)
