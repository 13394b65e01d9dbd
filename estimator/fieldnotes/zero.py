"""Hung passes come in; where the line's own zero lies, and which way its stations grow, goes out."""

from typing import Literal

from estimator.fieldnotes.hang import Hung
from estimator.model.frozen import Frozen
from estimator.model.stretch import Stretch

STATION_DECIMALS = 6  # a hundred-thousandth of an inch: far below any reel, and floats stay equal when read again


class Zero(Frozen):
    """Where the line's zero lies on the way of the first pass, ft, and whether stations grow with that way."""

    at_ft: float
    sign: Literal[1, -1]
    word: str  # "access" or "slab edge"

    def station(self, way_ft: float) -> float:
        return round((way_ft - self.at_ft) * self.sign, STATION_DECIMALS) + 0.0

    def stretch(self, a: float, b: float) -> Stretch:
        return Stretch.between(self.station(a), self.station(b))


def _crossing(hung: Hung, near_ft: float) -> tuple[float, bool] | None:
    """Where one pass crosses the slab edge, and whether it went in there.

    A slab written within `near_ft` of where the camera went in, and nothing before it, is where it began: no edge.
    """
    zones = sorted((e.from_ft, e.thing.word.word) for e in hung.entries if e.thing.word.kind == "zone")
    for number, (at, zone) in enumerate(zones):
        before = zones[number - 1][1] if number else ("slab" if at <= hung.riser_ft + near_ft else "")
        if zone == "slab" and before != "slab":
            return at, True
        if zone != "slab" and before == "slab" and number:
            return at, False
    return None


def find_zero(hung: list[Hung], wanted: str, near_ft: float) -> Zero | None:
    """The default: the slab edge when the first pass crosses it going in, else the access; `wanted` stands over it.

    Where the line ends changes nothing: while its log is typed nobody knows that yet. None: no edge is to be found.
    """
    if not hung:
        return Zero(0.0, 1, "access")
    crossings = [(h, crossing) for h in hung if (crossing := _crossing(h, near_ft))]
    first = _crossing(hung[0], near_ft)
    if wanted == "slab edge" or (not wanted and first is not None and first[1]):
        if not crossings:
            return None
        h, (reading, goes_in) = crossings[0]
        inward = h.sign if goes_in else -h.sign
        return Zero(h.way_ft(reading), 1 if inward == 1 else -1, "slab edge")
    return Zero(0.0, 1, "access")
