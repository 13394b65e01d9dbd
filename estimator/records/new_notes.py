"""Two states of a job's notes in; what the newer ones say of the pipe and the house that is no finding, in plain words, out.

Findings and tests have sentences of their own on every paper. A side drain, a depth or where the driveway begins has none,
and may move a price all the same. Remarks behind a `;` are the crew's own and stay in the house.
"""

from collections.abc import Iterator

from estimator.model.job import Job
from estimator.model.line import ZONES, Line, Mark
from estimator.model.say import Inches, Say
from estimator.quote import where
from estimator.records.changes import without_remark
from estimator.wording.plain import PIPES, ROOMS, in_plain_words
from estimator.wording.plain import ZONES as UNDER

DEPTH = Say.of("how deep the pipe lies there was measured")
WHAT: dict[str, Say] = {
    "depth": DEPTH,
    "invert": DEPTH,
    "level": DEPTH,
    "loc": DEPTH,
    "pothole": DEPTH,
    "ground": Say.of("how high the ground stands over the pipe was measured"),
    "beside": Say.of("how near the house the pipe runs was measured"),
    "clear": Say.of("how much room there is beside the pipe was measured"),
    "soil": Say.of("the soil there was noted"),
    "under": Say.of("what stands above the pipe there was noted"),
    "beam": Say.of("a beam of the house"),
    "footing": Say.of("a footing of the house"),
    "crossing": Say.of("another buried line crosses the pipe"),
    "tree": Say.of("a tree"),
    "property line": Say.of("the property line"),
    "water table": Say.of("ground water"),
    "access": Say.of("a way into the pipe"),
    "cleanout": Say.of("a cleanout"),
    "bend": Say.of("a bend"),
    "joint": Say.of("joints of the pipe"),
    "end": Say.of("the pipe ends there"),
    "stop": Say.of("the camera stopped there"),
    "cleaned": Say.of("the pipe was cleaned"),
}
"""Place words of the log, as a homeowner may hear them."""
OTHER = Say.of("a measure or a place was noted")
FACTS: dict[str, Say] = {
    "soil": Say.of("the soil"),
    "expansive_soil": Say.of("the soil"),
    "caving_signs": Say.of("whether the sides of a dig hold"),
    "water_table_ft": Say.of("ground water"),
    "slab_thickness_ft": Say.of("how thick the floor is"),
    "tendons": Say.of("steel cables in the floor"),
    "edge_beam": Say.of("the beam at the edge of the floor"),
    "in_slab": Say.of("what else runs in the floor"),
    "floor_finish": Say.of("what the floor is covered with"),
    "gate_ft": Say.of("how wide the gate is"),
    "carry_ft": Say.of("how far everything is carried"),
    "machine": Say.of("whether a machine gets to the dig"),
    "lived_in": Say.of("whether somebody lives in the house during the work"),
}
"""What is known of the house and its ground, by its name in the job file."""


MEASURED = ("depth", "invert", "level", "loc", "pothole", "ground", "beside", "clear")
"""What was measured once stays measured: a reading taken out of the notes is nothing that is gone from the house."""


def removed_notes(before: Job, after: Job) -> tuple[Say, ...]:
    """What the older notes said and the newer ones say no more, measures left out."""
    return _noted_in(before, after, but=MEASURED)


def new_notes(before: Job, after: Job) -> tuple[Say, ...]:
    """What stands in the newer notes and did not stand in the older ones.

    A line of the log is known again by its words, not by its station: a slipped reel moves every one of them.
    """
    return _noted_in(after, before)


def _noted_in(job: Job, other: Job, but: tuple[str, ...] = ()) -> tuple[Say, ...]:
    known = {line.name: _texts(line) for line in other.lines}
    marks = [
        _noted(line, mark)
        for line in job.lines
        for mark in line.marks
        if not mark.assumed
        and mark.word not in but
        and _typed(mark)
        and _typed(mark) not in known.get(line.name, frozenset())
    ]
    return tuple(dict.fromkeys(marks))


def new_facts(before: Job, after: Job) -> tuple[Say, ...]:
    """Facts of the house and the ground that are noted otherwise, in one sentence; none where none is."""
    facts = tuple(dict.fromkeys(_facts(before, after)))
    return (Say.of("Noted otherwise than when you signed: {facts}.", facts=facts),) if facts else ()


def _facts(before: Job, after: Job) -> Iterator[Say]:
    for name, said in FACTS.items():
        for old, new in ((before.house, after.house), (before.site, after.site)):
            if getattr(old, name, None) != getattr(new, name, None):
                yield said


def _texts(line: Line) -> frozenset[str]:
    """Every line of the log something was read from."""
    written = (*(m.origin.text for m in line.marks), *(f.origin.text for f in line.findings))
    return frozenset(map(without_remark, written))


def _typed(mark: Mark) -> str:
    return without_remark(mark.origin.text)


def _noted(line: Line, mark: Mark) -> Say:
    return Say.of(
        "{line}, {place}, {distance}: {what}.",
        line=where.line_name(line),
        place=where.place(line, mark.stretch),
        distance=where.distance(line, mark.stretch),
        what=_what(mark),
    )


def _what(mark: Mark) -> Say:
    if mark.word == "branch":
        return _side_drain(mark)
    if mark.word in ZONES:
        return Say.of("from there on it runs {where}", where=in_plain_words(UNDER, mark.word))
    if mark.word == "room" and mark.name:
        return Say.of("from there on it runs under {room}", room=in_plain_words(ROOMS, mark.name))
    if mark.word == "pipe" and mark.choice:
        return Say.of("from there on the pipe is {pipe}", pipe=in_plain_words(PIPES, mark.choice))
    if mark.word == "size" and mark.size_in:
        return Say.of("from there on the pipe is {size} wide", size=Inches(mark.size_in))
    return WHAT.get(mark.word, OTHER)


def _side_drain(mark: Mark) -> Say:
    size = Inches(mark.size_in or 0)
    if mark.name:
        return Say.of("a side drain of {size}, {name}", size=size, name=in_plain_words(ROOMS, mark.name))
    return Say.of("a side drain of {size}", size=size)
