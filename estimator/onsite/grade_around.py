"""An option's new routes in; the grade of each from its upper end down, with the fall that is there and the fall the code asks for, out."""

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import accumulate

from estimator.model.job import Job, Reroute
from estimator.model.offer import Option
from estimator.model.say import Feet, Inches, Say
from estimator.onsite.sheet import Block, Words
from estimator.tables.tables import Tables
from estimator.wording.plain import LEGS, in_plain_words
from estimator.works.grade import FAMILIES

EVERY_FT, SMALL_PIPE_IN, INCHES_PER_FT = 5.0, 2.5, 12.0
EVEN_IN = 0.05


def least_fall_in_per_ft(size_in: float, job: Job, tables: Tables) -> float:
    """Return the least fall of the place for a pipe of that size, inches a foot; the stricter default where nobody asked."""
    unknown = tables.number("fall_if_unknown_in_per_ft")
    try:
        place = tables.place(job.house.jurisdiction)
    except KeyError:
        return unknown
    asked = place.slope_small_in_per_ft if size_in <= SMALL_PIPE_IN else place.slope_mid_in_per_ft
    return unknown if asked is None else float(asked)


def code_families(job: Job, tables: Tables) -> tuple[str, ...]:
    """Return the plumbing code of the place; both families where nobody asked, so that the stricter one decides."""
    try:
        code = tables.place(job.house.jurisdiction).code
    except KeyError:
        code = ""
    return (code,) if code else FAMILIES


@dataclass(frozen=True, slots=True)
class NewWay:
    """A new route: its legs from the upper end down, its size, the fall there is (None: not measured), and the least a foot."""

    way: Reroute
    size_in: float
    fall_in: float | None
    least_in_per_ft: float

    @property
    def length_ft(self) -> float:
        return sum(leg.length_ft for leg in self.way.legs)

    @property
    def spare_in(self) -> float | None:
        """Inches of fall beyond the least; below 0 so many are missing. Equal is enough."""
        if self.fall_in is None:
            return None
        spare = self.fall_in - self.least_in_per_ft * self.length_ft
        return 0.0 if abs(spare) < EVEN_IN else spare

    @property
    def short(self) -> bool:
        return self.spare_in is not None and self.spare_in < 0

    def sunk_in(self, at_ft: float) -> float:
        """Return how far the new pipe lies below its upper end so far along it, inches, at an even fall."""
        return (self.fall_in or 0.0) * at_ft / self.length_ft

    def block(self) -> Block:
        """Return its lines and, where the fall was measured, its table."""
        heading = Say.of("New route {name}", name=self.way.name)
        if self.fall_in is None or self.spare_in is None:
            told = Say.of("Its fall was not measured. Shoot the bottom at both ends before pipe is laid.")
            return Block(heading=heading, lines=(told,))
        heads = (Say.of("from its upper end"), Say.of("below its upper end"), Say.of("what is there"))
        return Block(
            heading=heading,
            lines=tuple(self._lines(self.fall_in, self.spare_in)),
            heads=heads,
            rows=tuple(self._rows()),
        )

    def _lines(self, fall_in: float, spare_in: float) -> Iterable[Say]:
        yield Say.of(
            "{size} pipe, falls {slope} per foot with the flow.",
            size=Inches(self.size_in),
            slope=Inches(round(fall_in / self.length_ft, 3)),
        )
        least = Inches(self.least_in_per_ft)
        if spare_in < 0:
            short = Inches(round(-spare_in, 1))
            yield Say.of("{short} of fall is missing against the code's {least} per foot.", short=short, least=least)
        else:
            spare = Inches(round(spare_in, 1))
            yield Say.of(
                "Spare fall: {spare} over the run. The code asks for {least} per foot.", spare=spare, least=least
            )

    def _rows(self) -> Iterable[tuple[Words, ...]]:
        """The upper end, each leg's end, and every 5 ft between."""
        ends = list(accumulate(leg.length_ft for leg in self.way.legs))
        there: dict[float, Words] = {round(n * EVERY_FT, 1): "" for n in range(1, int(self.length_ft / EVERY_FT) + 1)}
        there[0.0] = Say.of("upper end")
        for number, (end, leg) in enumerate(zip(ends, self.way.legs, strict=True), start=1):
            zone = in_plain_words(LEGS, leg.zone)
            there[round(end, 1)] = Say.of("end of leg {number}, {zone}", number=number, zone=zone)
        for at, what in sorted(there.items()):
            sunk = Inches(round(self.sunk_in(at), 1))
            yield (Say.of("{at}", at=Feet(at)), Say.of("{inches}", inches=sunk), what)


def new_ways(option: Option, job: Job, tables: Tables) -> list[NewWay]:
    """Return the new routes of an option, in the order of its repairs."""
    wanted = [t.repair for t in option.takeoffs if t.repair.reroute]
    ways = {way.name: way for way in job.reroutes}
    out = []
    for repair in wanted:
        way = ways.get(repair.reroute)
        if way is not None and way.legs:
            size = way.size_in or job.line(way.replaces_line).size_in
            fall = None if way.fall_available_ft is None else way.fall_available_ft * INCHES_PER_FT
            out.append(NewWay(way, size, fall, least_fall_in_per_ft(size, job, tables)))
    return out
