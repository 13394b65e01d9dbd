"""Each water test as a sheet: how fast it leaked, where the level stopped, how high the opening lies, and what pipe lies at that height."""

from collections.abc import Iterable

from estimator.diagnosis.leak_rate import gallons_a_day, open_area_sqin, settled
from estimator.model.job import Job, WaterTest
from estimator.model.line import Line
from estimator.model.profile import Profile
from estimator.model.say import Feet, Inches, Say
from estimator.onsite.drop_curve import OpeningHeight, air_left_first, opening_height, rate_at
from estimator.onsite.elevations import Elevations, elevations
from estimator.onsite.height_readings import INCHES_PER_FT
from estimator.onsite.sheet import Block, SiteSheet
from estimator.tables.tables import Tables

NAME = "water"
NEAR_IN = 0.25


def water_sheet(job: Job, tables: Tables) -> SiteSheet:
    """Return what the water says, a block a test that dropped."""
    title = Say.of("What the water says")
    heights = [(line, found) for line in job.lines if (found := elevations(job, line, tables))]
    blocks = [_test(test, heights, tables) for test in job.water_tests if test.readings or test.held_at_in is not None]
    if not blocks:
        return SiteSheet(name=NAME, title=title, answer=Say.of("No test in the notes has level readings."), blocks=())
    dropped = sum(_dropped(t, tables) for t in job.water_tests)
    answer = Say.of(
        "Tests with readings: {count}. The level dropped in {dropped} of them.", count=len(blocks), dropped=dropped
    )
    return SiteSheet(name=NAME, title=title, answer=answer, blocks=(*blocks, TRUST))


TRUST = Block(
    heading=Say.of("Before you trust a rate"),
    lines=(
        Say.of("Count every riser the water stood in, with its size. One left out makes the leak look smaller."),
        Say.of("The height is valid only if the opening stays the same and nothing drips in from above."),
    ),
)


def _dropped(test: WaterTest, tables: Tables) -> bool:
    late = settled(test, tables.number("test_settle_min"))
    return len(late) > 1 and late[-1][1] - late[0][1] > tables.number("test_allowed_drop_in")


def _test(test: WaterTest, heights: list[tuple[Line, Elevations]], tables: Tables) -> Block:
    return Block(heading=Say.of("Test: {section}", section=test.section), lines=tuple(_lines(test, heights, tables)))


def _lines(test: WaterTest, heights: list[tuple[Line, Elevations]], tables: Tables) -> Iterable[Say]:
    settle, sigma = tables.number("test_settle_min"), tables.number("drop_reading_error_in")
    if not _dropped(test, tables):
        yield Say.of("The level held. This section is tight at that level.")
        return
    deepest = max(
        (h.below_slab_ft * INCHES_PER_FT for _, e in heights for h in e.heights),
        default=tables.number("depth_if_unlocated_ft") * INCHES_PER_FT,
    )
    if air := air_left_first(test.readings, settle, sigma, deepest):
        yield Say.of(
            "In the first minutes the water dropped {inches} more than the later rate explains. That was air leaving the pipe, not a leak.",
            inches=Inches(round(air, 2)),
        )
    late = settled(test, settle)
    yield from _rates(test, late)
    if test.held_at_in is not None:
        yield Say.of(
            "The level stopped {inches} below the {level}. The opening is at that height.",
            inches=Inches(test.held_at_in),
            level=test.level,
        )
        found = OpeningHeight("band", test.held_at_in, test.held_at_in - NEAR_IN, test.held_at_in + NEAR_IN)
    else:
        found = opening_height(late, sigma, deepest)
        yield _height(found, late[-1][1], test)
    if found.tells == "band" and test.level == "slab top":
        yield from _at_height(found, heights, test)


def _rates(test: WaterTest, late: tuple[tuple[float, float], ...]) -> Iterable[Say]:
    (start, high), (end, low) = late[0], late[-1]
    mean = (low - high) / (end - start) * 60
    if test.open_risers_in:
        gallons = gallons_a_day(low - high, end - start, open_area_sqin(test.open_risers_in))
        yield Say.of(
            "Leak at that level: about {gallons} gallons a day. The water dropped {rate} per hour.",
            gallons=f"{gallons:.0f}",
            rate=Inches(round(mean, 2)),
        )
    else:
        yield Say.of(
            "The water dropped {rate} per hour. Note the open risers and their sizes to get gallons.",
            rate=Inches(round(mean, 2)),
        )
    first, last = rate_at(late, high + 1e-6), rate_at(late, low - 1e-6)
    if first and last and len(late) > 2:
        yield Say.of(
            "Rate near the start {first} per hour, near the end {last} per hour.",
            first=Inches(round(first, 2)),
            last=Inches(round(last, 2)),
        )


def _height(found: OpeningHeight, lowest_in: float, test: WaterTest) -> Say:
    if found.tells == "band":
        return Say.of(
            "From how the drop slows down, the opening is likely {likely} below the {level}: between {low} and {high}, 9 times out of 10.",
            likely=Inches(round(found.likely_in, 1)),
            level=test.level,
            low=Inches(round(found.from_in, 1)),
            high=Inches(round(found.to_in, 1)),
        )
    if found.tells == "at or below":
        return Say.of(
            "The opening is at least {low} below the {level}. These readings do not show how far below: keep reading until the drop slows down.",
            low=Inches(round(max(found.from_in, lowest_in), 1)),
            level=test.level,
        )
    return Say.of("Too few readings to tell the height of the opening. Read at least three times after the air is out.")


def _at_height(found: OpeningHeight, heights: list[tuple[Line, Elevations]], test: WaterTest) -> Iterable[Say]:
    anywhere = False
    for line, known in heights:
        if test.covers and line.name not in test.covers:
            continue
        profile = Profile(line)
        for part in known.holding(found.from_in, found.to_in, profile.bore_in):
            anywhere = True
            low, high = Feet(round(part.from_ft, 1)), Feet(round(part.to_ft, 1))
            fittings = tuple(b.name or Say.of("branch") for b in profile.branches if part.holds(b.station_ft))
            yield Say.of("Pipe at that height: {line}, {low} to {high}.", line=line.name, low=low, high=high)
            if fittings:
                yield Say.of("Fittings at that height, check them first: {fittings}.", fittings=fittings)
    if heights and not anywhere:
        yield Say.of(
            "No part of the lines with known levels is at that height: check risers, closet bends and branches."
        )
