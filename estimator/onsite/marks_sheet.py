"""An option's openings as marks on the ground: both ends from walls with what to allow, width, depth, and where to stop and call."""

from collections.abc import Iterable
from decimal import Decimal

from estimator.model.job import Job
from estimator.model.offer import Option
from estimator.model.say import Dollars, Feet, Say
from estimator.model.works import Opening
from estimator.onsite.positions import Errors, FromWall, from_walls
from estimator.onsite.sheet import Block, SiteSheet, Words
from estimator.onsite.stop_places import stop_places
from estimator.tables.tables import Tables

NAME = "marks"
PROTECT_FT, LADDER_FT, ENGINEER_FT = 5.0, 4.0, 20.0
"""29 CFR 1926.652(a)(1), 1926.651(c)(2), 1926.652(b) (from memory): protective system, ladder, registered engineer."""


def marks_sheet(option: Option, job: Job, tables: Tables) -> SiteSheet:
    """Return where to mark each opening of the option, and when to stop."""
    errors, confidence = Errors.of(tables), tables.number("mark_confidence_percent")
    openings = marked(option)
    title = Say.of("Option {letter}: marks on the ground", letter=option.letter)
    if not openings:
        return SiteSheet(name=NAME, title=title, answer=Say.of("This option opens no ground and no floor."), blocks=())
    taped = any(_ends(o, job, errors) for o in openings)
    answer = (
        Say.of("Marks hold the true place {percent} times of 100. Check each against the slab edge before you cut or dig.", percent=f"{confidence:g}")
        if taped
        else Say.of("No tapes to walls in the notes. Locate the pipe again and tape each mark to two walls.")
    )  # fmt: skip
    savings = Block(
        heading=Say.of("What one more locate saves"), lines=tuple(_savings(option, openings, job, errors, confidence))
    )
    blocks = tuple(b for b in (*opening_blocks(option, job, tables), savings) if not b.empty)
    return SiteSheet(name=NAME, title=title, answer=answer, blocks=blocks)


def marked(option: Option) -> list[Opening]:
    """Return the openings that are marked on ground or floor."""
    return [o for o in option.works.openings if o.kind != "hole through"]


def opening_blocks(option: Option, job: Job, tables: Tables) -> tuple[Block, ...]:
    """Return where each opening is marked and how deep the crew may go; nothing where nothing is opened. No money."""
    openings = marked(option)
    if not openings:
        return ()
    errors, confidence = Errors.of(tables), tables.number("mark_confidence_percent")
    heads = (
        Say.of("opening"),
        Say.of("end"),
        Say.of("from the walls"),
        Say.of("give or take"),
        Say.of("width at the bottom"),
    )
    rows = tuple(row for o in openings for row in _rows(o, job, errors, confidence))
    corners = Block(heading=Say.of("Corners: half the width to each side of these points"), heads=heads, rows=rows)
    return (corners, _stop_lines(openings), stop_places(openings, job))


def opening_table(option: Option, job: Job, tables: Tables) -> Block:
    """Return the same in one table, a row an opening, for the crew's drawing."""
    errors, confidence = Errors.of(tables), tables.number("mark_confidence_percent")
    heads = (
        Say.of("opening"),
        Say.of("from the walls, give or take"),
        Say.of("depth × width"),
        Say.of("stop and call at"),
    )
    rows = []
    for opening in marked(option):
        ends = [_marked(at, walls, confidence) for at, walls in _ends(opening, job, errors)] or [
            Say.of("measure on site")
        ]
        name, planned, limit, why = _stop(opening)
        width = Feet(round(opening.bottom_width_ft, 1))
        rows.append(
            (
                name,
                Say.of("{one}; {other}", one=ends[0], other=ends[1]) if len(ends) > 1 else ends[0],
                Say.of("{depth} × {width}", depth=planned, width=width),
                Say.of("{limit}: {why}", limit=limit, why=why),
            )
        )
    return Block(heading=Say.of("Openings: marks and stop lines"), heads=heads if rows else (), rows=tuple(rows))


