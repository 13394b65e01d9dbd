"""A Line comes in; the log that reads back as the same line goes out, in the plainest words of the table."""

from collections.abc import Iterable
from decimal import Decimal

from estimator.fieldnotes.heading import WHEN_BEGINS
from estimator.fieldnotes.sights import line_findings
from estimator.fieldnotes.tidy import tape_to
from estimator.model.lengths import show
from estimator.model.line import Finding, Line, Mark, Origin, Pass


def number(value: float) -> str:
    """The shortest decimal that reads back as the same float, without an exponent.

    >>> number(5.0), number(16.6)
    ('5', '16.6')
    """
    return format(Decimal(repr(value)), "f").removesuffix(".0")


def _heading(p: Pass) -> str:
    where = f"pass {p.number} {p.access}" + (f" to {p.heading_to}" if p.heading_to else "")
    when = p.when if p.when.lower().startswith(WHEN_BEGINS) else f"why {p.when}"
    parts = [
        where,
        p.flow,
        f"riser {show(p.riser_ft)}" if p.riser_ft else "surface",
        *([f"zero at {number(p.zero_at_ft)}"] if p.zero_at_ft is not None else []),
        *(["from end"] if p.from_end else []),
        *([when] if p.when else []),
    ]
    return ", ".join(parts) + (f" ; {p.note}" if p.note else "")


def _where(from_ft: float, to_ft: float | None, about: bool = False) -> str:
    return ("~" if about else "") + number(from_ft) + ("" if to_ft is None else f"-{number(to_ft)}")


def _tail(thing: Mark | Finding) -> list[str]:
    photo = (
        [f"photo {thing.photo}" + (f" {thing.photo_file}" if thing.photo_file else "")]
        if thing.photo is not None
        else []
    )
    video = [f"video {thing.video}"] if thing.video else []
    return [*thing.signs, *(["suspected"] if thing.grade == "suspected" else []), *photo, *video]


def mark_words(m: Mark) -> str:
    """The word and its slots, parted by commas."""
    first = m.name if m.word == "room" else m.choice
    called = m.name if m.word != "room" else None
    proven = {True: "proven", False: "not proven", None: None}[m.proven]
    surface = f" from {m.surface}" if m.surface else ""
    depth = f"{show(m.depth_ft)}{surface}" if m.depth_ft is not None else None
    slots = [
        f"{number(m.size_in)}in" if m.size_in is not None else None,
        f"{number(m.degrees)} degrees" if m.degrees is not None else None,
        depth,
        "to invert" if m.to == "invert" and m.word not in ("invert", "level") else None,
        *(_length_words(label, ft) for label, ft in m.lengths),
        f"{m.count} places" if m.count is not None else None,
        *(f"{show(tie.length_ft)} {tape_to(tie.to)}" for tie in m.ties),
        f"flag {m.flag}" if m.flag else None,
        m.side,
        m.live,
        proven,
        "out of reach" if m.out_of_reach else None,
        "through" if m.through else None,
        f"called {called}" if called else None,
        *_tail(m),
    ]
    return ", ".join([f"{m.word} {first}" if first else m.word, *(s for s in slots if s)])


def _length_words(label: str, ft: float) -> str:
    return f"every {show(ft)}" if label == "every" else f"{show(ft)} {label}".strip()


def finding_words(f: Finding, after_cleaning: bool) -> str:
    """A finding as a log line says it; `after_cleaning`: its pass says so already."""
    percent = None
    if f.percent:
        low, high = f.percent
        percent = f"{number(low)}..{number(high)}%" if low != high else f"{number(low)}%"
    slots = [
        percent,
        f"{number(f.size_in)}in" if f.size_in is not None else None,
        f.grade_word,
        f"{f.count} places" if f.count is not None else None,
        f"at {f.clock[0]}-{f.clock[1]}" if f.clock else None,
        f.direction,
        "after cleaning" if f.after_cleaning and not after_cleaning else None,
        *_tail(f),
    ]
    return " ".join([f.kind, *(s for s in slots if s)])


def _line(origin: Origin, words: str, note: str) -> str:
    if origin.reading_ft is None:
        return words  # a line that names no place
    where = _where(origin.reading_ft, origin.reading_to_ft, origin.about)
    return f"{where} {words}" + (f" ; {note}" if note else "")


def _of_pass(line: Line, p: Pass) -> Iterable[tuple[Origin, str, str]]:
    for m in line.marks:
        if not m.assumed and m.origin.pass_number == p.number:
            yield m.origin, mark_words(m), m.note
    for f in line_findings(line):
        if f.origin.pass_number == p.number:
            yield f.origin, finding_words(f, p.after_cleaning), f.note
    for u in line.unclear:
        if u.origin.pass_number == p.number:
            yield u.origin, f"unclear{' utility' if u.danger else ''}: {u.text}", ""


def dump_log(line: Line) -> str:
    """The log of all passes of a line; "" when no camera was in it."""
    out: list[str] = []
    for p in line.passes:
        out.append(_heading(p))
        for (what, _), (from_ft, to_ft) in zip(p.ties, p.tie_readings_ft, strict=True):
            out.append(f"{_where(from_ft, to_ft)} = {what}")
        things = sorted(_of_pass(line, p), key=lambda t: (t[0].back, t[0].row))
        turned = False
        for origin, words, note in things:
            if origin.back and not turned:
                out.append("back")
                turned = True
            out.append(_line(origin, words, note))
    out += [f"# {remark}" for remark in line.remarks]
    return "\n".join(out) + "\n" if out else ""
