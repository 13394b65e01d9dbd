"""Lines put together in; the same, each branch knowing how deep the line it runs into lies where it joins, out."""

from collections.abc import Sequence
from dataclasses import replace

from estimator.model.answers import INDOOR_ZONES
from estimator.model.line import Line
from estimator.model.profile import Profile


def with_depth_at_join(lines: Sequence[Line]) -> tuple[Line, ...]:
    """Every branch with the depth to the centre of the line it joins, where that was read on the same ground.

    A branch runs down to the line it joins, so it lies no deeper there (plain geometry); farther up it lies higher. It is a
    guess to plan by, never a reading of the branch.
    """
    named = {line.name: line for line in lines}
    return tuple(replace(line, at_join_ft=_depth(line, named)) for line in lines)


def _depth(line: Line, named: dict[str, Line]) -> float | None:
    into = named.get(line.joins.line) if line.joins else None
    if into is None or line.joins is None:
        return None
    above, main = Profile(line), Profile(into)
    end = above.extent.to_ft if line.downstream == 1 else above.extent.from_ft
    indoors = {above.zone(end).value in INDOOR_ZONES, main.zone(line.joins.station_ft).value in INDOOR_ZONES}
    answer = main.depth_to_centre_ft(line.joins.station_ft)
    return answer.value if len(indoors) == 1 and answer.how != "assumed" else None
