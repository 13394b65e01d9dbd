"""The line and grade to lay for an option: the pipe's bottom at its ends, ties and beams and every 5 ft, slope, spare fall, hangers."""

from collections.abc import Iterable
from math import ceil, hypot

from estimator.knowledge.pipes import pipe_size
from estimator.knowledge.plumbing_code import widest_hanger_ft
from estimator.model.job import Job
from estimator.model.line import Line
from estimator.model.offer import Option
from estimator.model.profile import Profile
from estimator.model.say import Feet, Inches, Say
from estimator.model.works import Laid
from estimator.onsite.elevations import NINE_OF_TEN, Elevations, elevations
from estimator.onsite.failed_inspection import failed_block, failed_inspection
from estimator.onsite.fall import fall_of
from estimator.onsite.grade_around import new_ways
from estimator.onsite.height_readings import INCHES_PER_FT
from estimator.onsite.sheet import Block, SiteSheet, Words
from estimator.tables.tables import Tables
from estimator.works.grade import code_families

NAME = "grade"
EVERY_FT = 5.0
KNOWN_IN = 2.0
"""Tie-ins known less well than this give no grade to lay (judgment): 2 in is the whole fall of 16 ft at 1/8 in a foot."""


def grade_sheet(option: Option, job: Job, tables: Tables) -> SiteSheet:
    """Return the grade of every run of new pipe that follows a line with known heights."""
    title = Say.of("Option {letter}: line and grade", letter=option.letter)
    found, around = runs(option, job, tables), new_ways(option, job, tables)
    if not found and not around:
        return SiteSheet(name=NAME, title=title, answer=Say.of("This option lays no new pipe along a line."), blocks=())
    blocks = (
        run.block() if isinstance(run, Run) else Block(heading=_heading(laid), lines=(run,)) for laid, run in found
    )
    short = sum(run.fall.spare_in < 0 for _, run in found if isinstance(run, Run)) + sum(way.short for way in around)
    if short:
        answer = Say.of(
            "Runs below the code's minimum slope: {count}. Find a lower tie-in or call the inspector first.",
            count=short,
        )
    else:
        answer = Say.of("Lay to these marks. Read the level at each tie-in again before concrete or backfill.")
    failed = failed_inspection(option, tables)
    last = (failed_block(failed),) if failed else ()
    return SiteSheet(
        name=NAME, title=title, answer=answer, blocks=(*blocks, *(way.block() for way in around), BEFORE_COVER, *last)
    )


def runs(option: Option, job: Job, tables: Tables) -> "list[tuple[Laid, Run | Say]]":
    """Return each stretch of new pipe that follows a line, with its grade, or with what must be measured before there is one."""
    laid = [run for run in option.works.laid if run.line and run.stretch.length_ft > 0]
    return [(run, _run_or_missing(run, job, tables)) for run in laid]


def _run_or_missing(laid: Laid, job: Job, tables: Tables) -> "Run | Say":
    line = job.line(laid.line)
    heights = elevations(job, line, tables)
    if heights is None or heights.levels == 0:
        return Say.of(
            "No levels on line {line}. Shoot the pipe's bottom at both tie-ins before laying pipe.", line=line.name
        )
    run = Run(laid, line, heights, job, tables)
    if run.known_to_in > KNOWN_IN:
        return Say.of(
            "Tie-in levels on line {line}: give or take {known}. Shoot the pipe's bottom at both before laying pipe.",
            line=line.name,
            known=Inches(round(run.known_to_in, 1)),
        )
    return run


def _heading(run: Laid) -> Say:
    return Say.of(
        "Line {line}, {low} to {high}",
        line=run.line,
        low=Feet(round(run.stretch.from_ft, 1)),
        high=Feet(round(run.stretch.to_ft, 1)),
    )


