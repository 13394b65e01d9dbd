"""A Job in; what was read from its notes, in plain text, out: stations, how passes agree, what was not seen."""

from collections.abc import Iterable
from itertools import chain

from estimator.fieldnotes.agreement import agreement, worst_pairs
from estimator.fieldnotes.dumplog import finding_words, mark_words
from estimator.fieldnotes.sights import line_findings
from estimator.model.job import Job
from estimator.model.lengths import show
from estimator.model.line import Line, Mark, Origin, Pass
from estimator.model.profile import Profile
from estimator.model.stretch import Stretch


def echo(job: Job) -> tuple[str, ...]:
    """The account of every line, as `estimator check` prints it.

    Each pass with reel readings and stations side by side, then what all passes say together.
    """
    return tuple(chain.from_iterable((*echo_line(line), "") for line in job.lines))[:-1]


def echo_line(line: Line) -> tuple[str, ...]:
    """The same for one line."""
    head = f"{line.name}: {line.size_in:g} in {line.pipe}, stations in feet from the {line.zero}{_which_way(line)}"
    if not line.passes:
        return (head, "  no camera was in it: nothing of it is inspected")
    passes = chain.from_iterable(_pass(line, p) for p in line.passes)
    return (head, *(f"  {text}" for text in (*passes, *_together(line))))


def _which_way(line: Line) -> str:
    if line.zero == "slab edge":
        return ", above 0 inside"
    return ", with the flow" if line.downstream == 1 else ", against the flow"


# ── one pass ──────────────────────────────────────────────────────────────────────────────────


def _pass(line: Line, p: Pass) -> Iterable[str]:
    to = f" to {p.heading_to}" if p.heading_to else ""
    riser = f"riser {show(p.riser_ft)}" if p.riser_ft else "no riser"
    when = f", {p.when}" if p.when else ""
    yield f"pass {p.number}  {p.access}{to}, {p.flow}, {riser}{when}{_hangs(p)}"
    yield "    reel   station"
    back = False
    for origin, stretch, words in sorted(_things(line, p), key=lambda t: (t[0].back, t[0].reading_ft or 0.0, t[0].row)):
        if origin.back and not back:
            back = True
            yield "    back"
        yield f"{_reel(origin):>10}  {_stations(stretch):>12}  {words}"
    for (what, more), (reading, _) in zip(p.ties, p.tie_readings_ft, strict=True):
        yield f"{reading:>10.1f}  = {what}: the reel shows {_more(more)}"


def _hangs(p: Pass) -> str:
    if p.placed_by in ("", "first"):
        return ""
    how = {
        "same access": "from the access of an earlier pass",
        "zero_at": f"from {p.zero_at_ft} on the first reel",
        "end": "from where an earlier pass ended",
        "name": "from a place an earlier pass named",
        "ties": "hung by what it saw again",
    }[p.placed_by]
    slip = f", its zero slipped {-p.shift_ft:+.1f} ft: taken off" if p.shift_ft else ""
    return f"; begins at {p.start_ft:.1f}, {how}{slip}"


def _more(ft: float) -> str:
    return "the same" if round(ft, 1) == 0 else f"{abs(ft):.1f} ft {'more' if ft > 0 else 'less'}"


def _things(line: Line, p: Pass) -> Iterable[tuple[Origin, Stretch, str]]:
    for m in line.marks:
        if not m.assumed and m.origin.pass_number == p.number:
            yield m.origin, m.stretch, _noted(mark_words(m), m.note)
    for f in line_findings(line):
        if f.origin.pass_number == p.number:
            yield f.origin, f.stretch, _noted(finding_words(f, p.after_cleaning), f.note)


def _noted(words: str, note: str) -> str:
    """What was read, and apart from it what was typed besides."""
    return f"{words} ; {note}" if note else words


def _reel(origin: Origin) -> str:
    to = "" if origin.reading_to_ft is None else f"-{origin.reading_to_ft:.1f}"
    return f"{'~' if origin.about else ''}{origin.reading_ft or 0.0:.1f}{to}"


def _stations(stretch: Stretch) -> str:
    if not stretch.length_ft:
        return f"{stretch.from_ft:.1f}"
    return f"{stretch.from_ft:.1f} to {stretch.to_ft:.1f}"


# ── all passes together ───────────────────────────────────────────────────────────────────────


def _together(line: Line) -> Iterable[str]:
    profile = Profile(line)
    count = len(line.passes)
    yield f"{count} pass{'' if count == 1 else 'es'}{_agree(line)}"
    for p in line.passes:
        if p.seen:
            yield f"pass {p.number} saw {p.seen.length_ft:.1f} ft from the {p.access}{_to(p)}"
    if (edge := profile.slab_edge_ft) is not None:
        inside = max(
            (profile.to_slab_edge_ft(end) or 0.0 for s in profile.filmed for end in (s.from_ft, s.to_ft)), default=0.0
        )
        yield f"seen to {inside:.1f} ft inside the slab edge" + (f" (at {edge:.1f})" if edge else "")
    for stretch in profile.not_inspected:
        yield f"not seen: {_stations(stretch)}"
    yield from _second_opinions(line)
    yield from _by_tape(line)
    for f in line.findings:
        if f.history:
            before = "; ".join(finding_words(old, old.after_cleaning) for old in f.history)
            yield f"{f.kind} at {_stations(f.stretch)} was seen before: {before}"
    for f in line.superseded:
        yield f"gone in a later pass: {finding_words(f, f.after_cleaning)} at {_stations(f.stretch)}"
    yield from (f"kept as a remark: {remark}" for remark in line.remarks)


def _agree(line: Line) -> str:
    found = agreement(line)
    if found is None:
        return "" if len(line.passes) == 1 else "; no two saw one thing, so nothing shows how well they agree"
    numbers, apart = found
    return f"; passes {', '.join(map(str, numbers))} agree within {apart:.1f} ft"


def _to(p: Pass) -> str:
    return f", stopped: {p.stopped_because}" if p.stopped_because else ""


def _by_tape(line: Line) -> Iterable[str]:
    """Two locates with a tape to one wall are a check of the reel between them: a pipe is never shorter than they say."""
    for pair in worst_pairs(line):
        if round(pair.short_ft, 1) > 0:
            places = " and ".join(_taped(m) for m in (pair.one, pair.other))
            yield (
                f"by tape from the {pair.to} {places} lie {pair.tape_ft:.1f} ft apart or more, by the reel "
                f"{pair.reel_ft:.1f}: any mark there is ± {pair.short_ft:.1f} ft"
            )


def _taped(mark: Mark) -> str:
    return f"flag {mark.flag} (at {mark.stretch.from_ft:.1f})" if mark.flag else f"{mark.stretch.from_ft:.1f}"


def _second_opinions(line: Line) -> Iterable[str]:
    """Where another pass puts a thing that was tied to it: the dig mark is no better than this."""
    for p in line.passes:
        for (what, more), (reading, to) in zip(p.ties, p.tie_readings_ft, strict=True):
            left = more + p.shift_ft
            if round(abs(left), 1) > 0:
                middle = p.station((reading + (reading if to is None else to)) / 2)
                known = middle - p.sign * left
                yield f"{what} at {known:.1f} is at {middle:.1f} by pass {p.number}: any mark there is ± {abs(left):.1f} ft"
