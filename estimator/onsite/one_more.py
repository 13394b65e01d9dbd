"""An option in; what one more locate or one more level would save, in dollars, the best next place first, out.

Marks and depths hold the true place as often as the firm says, so an opening is dug longer and deeper by what must be allowed. A
locate there lets the opening be shorter, a level lets it be shallower. Both are measured and priced anew, as the option is.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import cache

from estimator.model.answers import INDOOR_ZONES
from estimator.model.deeper_line import deeper
from estimator.model.frozen import Frozen
from estimator.model.job import Job
from estimator.model.line import Line, Mark, Tie
from estimator.model.money import exact
from estimator.model.offer import Option
from estimator.model.opening import Opening
from estimator.model.profile import Profile
from estimator.model.say import Dollars, Feet, Inches, Say
from estimator.model.stretch import Stretch
from estimator.model.work import JOB, Takeoff
from estimator.onsite.elevations import elevations
from estimator.onsite.height_readings import INCHES_PER_FT
from estimator.onsite.positions import Errors, allowed_ft, from_point, from_walls, within_ft
from estimator.onsite.sheet import Block, Words
from estimator.onsite.ways_in import ways_and_ends
from estimator.pricing.rough import smooth_price
from estimator.tables.tables import Tables
from estimator.takeoff import take_off

Allowed = tuple[float, float, float]
"""What is dug more than planned: at the lower station, at the higher one, and deeper, ft."""

MOST_ROWS, LEAST_DOLLARS, LEAST_FT, BESIDE_FT = 5, 10.0, 0.05, 5.0


class OneMore(Frozen):
    """A reading that would pay: its place, floor in sq ft and dollars less.

    `where` is from where a level is read; a locate, which is taken from above, has none. `less_ft` is how much shorter all openings
    together may be, for a level how much shallower the one that gains most.
    """

    line: str
    station_ft: float
    where: Say | None
    less_ft: float
    floor_sf: float
    dollars: float

    @property
    def level(self) -> bool:
        return self.where is not None


def one_more(option: Option, job: Job, tables: Tables) -> tuple[OneMore, ...]:
    """Return what each reading would save, the most dollars first; of places beside each other the better one."""
    best: list[OneMore] = []
    for one in sorted(_Study(option, job, tables).all(), key=lambda found: -found.dollars):
        if one.dollars >= LEAST_DOLLARS and one.less_ft >= LEAST_FT and not any(_beside(one, other) for other in best):
            best.append(one)
    return tuple(best)


def _beside(one: OneMore, other: OneMore) -> bool:
    same = (one.level, one.line) == (other.level, other.line)
    return same and abs(one.station_ft - other.station_ft) < BESIDE_FT


def one_more_block(option: Option, job: Job, tables: Tables) -> Block:
    """Return the best of them as a table."""
    heads = (Say.of("next reading"), Say.of("digging saved"), Say.of("floor saved"), Say.of("saves up to"))
    rows = tuple(_row(one) for one in one_more(option, job, tables)[:MOST_ROWS])
    lines = (Say.of("Each reading by itself: the digging it can save, at this option's prices."),) if rows else ()
    return Block(
        heading=Say.of("What one more locate or level saves"), lines=lines, heads=heads if rows else (), rows=rows
    )


def _row(one: OneMore) -> tuple[Words, ...]:
    at = Feet(round(one.station_ft, 1))
    what = (
        Say.of("level: line {line}, {at}, {where}", line=one.line, at=at, where=one.where)
        if one.level
        else Say.of("locate: line {line}, {at}, taped to two walls", line=one.line, at=at)
    )
    narrow = Inches(round(one.less_ft * INCHES_PER_FT, 1)) if one.level else Feet(round(one.less_ft, 1))
    less = Say.of("{narrow} of depth", narrow=narrow) if one.level else Say.of("{narrow} of length", narrow=narrow)
    floor = Say.of("{area} sq ft", area=f"{one.floor_sf:.1f}") if one.floor_sf >= 0.1 else Say.of("none")
    return (what, less, floor, Say.of("{amount}", amount=Dollars(exact(round(one.dollars)))))


class _Study:
    """An option's repairs that open ground, each measured with what must be allowed before and after a reading."""

    def __init__(self, option: Option, job: Job, tables: Tables) -> None:
        self.option, self.job, self.tables = option, job, tables
        self.errors, self.confidence = Errors.of(tables), tables.number("mark_confidence_percent")
        self.place = tables.known_place(job.house.jurisdiction)
        self.opened = [t for t in option.takeoffs if t.repair.method != JOB and t.repair.line and _along(t)]
        self.priced = cache(self._priced)

    def all(self) -> Iterator[OneMore]:
        for name in dict.fromkeys(t.repair.line for t in self.opened):
            line = self.job.line(name)
            mine = [t for t in self.opened if t.repair.line == name]
            stations = sorted(
                {round(at, 1) for t in mine for o in _along(t) for at in (o.along.from_ft, o.along.to_ft)}
            )
            for at in stations:
                yield self._reading(line, at, None, mine)
            for at, where in _readable(line, stations).items():
                yield self._reading(line, at, where, mine)

    def _reading(self, line: Line, at: float, where: Say | None, mine: Sequence[Takeoff]) -> OneMore:
        """What is dug less once the reading stands on the line: a level makes openings shallower, a locate shorter."""
        mark = _located(line, at, self.errors) if where is None else _leveled(line, at)
        after = replace(line, marks=(*line.marks, mark))
        allowed = self._longer if where is None else self._deeper
        gained, floor, dollars = [0.0], 0.0, 0.0
        for takeoff in mine:
            was, now = allowed(line, takeoff), allowed(after, takeoff)
            gained.append(sum(was) - sum(now))
            (dear, wide), (cheap, narrow) = (self.priced(takeoff.repair.id, *one) for one in (was, now))
            dollars, floor = dollars + dear - cheap, floor + wide - narrow
        less = sum(gained) if where is None else max(gained)
        return OneMore(line.name, at, where, less, floor, dollars)

    def _longer(self, line: Line, takeoff: Takeoff) -> Allowed:
        low, high = (round(self.allowed(line, end), 2) for end in _ends(takeoff))
        return low, high, 0.0

    def _deeper(self, line: Line, takeoff: Takeoff) -> Allowed:
        return 0.0, 0.0, round(self.deeper_ft(line, takeoff), 2)

    def allowed(self, line: Line, station_ft: float) -> float:
        """What must be allowed along the pipe at a station, ft; nothing where nobody can say."""
        walls, point = from_walls(line, station_ft, self.errors), from_point(line, station_ft, self.errors)
        return allowed_ft(walls, point, self.confidence) or 0.0

    def deeper_ft(self, line: Line, takeoff: Takeoff) -> float:
        """How much deeper the pipe may lie than planned where the repair opens the ground, ft."""
        known = elevations(self.job, line, self.tables)
        if known is None:
            return max((o.tolerance_ft for o in _along(takeoff)), default=0.0)
        return max(within_ft(known.at(at).sigma_ft, self.confidence) for at in _ends(takeoff))

    def _priced(self, repair_id: str, more_low_ft: float, more_high_ft: float, deeper_ft: float) -> tuple[float, float]:
        """The option's price and the floor one repair opens, with that repair longer at its ends and its line deeper."""
        repair = next(t.repair for t in self.opened if t.repair.id == repair_id)
        part, job = repair.stretch, deeper(self.job, repair.line, deeper_ft) if deeper_ft else self.job
        longer = replace(repair, stretch=Stretch(part.from_ft - more_low_ft, part.to_ft + more_high_ft))
        measured = take_off(longer, job, self.tables)
        others = [t for t in self.option.takeoffs if t.repair.id != repair_id]
        floor = sum(o.top_sf for o in measured.works.openings if o.cuts_floor)
        return smooth_price((*others, measured), self.tables, self.place), floor


