"""Hung passes come in; one Line with stations from its own zero, marks, findings and passes goes out."""

import re
from dataclasses import replace
from typing import Any, Literal

from estimator.fieldnotes.hang import Hung, hang
from estimator.fieldnotes.limits import Limits
from estimator.fieldnotes.logbook import Asked, Entry, Log
from estimator.fieldnotes.sights import Cleaned, doubted, merged, numbered, parted, signs_in_order
from estimator.fieldnotes.zero import STATION_DECIMALS, Zero, find_zero
from estimator.model.line import Finding, Line, Mark, Origin, Pass, Tie, Unclear
from estimator.model.problem import Place, Problem, error
from estimator.model.stretch import Stretch

NO_SLAB_EDGE = error(
    "log/no-slab-edge",
    "{line} takes its zero from the slab edge, but no pass crosses one.",
    'Write where the slab begins, such as `5.3 slab` after `2.3 yard`, or take out zero = "slab edge".',
)
PROBLEMS = (NO_SLAB_EDGE,)


def _origin(entry: Entry, hung: Hung) -> Origin:
    return Origin(
        entry.place.file, entry.place.line or 0, entry.text.strip(), hung.number, entry.from_ft, entry.to_ft,
        entry.back, entry.about, entry.place.column or 1,
    )  # fmt: skip


def _common(entry: Entry, hung: Hung) -> dict[str, Any]:
    values = entry.thing.values
    photo, photo_file = values.get("photo", (None, None))
    return {
        "signs": signs_in_order(values.get("signs", ())),
        "grade": values.get("grade", "seen"),
        "photo": photo,
        "photo_file": photo_file,
        "video": values.get("video"),
        "note": entry.note,
        "origin": _origin(entry, hung),
    }


def _mark(entry: Entry, hung: Hung, zero: Zero) -> Mark:
    word, values = entry.thing.word, entry.thing.values
    a, b = hung.ends_ft(entry.from_ft, entry.to_ft)
    wide = dict(values.get("lengths", ())).get("wide")
    if word.word == "beam" and wide and entry.to_ft is None:
        a, b = hung.way_ft(entry.from_ft), hung.way_ft(entry.from_ft + wide)  # met first where the camera came from
    depth, surface = values.get("depth", (None, None))
    in_ft = (*values.get("lengths", ()), *((("every", values["every"]),) if "every" in values else ()))
    lip = _is_lip(entry)  # the offset finding says how much
    to: Literal["centre", "invert", ""] = values.get("to") or (
        "invert" if word.word in ("invert", "level") else "centre"
    )
    return Mark(
        word=word.word,
        stretch=zero.stretch(a, b),
        choice=values.get("choice"),
        size_in=None if lip else values.get("size"),
        degrees=values.get("degrees"),
        count=values.get("count"),
        lengths=in_ft,
        depth_ft=depth,
        to=to if depth is not None else "",
        surface=_surface(surface),
        ties=tuple(Tie(ft, what) for ft, what in values.get("ties", ())),
        flag=values.get("flag"),
        side=values.get("side") or (None if lip else values.get("direction")),
        live=values.get("live") or ("live" if values.get("proven") else None),  # water ran through it into the pipe
        proven=values.get("proven"),
        out_of_reach="reach" in values,
        through="through" in values,
        name=values.get("name"),
        holds=word.kind in ("zone", "holds") and entry.to_ft is None,
        **_common(entry, hung),
    )


def _surface(word: str | None) -> str | None:
    return "slab" if word == "slab top" else word


def _finding(entry: Entry, hung: Hung, zero: Zero, kind: str = "") -> Finding:
    values = entry.thing.values
    after = bool(values.get("after_cleaning")) or hung.log_pass.heading.after_cleaning
    return Finding(
        id="",
        kind=kind or entry.thing.word.word,
        stretch=zero.stretch(*hung.ends_ft(entry.from_ft, entry.to_ft)),
        percent=values.get("percent"),
        size_in=values.get("size"),
        grade_word=values.get("grade_word"),
        count=values.get("count"),
        clock=values.get("clock"),
        direction=values.get("direction"),
        after_cleaning=after,
        **_common(entry, hung),
    )


def _unclear(asked: Asked, hung: Hung, zero: Zero) -> Unclear:
    at = asked.place
    origin = Origin(
        at.file, at.line or 0, asked.text, hung.number, asked.from_ft, asked.to_ft, asked.back, False, at.column or 1
    )
    stretch = None if asked.from_ft is None else zero.stretch(*hung.ends_ft(asked.from_ft, asked.to_ft))
    return Unclear(asked.text, stretch, asked.danger, str(asked.question), origin)


def _is_lip(entry: Entry) -> bool:
    """A joint that says how far it is out of place is an offset too."""
    values = entry.thing.values
    return entry.thing.word.word == "joint" and ("percent" in values or "size" in values)


