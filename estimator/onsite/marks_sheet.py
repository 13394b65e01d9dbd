"""An option's openings as marks on the ground: both ends from walls with what to allow, width, depth, and where to stop and call."""

from collections.abc import Iterable

from estimator.model.job import Job
from estimator.model.offer import Option
from estimator.model.opening import Opening
from estimator.model.say import Feet, Say
from estimator.onsite.corners import End, ends_of, width_ft
from estimator.onsite.one_more import one_more_block
from estimator.onsite.positions import Errors
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
    known = any(end.within_ft(confidence) is not None for o in openings for end in ends_of(o, job, errors))
    answer = (
        Say.of("The true place is within these marks {percent} times out of 100. Check each against the slab edge before you cut or dig.", percent=f"{confidence:g}")
        if known
        else Say.of("No tapes to walls in the notes. Locate the pipe again and tape each mark to two walls.")
    )  # fmt: skip
    blocks = tuple(
        b for b in (*opening_blocks(option, job, tables), one_more_block(option, job, tables)) if not b.empty
    )
    return SiteSheet(name=NAME, title=title, answer=answer, blocks=blocks)


def marked(option: Option) -> list[Opening]:
    """Return the openings that are marked on ground or floor."""
    return [o for o in option.works.openings if o.is_excavation]


def opening_blocks(option: Option, job: Job, tables: Tables) -> tuple[Block, ...]:
    """Return where each opening is marked and how deep the crew may go; nothing where nothing is opened. No money."""
    openings = marked(option)
    if not openings:
        return ()
    errors, confidence = Errors.of(tables), tables.number("mark_confidence_percent")
    heads = (
        Say.of("opening"),
        Say.of("end"),
        Say.of("one corner"),
        Say.of("other corner"),
        Say.of("give or take"),
    )
    rows = tuple(row for o in openings for row in _rows(o, job, errors, confidence))
    corners = Block(heading=Say.of("Corners of the openings"), heads=heads, rows=rows)
    return (corners, _stop_lines(openings), stop_places(openings, job))


def opening_table(option: Option, job: Job, tables: Tables) -> Block:
    """Return the same in one table, a row an opening, for the crew's drawing; a place that two openings share is told once."""
    errors, confidence = Errors.of(tables), tables.number("mark_confidence_percent")
    heads = (
        Say.of("opening"),
        Say.of("from the walls, give or take"),
        Say.of("depth × width"),
        Say.of("stop and call at"),
    )
    rows = []
    above: set[tuple[str, float]] = set()
    for opening in marked(option):
        found = ends_of(opening, job, errors)
        ends = [
            Say.of("{at}: as above", at=Feet(round(end.station_ft, 1)))
            if (opening.line, round(end.station_ft, 1)) in above
            else _marked(end, confidence)
            for end in found
        ] or [Say.of("measure on site")]
        above |= {(opening.line, round(end.station_ft, 1)) for end in found}
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


def _marked(end: End, confidence: float) -> Say:
    """One end of an opening, from its walls or from the nearest point that can be seen."""
    at, allow = Feet(round(end.station_ft, 1)), end.within_ft(confidence)
    if allow is None:
        return Say.of("{at}: measure on site", at=at)
    return Say.of("{at}: {walls} ± {allow}", at=at, walls=_middle(end), allow=Feet(round(allow, 1)))


def _middle(end: End) -> tuple[Say, ...]:
    """Where the middle of an end lies: from the walls, and along the pipe where that is surer."""
    said = tuple(_from(w.wall, w.ft) for w in end.walls)
    if end.point is None or not end.point_is_surer:
        return said
    far, point = Feet(round(end.point.ft, 1)), end.point.point
    if round(end.point.ft, 1) == 0:
        return (*said, Say.of("at {point}", point=point))
    along = (
        Say.of("{far} upstream of {point} along the pipe", far=far, point=point)
        if end.point.upstream
        else Say.of("{far} downstream of {point} along the pipe", far=far, point=point)
    )
    return (*said, along)


def _rows(opening: Opening, job: Job, errors: Errors, confidence: float) -> Iterable[tuple[Words, ...]]:
    half = Say.of("{half} to each side", half=Feet(round(width_ft(opening) / 2, 1)))
    ends = ends_of(opening, job, errors)
    if not ends:
        yield (opening.name, Say.of("not taped"), Say.of("measure on site"), half, "")
    for end in ends:
        station = Say.of("station {at}", at=Feet(round(end.station_ft, 1)))
        within = end.within_ft(confidence)
        allow = Say.of("not taped") if within is None else Say.of("{at}", at=Feet(round(within, 1)))
        corners = [Say.of("{walls}", walls=tuple(_from(wall, ft) for wall, ft in corner)) for corner in end.corners]
        if corners and end.point_is_surer:
            station = Say.of("{station}: {middle}", station=station, middle=_middle(end)[-1:])
        if not corners:
            said = _middle(end)
            corners = [Say.of("{walls}", walls=said) if said else Say.of("measure on site"), half]
        yield (opening.name, station, *corners, allow)


def _from(wall: str, ft: float) -> Say:
    if ft < 0:
        return Say.of("{at} outside the {wall}", wall=wall, at=Feet(round(-ft, 1)))
    return Say.of("{wall} {at}", wall=wall, at=Feet(round(ft, 1)))


def _stop_lines(openings: list[Opening]) -> Block:
    heads = (Say.of("opening"), Say.of("planned bottom"), Say.of("stop and call at"), Say.of("why"))
    return Block(heading=Say.of("Stop lines"), heads=heads, rows=tuple(_stop(o) for o in openings))


def _stop(opening: Opening) -> tuple[Words, ...]:
    """The next depth at which the work is another work, or the end of the locator's error, whichever comes first."""
    limit = opening.safety_ft
    why = Say.of("deeper than the locate and its accuracy")
    for depth, reason in (
        (LADDER_FT, Say.of("ladder; test the air where it can be bad")),
        (PROTECT_FT, Say.of("protective system needed")),
        (ENGINEER_FT, Say.of("registered engineer")),
    ):
        if opening.depth_ft < depth <= limit:
            limit, why = depth, reason
            break
    planned = Say.of("{at}", at=Feet(round(opening.depth_ft, 1)))
    return (opening.name, planned, Say.of("{at}", at=Feet(round(limit, 1))), why)
