"""A stretch under the slab in; the way a tunnel gets to it and how long it is, out."""

from estimator.model.frozen import Frozen
from estimator.model.line import Mark
from estimator.model.say import Feet, Say
from estimator.model.stretch import Stretch
from estimator.works.case import Case
from estimator.works.notes import Given


class Approach(Frozen, kw_only=True):
    """Along the pipe from its exit ("exit") or straight in from the nearest open wall ("wall").

    `mouth_ft` and `face_ft` are distances inside the slab edge along the pipe, for the invert there; `reaches_ft` how far
    each crew gets from its pit, the first `begins_ft` of it dug already; `pits` how many are dug. `lead_ft` of the tunnel
    follow another line first; `room_ft` is the working room beyond the pipe.
    """

    entry: str
    length_ft: float
    mouth_ft: float
    face_ft: float
    reaches_ft: tuple[float, ...]
    words: str
    inputs: tuple[Given, ...]
    pits: int
    begins_ft: float = 0.0
    lead_ft: float = 0.0
    room_ft: float = 0.0
    into_ft: float = 0.0  # straight in from the wall
    second_beside_ft: float | None = None  # how far open ground lies from the far end, where somebody measured it
    guess: Say | None = None  # what nobody noted about the way in

    def feet_between(self, low_ft: float, high_ft: float) -> float:
        """Feet of tunnel that lie so far from a pit."""
        return sum(max(0.0, min(reach, high_ft) - max(low_ft, self.begins_ft)) for reach in self.reaches_ft)


def approach(case: Case) -> Approach:
    """The one the repair names; else the shorter of those the notes give."""
    known = [_from_exit(case)]
    wall = _from_wall(case)
    if wall is not None:
        known.append(wall)
    named = [a for a in known if a.entry == case.repair.entry]
    chosen = min(named or known, key=lambda a: a.length_ft)
    if case.repair.entry == "wall" and wall is None:
        case.paper.assume(
            "the access from the wall is not measured; the tunnel follows the pipe from the building outlet"
        )
    if chosen.begins_ft:
        case.paper.assume(
            "the tunnel starts from the one along the line it joins, {lead} from the pit",
            lead=Feet(round(chosen.begins_ft, 2)),
        )
    elif chosen.entry == "exit" and case.lead_ft:
        case.paper.assume("the tunnel follows the line it joins for {lead} first", lead=Feet(round(case.lead_ft, 2)))
    if chosen.pits > 1 and chosen.second_beside_ft is None:
        case.paper.assume("a second pit at the far end; where there is no open ground, an opening through the floor")
    if chosen.guess is not None:
        case.paper.take(chosen.guess)
    return chosen


def _room_ft(case: Case) -> float:
    """Working room beyond the last coupling, and a little at each side cut."""
    away = sum(1 for b in case.branches if b.away_ft > 0)
    return case.number("tunnel_beyond_ft") + away * case.number("tunnel_side_cut_room_ft")


def _reaches(case: Case, length_ft: float) -> tuple[float, ...]:
    """One pit, or two that share the length where the face would be too far."""
    return (length_ft / 2, length_ft / 2) if length_ft > case.number("second_pit_over_ft") else (length_ft,)


def way_in_unknown(line: str) -> Say:
    """What is said where the tunnel's way in is a guess."""
    return Say.of(
        "the notes do not say where {line} joins another line or leaves the slab; the tunnel access is an assumption",
        line=line,
    )


def second_beside_ft(case: Case, face_ft: float, first: Mark | None = None) -> float | None:
    """How far open ground lies from the far end of a tunnel: the way in that was measured there; None where nobody did."""
    near = case.number("pit_length_ft")
    at = Stretch(case.station(face_ft), case.station(face_ft))
    there = (m for m in case.profile.marks("beside") if m is not first and m.stretch.gap_ft(at) <= near)
    return min((ft for m in there if (ft := m.length()) is not None), default=None)


def _from_exit(case: Case) -> Approach:
    far, room = max(case.inside[1], 0.0), _room_ft(case)
    dug = case.lead_ft if case.from_tunnel else 0.0
    lead = case.lead_ft - dug
    length = lead + far + room
    reaches = (dug + length,) if dug else _reaches(case, length)
    second = second_beside_ft(case, far + room) if len(reaches) > 1 else None
    if second is not None:  # from open ground in to the far end
        length += second
        reaches = _reaches(case, length)
    return Approach(
        entry="exit",
        length_ft=length,
        mouth_ft=0.0,
        face_ft=far + room,
        reaches_ft=reaches,
        pits=0 if dug else len(reaches),
        begins_ft=dug,
        lead_ft=lead,
        room_ft=room,
        second_beside_ft=second,
        guess=None if case.edge_known else way_in_unknown(case.line.name),
        words="along the pipe from the slab edge to the far end + working room",
        inputs=(
            *((("along the line it joins", lead, "ft"),) if lead else ()),
            ("to the far end", far, "ft"),
            *((("in from the wall at the far end", second, "ft"),) if second is not None else ()),
            ("working room", room, "ft"),
        ),
    )


def _from_wall(case: Case) -> Approach | None:
    """Straight in to the nearer end of the stretch, along it, and working room at both ends."""
    beside = [(m, m.length()) for m in case.profile.marks("beside") if case.stretch.touches(m.stretch)]
    ways = [(m, ft) for m, ft in beside if ft is not None]
    if not ways:
        return None
    mark, into = min(ways, key=lambda way: way[1])
    low, high = (max(0.0, end) for end in case.inside)
    room = _room_ft(case)
    length = into + (high - low) + 2 * room
    return Approach(
        entry="wall",
        length_ft=length,
        mouth_ft=low,
        face_ft=high + room,
        reaches_ft=_reaches(case, length),
        pits=len(_reaches(case, length)),
        room_ft=room,
        into_ft=into,
        second_beside_ft=second_beside_ft(case, high + room, mark),
        words="straight in from the wall + along the pipe + working room at both ends",
        inputs=(
            ("in from the wall", into, "ft"),
            ("along the pipe", high - low, "ft"),
            ("working room, each end", room, "ft"),
            ("measured at station", mark.stretch.from_ft, "ft"),
        ),
    )
