"""A line's notes in; its side drains, the beams over it and what closes it to a camera, each as it was written, out."""

from collections.abc import Iterable, Mapping

from estimator.model.answers import Beam, Branch
from estimator.model.line import Finding, Line, Mark
from estimator.model.stretch import Stretch

TURNED: Mapping[str, str] = {"left": "right", "right": "left"}


def branches(marks: Iterable[Mark], flows: Mapping[int, str]) -> tuple[Branch, ...]:
    """Side drains, each on the side one sees it looking with the flow; `flows` is how each pass went, by its number."""
    return tuple(
        Branch(
            station_ft=m.stretch.from_ft,
            size_in=m.size_in or 0.0,
            side=_with_flow(m, flows),
            live=m.live,
            proven=m.proven,
            name=m.name,
            away_ft=m.length("away") or 0.0,
            out_of_reach=m.out_of_reach,
            mark=m,
        )
        for m in marks
    )


def _with_flow(mark: Mark, flows: Mapping[int, str]) -> str | None:
    """The side as one looks with the flow; the log gives it as the camera looked."""
    turned = TURNED if flows.get(mark.origin.pass_number) == "against flow" else {}
    return turned.get(mark.side or "", mark.side)


def beams(marks: Iterable[Mark]) -> tuple[Beam, ...]:
    """Beams, each as long along the pipe as it was noted, else as wide as it is."""
    out = []
    for m in marks:
        wide, deep = m.length("wide"), m.length("deep")
        ends = m.stretch if m.stretch.length_ft else Stretch(m.stretch.from_ft, m.stretch.from_ft + (wide or 0.0))
        out.append(Beam(ends, deep or 0.0, m.through, m))
    return tuple(out)


BEYOND_FT = 0.5
"""A camera that saw so much pipe on both sides of something got past it (judgment)."""


def closures(line: Line) -> tuple[Finding, ...]:
    """What no camera got past: a blockage, a collapse or whatever could not be passed, unless one run saw pipe on both sides."""
    seen = [run.seen for run in line.passes if run.seen is not None]
    return tuple(
        f
        for f in line.findings
        if (f.kind in ("blocked", "collapse") or "cannot pass" in f.signs)
        and not any(part.covers(f.stretch.padded(BEYOND_FT, BEYOND_FT)) for part in seen)
    )


def run_to_from_both_ends(line: Line, closure: Finding) -> bool:
    """Whether one run came up to it, or to a closure beside it, from the lower stations and another from the higher."""
    shut = [f.stretch for f in closures(line)]
    runs = [(run.sign, run.seen) for run in line.passes if run.seen is not None]
    up = any(
        sign == 1
        and seen.to_ft <= closure.stretch.from_ft + BEYOND_FT
        and any(s.touches(_end(seen.to_ft)) for s in shut)
        for sign, seen in runs
    )
    down = any(
        sign == -1
        and seen.from_ft >= closure.stretch.to_ft - BEYOND_FT
        and any(s.touches(_end(seen.from_ft)) for s in shut)
        for sign, seen in runs
    )
    return up and down


def _end(at_ft: float) -> Stretch:
    return Stretch(at_ft - BEYOND_FT, at_ft + BEYOND_FT)
