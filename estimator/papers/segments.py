"""A line and the options in, the line cut into pieces out: what lies over each, what is wrong there, which options renew it."""

from dataclasses import dataclass, replace
from itertools import pairwise

from estimator.model.line import Finding, Line
from estimator.model.offer import Option
from estimator.model.profile import Profile
from estimator.model.stretch import Stretch
from estimator.model.work import Repair

LEAST_FT = 0.5  # what is shorter is drawn this long, or nobody would see it
BUILDS_NOTHING = frozenset({"clean", "isolation test", "look and see", "visit"})
THIN_FT = 0.1  # thinner slices come from rounding and are left out


@dataclass(frozen=True, slots=True)
class Segment:
    """One piece of the line; `renewed` and `closed` are the letters of the options that renew it, or give it up and cap it."""

    stretch: Stretch
    zone: str | None
    room: str | None
    pipe: str
    findings: tuple[Finding, ...]
    filmed: bool
    renewed: tuple[str, ...]
    closed: tuple[str, ...] = ()


def segments(line: Line, options: tuple[Option, ...]) -> tuple[Segment, ...]:
    """The pieces from one end to the other, in order of station; neighbours that are alike are one piece."""
    profile = Profile(line)
    works = _works(line, options)
    whole = profile.extent
    for work in works:
        whole = whole.union(work.stretch)
    edges = {whole.from_ft, whole.to_ft}
    edges |= {e for work in works for e in (work.stretch.from_ft, work.stretch.to_ft)}
    edges |= {e for f in line.findings for e in (_wide(f.stretch).from_ft, _wide(f.stretch).to_ft)}
    for part in (*profile.filmed, *(s for s, _ in profile.zones(whole))):
        edges |= {part.from_ft, part.to_ft}
    cuts = sorted(e for e in edges if whole.holds(e))
    pieces = [_segment(profile, line, Stretch(a, b), works) for a, b in pairwise(cuts) if b - a > THIN_FT]
    return _merged(pieces)


def all_repairs(repairs: tuple[Repair, ...]) -> list[Repair]:
    return [one for r in repairs for one in (*all_repairs(r.first), r)]


def _wide(stretch: Stretch) -> Stretch:
    more = max(0.0, LEAST_FT - stretch.length_ft) / 2
    return stretch.padded(more, more)


@dataclass(frozen=True, slots=True)
class _Work:
    """What an option builds or gives up along the line; what only cleans or looks is none."""

    letter: str
    stretch: Stretch
    closes: bool


def _works(line: Line, options: tuple[Option, ...]) -> list[_Work]:
    return [
        _Work(o.letter, _wide(r.stretch), gives_up(r))
        for o in options
        for r in all_repairs(o.scope.repairs)
        if r.line == line.name and r.method not in BUILDS_NOTHING
    ]


def gives_up(repair: Repair) -> bool:
    """The old pipe there is capped and stays in the ground: a way round leads elsewhere, or nothing takes its place."""
    return bool(repair.reroute) or repair.method == "abandon"


def _segment(profile: Profile, line: Line, stretch: Stretch, works: list[_Work]) -> Segment:
    middle = stretch.middle_ft
    return Segment(
        stretch=stretch,
        zone=profile.zone(middle).value,
        room=profile.room(middle),
        pipe=profile.pipe(middle).value,
        findings=tuple(f for f in line.findings if _wide(f.stretch).holds(middle)),
        filmed=any(part.holds(middle) for part in profile.filmed),
        renewed=_letters(works, middle, closes=False),
        closed=_letters(works, middle, closes=True),
    )


def _letters(works: list[_Work], at_ft: float, closes: bool) -> tuple[str, ...]:
    return tuple(dict.fromkeys(w.letter for w in works if w.closes == closes and w.stretch.holds(at_ft)))


def _merged(pieces: list[Segment]) -> tuple[Segment, ...]:
    out: list[Segment] = []
    for piece in pieces:
        if out and _alike(out[-1], piece):
            joined = out[-1].stretch.union(piece.stretch)
            out[-1] = replace(piece, stretch=joined)
        else:
            out.append(piece)
    return tuple(out)


def _alike(a: Segment, b: Segment) -> bool:
    """The same but for where they lie."""
    return replace(a, stretch=b.stretch) == b