class Run:
    """One straight run of new pipe between its two tie-ins, heights in ft below the slab top."""

    def __init__(self, run: Laid, line: Line, heights: Elevations, job: Job, tables: Tables) -> None:
        self.run, self.line, self.tables, self.job = run, line, tables, job
        low, high = run.stretch.from_ft, run.stretch.to_ft
        self.upper_ft, self.lower_ft = (low, high) if line.downstream > 0 else (high, low)
        self.upper, self.lower = heights.at(self.upper_ft), heights.at(self.lower_ft)
        fall_in = (self.lower.below_slab_ft - self.upper.below_slab_ft) * INCHES_PER_FT
        self.fall = fall_of(run.size_in, run.stretch.length_ft, fall_in, job, tables)

    @property
    def known_to_in(self) -> float:
        """What must be allowed at the worse of the two tie-ins, nine times of ten."""
        return NINE_OF_TEN * max(self.upper.sigma_ft, self.lower.sigma_ft) * INCHES_PER_FT

    @property
    def unsure(self) -> bool:
        """Whether the tie-ins are known less well than the run has drop to spare, nine times of ten."""
        fall_ft = NINE_OF_TEN * hypot(self.upper.sigma_ft, self.lower.sigma_ft)
        return 0 <= self.fall.spare_in < fall_ft * INCHES_PER_FT

    def bottom_ft(self, station_ft: float) -> float:
        """Return how far the new pipe's bottom lies below the slab top, ft."""
        share = (station_ft - self.upper_ft) / (self.lower_ft - self.upper_ft)
        return self.upper.below_slab_ft + share * (self.lower.below_slab_ft - self.upper.below_slab_ft)

    def block(self) -> Block:
        heads = (Say.of("station"), Say.of("bottom below slab top"), Say.of("what is there"))
        return Block(heading=_heading(self.run), lines=tuple(self.lines()), heads=heads, rows=tuple(self._rows()))

    def lines(self) -> Iterable[Say]:
        """Say the pipe, its slope and hangers."""
        yield from self.fall.lines()
        yield Say.of(
            "Tie-in levels: give or take {low} and {high}, 9 times out of 10.",
            low=Inches(round(NINE_OF_TEN * self.upper.sigma_ft * INCHES_PER_FT, 1)),
            high=Inches(round(NINE_OF_TEN * self.lower.sigma_ft * INCHES_PER_FT, 1)),
        )
        if self.unsure:
            yield Say.of(
                "The spare drop is smaller than that. Shoot the pipe's bottom at both tie-ins before laying pipe."
            )
        if self.run.hung:
            yield from hangers(self.run.stretch.length_ft, self.job, self.tables)

    def _rows(self) -> Iterable[tuple[Words, ...]]:
        for station, what in sorted(self.stations(), key=lambda one: (one[0] - self.upper_ft) * self.line.downstream):
            bottom = Say.of("{inches}", inches=Inches(round(self.bottom_ft(station) * INCHES_PER_FT, 1)))
            yield (Say.of("{at}", at=Feet(round(station, 1))), bottom, what)

    def stations(self) -> Iterable[tuple[float, Words]]:
        """Say what is where along the run; nothing at the marks in between."""
        profile, stretch = Profile(self.line), self.run.stretch
        yield self.upper_ft, Say.of("upper tie-in")
        yield self.lower_ft, Say.of("lower tie-in")
        for tie in self.run.ties_ft:
            name = next((b.name for b in profile.branches if abs(b.station_ft - tie) < 0.1 and b.name), "")
            yield tie, Say.of("tie in {branch}", branch=name) if name else Say.of("tie in a branch")
        for beam in profile.beams:
            if stretch.holds(beam.stretch.middle_ft) and beam.bottom_below_slab_ft > 0:
                yield beam.stretch.middle_ft, self._beam(beam.stretch.middle_ft, beam.bottom_below_slab_ft)
        at = (stretch.from_ft // EVERY_FT + 1) * EVERY_FT
        while at < stretch.to_ft - 0.5:
            yield at, ""
            at += EVERY_FT

    def _beam(self, station_ft: float, beam_bottom_ft: float) -> Say:
        size = pipe_size(self.run.size_in)
        crown = self.bottom_ft(station_ft) - (size.outside_in - size.wall_in) / INCHES_PER_FT
        clear = (crown - beam_bottom_ft) * INCHES_PER_FT
        if clear >= 0:
            return Say.of("beam: top of the pipe {clear} below it", clear=Inches(round(clear, 1)))
        return Say.of(
            "BEAM IN THE WAY: top of the pipe {clear} above its bottom. Stop and call.", clear=Inches(round(-clear, 1))
        )


def hangers(hung_ft: float, job: Job, tables: Tables) -> Iterable[Say]:
    """Say the firm's hanger spacing and count, and where the code of the place asks for closer ones."""
    spacing = tables.number("hanger_plastic_ft")
    yield Say.of(
        "Hangers: one every {spacing}, {count} on this run, and at each change of direction.",
        spacing=Feet(spacing),
        count=ceil(hung_ft / spacing - 1e-9) + 1,
    )
    widest = widest_hanger_ft("plastic", code_families(tables.known_place(job.house.jurisdiction)))
    if spacing > widest:
        yield Say.of(
            "HANGERS TOO FAR APART: the code allows {widest} for plastic pipe, so hang {count}. Correct hanger_plastic_ft in the settings.",
            widest=Feet(widest),
            count=ceil(hung_ft / widest - 1e-9) + 1,
        )


BEFORE_COVER = Block(
    heading=Say.of("Before concrete or backfill"),
    lines=(
        Say.of("Level on every fitting, both directions. Note the readings: they are the as-built."),
        Say.of("Water test of the new pipe passed and seen by the inspector."),
        Say.of("Bedding under the full length of the pipe, no rock, no block left under it."),
        Say.of("Photo of each tie-in with a ruler in it."),
    ),
)
