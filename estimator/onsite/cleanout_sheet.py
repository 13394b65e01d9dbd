"""A buried cleanout as a sheet: the spot to probe with what to allow, how many runs agree on it, and what to do if it is not there."""

from collections.abc import Iterable
from statistics import NormalDist

from estimator.model.job import Job
from estimator.model.say import Feet, Inches, Say
from estimator.onsite.buried_cleanout import Spot, buried_cleanouts
from estimator.onsite.sheet import Block, SiteSheet
from estimator.onsite.sightings import SAME_FT, Sighting
from estimator.onsite.ways_in import named_ways
from estimator.tables.tables import Tables

NAME = "cleanout"
TITLE = Say.of("Buried cleanout: where to probe")


def cleanout_sheet(job: Job, tables: Tables) -> SiteSheet:
    """Return a block for each buried cleanout of the job's lines."""
    spots = [spot for line in job.lines for spot in buried_cleanouts(line, tables)]
    if not spots:
        answer = Say.of(
            "No buried cleanout in the notes. Log it on the way in and on the way back: 28.2 cleanout two-way buried."
        )
        return SiteSheet(name=NAME, title=TITLE, answer=answer, blocks=(UNSEEN,))
    percent = tables.number("mark_confidence_percent")
    blocks = [block for spot in spots for block in (_where(spot, percent), _not_there(spot, percent, job))]
    return SiteSheet(name=NAME, title=TITLE, answer=_answer(spots[0], percent), blocks=(*blocks, CAUTION))


def _answer(spot: Spot, percent: float) -> Say:
    walls = tuple(
        Say.of("{at} from the {wall}", at=Feet(round(w.ft, 1)), wall=w.wall) if w.ft >= 0
        else Say.of("{at} outside the {wall}", at=Feet(round(-w.ft, 1)), wall=w.wall)
        for w in spot.walls
    )  # fmt: skip
    if not walls:
        return Say.of(
            "Known along the pipe only: locate it again with the camera in the fitting, and tape it to two walls."
        )
    most = max(w.within_ft(percent) for w in spot.walls)
    return Say.of(
        "Probe {walls}. Give or take {most}, {percent} times out of 100.", walls=walls, most=Feet(round(most, 1)), percent=f"{percent:g}"
    )  # fmt: skip


def _where(spot: Spot, percent: float) -> Block:
    heading = (
        Say.of("Line {line}: two wyes that point up, perhaps a two-way cleanout", line=spot.line)
        if spot.suspected
        else Say.of("Line {line}: buried cleanout", line=spot.line)
    )
    heads = (Say.of("run"), Say.of("reading"), Say.of("camera"), Say.of("fits"))
    rows = tuple(
        (
            str(s.run),
            f"{s.reading_ft:g}",
            Say.of("pulled back") if s.back else Say.of("going in"),
            Say.of("NO: read again") if s in spot.fitting.odd else Say.of("yes"),
        )
        for s in spot.fitting.sightings
    )
    return Block(heading=heading, lines=tuple(_facts(spot, percent)), heads=heads, rows=rows)


def _facts(spot: Spot, percent: float) -> Iterable[Say]:
    along = NormalDist().inv_cdf(0.5 + percent / 200) * spot.fitting.sigma_ft
    yield Say.of(
        "Along the pipe: station {at}, give or take {along}.",
        at=Feet(round(spot.fitting.station_ft, 1)),
        along=Feet(round(along, 1)),
    )
    for wall in spot.walls:
        at, most = Feet(round(abs(wall.ft), 1)), Feet(round(wall.within_ft(percent), 1))
        if wall.ft < 0:
            yield Say.of("Outside the {wall}: {at}, give or take {most}.", wall=wall.wall, at=at, most=most)
        else:
            yield Say.of("From the {wall}: {at}, give or take {most}.", wall=wall.wall, at=at, most=most)
    if spot.located == 0:
        yield Say.of("No locate was taken at the fitting itself: the place comes from footage.")
    elif spot.located == 1:
        yield Say.of("One locate at the fitting. A second one from another run narrows it by about a third.")
    if spot.pipe_top_ft is not None:
        yield Say.of(
            "Top of the pipe: about {deep} down. The cap is between the grass and there.",
            deep=Feet(round(spot.pipe_top_ft, 1)),
        )
    if len(_ways(spot.fitting.sightings)) < 2:
        yield Say.of("Seen one way only. Log it again while you pull the camera back.")


def _ways(sightings: tuple[Sighting, ...]) -> set[tuple[int, bool]]:
    return {(s.run, s.back) for s in sightings}


def _not_there(spot: Spot, percent: float, job: Job) -> Block:
    most = max((w.within_ft(percent) for w in spot.walls), default=spot.fitting.sigma_ft * 2)
    lines = (
        Say.of(
            "Probe every {step} along the pipe, {most} to each side; then the same 1 ft to the left and right of it.",
            step=Inches(6),
            most=Feet(round(most, 1)),
        ),
        Say.of("Metal detector over the same strip: many caps are brass or have an iron ring."),
        Say.of("Push the camera back to the fitting, leave it there, and locate again from above. Tape it to two walls."),
        Say.of("Still nothing: dig one hole to the pipe at the spot and look. If there is no cleanout, stop and call: a new one is a change order."),
        _without(spot, job),
    )  # fmt: skip
    return Block(heading=Say.of("If it is not there"), lines=lines)


def _without(spot: Spot, job: Job) -> Say:
    """How to test meanwhile: the nearest other way in on that line."""
    line, at = job.line(spot.line), spot.fitting.station_ft
    ways = named_ways(line)
    near = min((w for w in ways if abs(w - at) > SAME_FT), key=lambda w: abs(w - at), default=None)
    if near is None:
        return Say.of("To test without it: pull a toilet and plug from there.")
    return Say.of(
        "To test without it: plug from the {way_in}, {away} away.",
        way_in=ways[near],
        away=Feet(round(abs(near - at), 1)),
    )


UNSEEN = Block(
    heading=Say.of("What to look for"),
    lines=(
        Say.of("Two openings in the top of the pipe within 2 ft of each other, often 2 to 5 ft outside the house (common practice)."),
        Say.of("Locate with the camera standing in the first of them, and tape the spot to two walls."),
        Say.of("Log an unnamed branch that points up like this: 30.1 branch up."),
    ),
)  # fmt: skip
CAUTION = Block(
    heading=Say.of("Before you probe"),
    lines=(
        Say.of("Call 811 first. Probe by hand, with a blunt rod: gas, power and water can be at the same depth."),
        Say.of("Near a marked line dig by hand and only as far as your state's law lets you."),
    ),
)
