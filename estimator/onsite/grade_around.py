"""An option's new routes in; the grade of each from its upper end down, with the fall that is there and the fall the code asks for, out."""

from collections.abc import Iterable
from itertools import accumulate

from estimator.model.frozen import Frozen
from estimator.model.job import Job, Reroute
from estimator.model.offer import Option
from estimator.model.say import Feet, Inches, Say
from estimator.onsite.fall import Fall, fall_of
from estimator.onsite.height_readings import INCHES_PER_FT
from estimator.onsite.sheet import Block, Words
from estimator.tables.tables import Tables
from estimator.wording.plain import LEGS, in_plain_words

EVERY_FT = 5.0
"""So often the new pipe's bottom is told."""


class NewWay(Frozen):
    """A new route, its legs from the upper end down, and its fall; None where nobody measured it."""

    way: Reroute
    length_ft: float
    fall: Fall | None

    @property
    def short(self) -> bool:
        return self.fall is not None and self.fall.spare_in < 0

    def block(self) -> Block:
        """Return its lines and, where the fall was measured, its table."""
        heading = Say.of("New route {name}", name=self.way.name)
        if self.fall is None:
            told = Say.of("Its drop was not measured. Shoot the pipe's bottom at both ends before laying pipe.")
            return Block(heading=heading, lines=(told,))
        heads = (Say.of("from its upper end"), Say.of("below its upper end"), Say.of("what is there"))
        rows = tuple(self._rows(self.fall.fall_in / self.length_ft))
        return Block(heading=heading, lines=tuple(self.fall.lines()), heads=heads, rows=rows)

    def _rows(self, slope_in_per_ft: float) -> Iterable[tuple[Words, ...]]:
        """The upper end, each leg's end, and every 5 ft between, at an even fall."""
        ends = accumulate(leg.length_ft for leg in self.way.legs)
        there: dict[float, Words] = {round(n * EVERY_FT, 1): "" for n in range(1, int(self.length_ft / EVERY_FT) + 1)}
        there[0.0] = Say.of("upper end")
        for number, (end, leg) in enumerate(zip(ends, self.way.legs, strict=True), start=1):
            zone = in_plain_words(LEGS, leg.zone)
            there[round(end, 1)] = Say.of("end of leg {number}, {zone}", number=number, zone=zone)
        for at, what in sorted(there.items()):
            sunk = Inches(round(slope_in_per_ft * at, 1))
            yield (Say.of("{at}", at=Feet(at)), Say.of("{inches}", inches=sunk), what)


def new_ways(option: Option, job: Job, tables: Tables) -> list[NewWay]:
    """Return the new routes of an option, in the order of its repairs."""
    ways = {way.name: way for way in job.reroutes}
    out = []
    for name in (t.repair.reroute for t in option.takeoffs if t.repair.reroute):
        way = ways.get(name)
        if way is not None and way.legs:
            size = way.size_in or job.line(way.replaces_line).size_in
            length = sum(leg.length_ft for leg in way.legs)
            known = way.fall_available_ft
            fall = None if known is None else fall_of(size, length, known * INCHES_PER_FT, job, tables)
            out.append(NewWay(way, length, fall))
    return out