def _marked(station_ft: float, walls: tuple[FromWall, ...], confidence: float) -> Say:
    """One end of an opening, from its walls."""
    most = max((w.within_ft(confidence) for w in walls), default=0.0)
    said = tuple(_from(w) for w in walls)
    return Say.of("{at}: {walls} ± {allow}", at=Feet(round(station_ft, 1)), walls=said, allow=Feet(round(most, 1)))


def _ends(opening: Opening, job: Job, errors: Errors) -> list[tuple[float, tuple[FromWall, ...]]]:
    """Both ends of an opening that follows a line, with their distances from the walls; nothing where no tape reaches."""
    if not opening.line:
        return []
    line = job.line(opening.line)
    ends = [(at, from_walls(line, at, errors)) for at in (opening.along.from_ft, opening.along.to_ft)]
    return ends if any(walls for _, walls in ends) else []


def _rows(opening: Opening, job: Job, errors: Errors, confidence: float) -> Iterable[tuple[Words, ...]]:
    width = Say.of("{at}", at=Feet(round(opening.bottom_width_ft, 1)))
    ends = _ends(opening, job, errors)
    if not ends:
        yield (opening.name, Say.of("not taped"), Say.of("measure on site"), "", width)
    for at, walls in ends:
        said = tuple(_from(w) for w in walls)
        most = max((w.within_ft(confidence) for w in walls), default=None)
        allow = Say.of("{at}", at=Feet(round(most, 1))) if most is not None else Say.of("not taped")
        yield (opening.name, Say.of("station {at}", at=Feet(round(at, 1))), Say.of("{walls}", walls=said), allow, width)


def _from(wall: FromWall) -> Say:
    if wall.ft < 0:
        return Say.of("{at} outside the {wall}", wall=wall.wall, at=Feet(round(-wall.ft, 1)))
    return Say.of("{wall} {at}", wall=wall.wall, at=Feet(round(wall.ft, 1)))


def _stop_lines(openings: list[Opening]) -> Block:
    heads = (Say.of("opening"), Say.of("planned bottom"), Say.of("stop and call at"), Say.of("why"))
    return Block(heading=Say.of("Stop lines"), heads=heads, rows=tuple(_stop(o) for o in openings))


def _stop(opening: Opening) -> tuple[Words, ...]:
    """The next depth at which the work is another work, or the end of the locator's error, whichever comes first."""
    limit = opening.safety_ft
    why = Say.of("deeper than the locate allows")
    for depth, reason in (
        (LADDER_FT, Say.of("ladder, and the air tested where it can be bad")),
        (PROTECT_FT, Say.of("protective system needed")),
        (ENGINEER_FT, Say.of("registered engineer")),
    ):
        if opening.depth_ft < depth <= limit:
            limit, why = depth, reason
            break
    planned = Say.of("{at}", at=Feet(round(opening.depth_ft, 1)))
    return (opening.name, planned, Say.of("{at}", at=Feet(round(limit, 1))), why)


def _savings(option: Option, openings: list[Opening], job: Job, errors: Errors, confidence: float) -> Iterable[Say]:
    """The best next place first: how much narrower the marks get, and what a foot less costs at the option's own unit price."""
    prices = [e.price for e in option.extras if e.unit == "ft" and e.code.startswith("more-")]
    found = []
    for opening in openings:
        for at, walls in _ends(opening, job, errors):
            most = max((w.within_ft(confidence) for w in walls), default=0.0)
            here = FromWall("", 0.0, (errors.spot_ft**2 + errors.tape_ft**2) ** 0.5, 0.0).within_ft(confidence)
            if most - here > 0.25:
                found.append((most - here, at, opening))
    for saved, at, opening in sorted(found, key=lambda one: -one[0])[:3]:
        dollars = max(prices, default=Decimal(0)) * Decimal(str(round(saved, 1)))
        yield Say.of(
            "A locate at station {at} ({opening}) narrows the mark by {saved}: up to {dollars} less to open.",
            at=Feet(round(at, 1)),
            opening=opening.name,
            saved=Feet(round(saved, 1)),
            dollars=Dollars(dollars.quantize(Decimal(1))),
        )