def _along(takeoff: Takeoff) -> list[Opening]:
    """The openings of a repair that follow its line and are dug or cut along it."""
    return [o for o in takeoff.works.openings if o.line == takeoff.repair.line and o.is_excavation]


def _ends(takeoff: Takeoff) -> tuple[float, float]:
    parts = [o.along for o in _along(takeoff)]
    return min(p.from_ft for p in parts), max(p.to_ft for p in parts)


def _located(line: Line, at_ft: float, errors: Errors) -> Mark:
    """A locate as it would be taken there: taped to the walls the line was taped to, else to any two."""
    ties = tuple(Tie(abs(w.ft), w.wall) for w in from_walls(line, at_ft, errors)) or (
        Tie(1.0, "front wall"),
        Tie(1.0, "right wall"),
    )
    return Mark(word="loc", stretch=Stretch(at_ft, at_ft), ties=ties)


def _leveled(line: Line, at_ft: float) -> Mark:
    """A level as it would be read there; what it reads changes no error."""
    deep = Profile(line).invert_below_slab_ft(at_ft).value or 3.0
    return Mark(word="invert", stretch=Stretch(at_ft, at_ft), depth_ft=deep, to="invert", surface="slab")


def _readable(line: Line, stations: Sequence[float]) -> dict[float, Say]:
    """Where a level can be read before work: through each way in, and in the open ground at an end, in a pothole."""
    profile, named = Profile(line), ways_and_ends(line)
    read = {round(at, 1): Say.of("through the {way_in}", way_in=name) for at, name in named.items()}
    for at in stations:
        if profile.zone(at).value not in INDOOR_ZONES:
            read.setdefault(at, Say.of("in a pothole"))
    return read
