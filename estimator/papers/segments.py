"""A line and the options in, the line cut into pieces out: what lies over each, what is wrong there, which options renew it."""

from dataclasses import dataclass
from itertools import pairwise

from estimator.model.line import Finding, Line
from estimator.model.offer import Option
from estimator.model.profile import Profile
from estimator.model.stretch import Stretch
from estimator.model.work import Repair

LEAST_FT = 0.5  # what is shorter is drawn this long, or nobody would see it
THIN_FT = 0.1  # thinner slices come from rounding and are left out


@dataclass(frozen=True, slots=True)
class Segment:
    """One piece of the line; `renewed` are the letters of the options that work on it."""

    stretch: Stretch
    zone: str | None
    room: str | None
    pipe: str
    findings: tuple[Finding, ...]
    filmed: bool
    renewed: tuple[str, ...]


def segments(line: Line, options: tuple[Option, ...]) -> tuple[Segment, ...]:
    """The pieces from one end to the other, in order of station; neighbours that are alike are one piece."""
    profile = Profile(line)
    repairs = [
        (o.letter, _wide(r.stretch)) for o in options for r in all_repairs(o.scope.repairs) if r.line == line.name
    ]
    whole = profile.extent
    for _, stretch in repairs:
        whole = whole.union(stretch)
    edges = {whole.from_ft, whole.to_ft}
    edges |= {e for _, s in repairs for e in (s.from_ft, s.to_ft)}
    edges |= {e for f in line.findings for e in (_wide(f.stretch).from_ft, _wide(f.stretch).to_ft)}
    for part in (*profile.filmed, *(s for s, _ in profile.zones(whole))):
        edges |= {part.from_ft, part.to_ft}
    cuts = sorted(e for e in edges if whole.holds(e))
    pieces = [_segment(profile, line, Stretch(a, b), repairs) for a, b in pairwise(cuts) if b - a > THIN_FT]
    return _merged(pieces)


def all_repairs(repairs: tuple[Repair, ...]) -> list[Repair]:
    return [one for r in repairs for one in (*all_repairs(r.first), r)]


def _wide(stretch: Stretch) -> Stretch:
    more = max(0.0, LEAST_FT - stretch.length_ft) / 2
    return stretch.padded(more, more)


def _segment(profile: Profile, line: Line, stretch: Stretch, repairs: list[tuple[str, Stretch]]) -> Segment:
    middle = stretch.middle_ft
    return Segment(
        stretch=stretch,
        zone=profile.zone(middle).value,
        room=profile.room(middle),
        pipe=profile.pipe(middle).value,
        findings=tuple(f for f in line.findings if _wide(f.stretch).holds(middle)),
        filmed=any(part.holds(middle) for part in profile.filmed),
        renewed=tuple(dict.fromkeys(letter for letter, s in repairs if s.holds(middle))),
    )


def _merged(pieces: list[Segment]) -> tuple[Segment, ...]:
    out: list[Segment] = []
    for piece in pieces:
        if out and _alike(out[-1], piece):
            joined = out[-1].stretch.union(piece.stretch)
            out[-1] = Segment(joined, piece.zone, piece.room, piece.pipe, piece.findings, piece.filmed, piece.renewed)
        else:
            out.append(piece)
    return tuple(out)


def _alike(a: Segment, b: Segment) -> bool:
    return (a.zone, a.room, a.pipe, a.findings, a.filmed, a.renewed) == (
        b.zone,
        b.room,
        b.pipe,
        b.findings,
        b.filmed,
        b.renewed,
    )