def _regular_joints(mark: Mark, hung: Hung, zero: Zero) -> list[Mark]:
    """The joints of `22-60 joints every 3ft`, or from a point to where the pipe changes or the pass ends; assumed."""
    every = mark.length("every")
    if not every or mark.origin.reading_ft is None:
        return []
    start = mark.origin.reading_ft
    end = mark.origin.reading_to_ft
    if end is None:
        changes = [e.from_ft for e in hung.entries if e.thing.word.word in ("pipe", "joint") and e.from_ft > start]
        changes += [r for e in hung.entries for r in (e.from_ft, e.to_ft) if r is not None] if not changes else []
        end = (
            min(changes)
            if any(e.thing.word.word in ("pipe", "joint") and e.from_ft > start for e in hung.entries)
            else max(changes, default=start)
        )
    count = int((end - start) / every + 1e-9)
    at = [zero.station(hung.way_ft(start + every * n)) for n in range(count + 1)]
    return [replace(mark, stretch=Stretch(s, s), lengths=(), assumed=True, count=None) for s in at]


STOPS = ("stop", "end", "blocked")
"""What ends a run; of two at the farthest reading the later here counts: where it is blocked nobody saw the end of the pipe."""


def _pass(hung: Hung, zero: Zero) -> Pass:
    heading = hung.log_pass.heading
    stops = [e for e in hung.entries if e.thing.word.word in STOPS]
    last = max(stops, key=lambda e: (e.from_ft, STOPS.index(e.thing.word.word)), default=None)
    return Pass(
        number=hung.number,
        access=heading.access,
        heading_to=heading.to,
        flow=heading.flow or "with flow",
        riser_ft=hung.riser_ft,
        when=heading.when,
        after_cleaning=heading.after_cleaning,
        start_ft=zero.station(hung.start_ft),
        sign=1 if hung.sign * zero.sign == 1 else -1,
        shift_ft=round(hung.shift_ft, STATION_DECIMALS) + 0.0,
        ties=tuple((what, difference) for what, difference, _ in hung.ties),
        tie_readings_ft=tuple(reading for *_, reading in hung.ties),
        zero_at_ft=heading.zero_at_ft,
        from_end=heading.from_end,
        placed_by=hung.placed_by,
        seen=zero.stretch(*hung.seen_ft) if hung.seen_ft else None,
        stopped_because=str(last.thing.values.get("choice") or last.thing.word.word) if last else "",
        note=heading.note,
    )


def _cleaned(hung: Hung, zero: Zero) -> Cleaned | None:
    heading = hung.log_pass.heading
    if not heading.after_cleaning or not hung.seen_ft:
        return None
    marked = [zero.stretch(*hung.ends_ft(e.from_ft, e.to_ft)) for e in hung.entries if e.thing.word.word == "cleaned"]
    to = re.search(r"\bto (\d+(?:\.\d+)?)", heading.when)
    far = zero.stretch(hung.start_ft, hung.way_ft(float(to[1]))) if to else None
    return Cleaned(hung.number, zero.stretch(*hung.seen_ft), marked[0] if marked else far)


def assemble(
    line: Line, log: Log, wanted_zero: str, limits: Limits, place: Place
) -> tuple[Line, tuple[Hung, ...], Zero, list[Problem]]:
    """The line filled from its log; also its hung passes and its zero, for what hangs on reel readings elsewhere."""
    hung, problems = hang(log, limits)
    zero = find_zero(hung, wanted_zero, limits.same_place_ft)
    if zero is None:
        problems.append(NO_SLAB_EDGE(place, line=line.name))
        zero = Zero(0.0, 1, "access")
    marks: list[Mark] = []
    sights: list[Finding] = []
    for h in hung:
        for entry in h.entries:
            if entry.thing.word.kind == "finding":
                sights.append(_finding(entry, h, zero))
                continue
            mark = _mark(entry, h, zero)
            marks += [mark, *_regular_joints(mark, h, zero)]
            sights += [_finding(entry, h, zero, "offset")] if _is_lip(entry) else []
    passes = tuple(_pass(h, zero) for h in hung)
    known, doubts = doubted(
        merged(sights, limits, passes), lambda f: Place(f.origin.file, f.origin.row, f.origin.column)
    )
    standing, gone = parted(known, (c for h in hung if (c := _cleaned(h, zero))), passes)
    downstream: Literal[1, -1] = zero.sign
    if passes and passes[0].flow == "against flow":
        downstream = -1 if zero.sign == 1 else 1
    whole = replace(
        line,
        marks=tuple(sorted(marks, key=lambda m: (m.stretch, m.word, m.origin.pass_number, m.origin.back))),
        findings=numbered(line.name, sorted(standing, key=_order)),
        superseded=numbered(line.name, sorted(gone, key=_order)),
        unclear=tuple(
            _unclear(asked, h, zero)
            for h in hung
            for asked in sorted(h.log_pass.asked, key=lambda a: (a.place.file, a.place.line or 0))
        ),
        passes=passes,
        remarks=tuple(log.notes),
        zero=zero.word,
        downstream=downstream,
    )
    return whole, tuple(hung), zero, problems + doubts


def _order(finding: Finding) -> tuple[Stretch, str, int, bool]:
    return finding.stretch, finding.kind, finding.origin.pass_number, finding.origin.back
