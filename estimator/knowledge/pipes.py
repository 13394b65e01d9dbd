"""A pipe's name and size in; its outside diameter, wall and bore out, in inches."""

from estimator.model.frozen import Frozen

SOURCE_PLASTIC = (
    "ASTM D1785 / D2665 (Schedule 40 sizes), from memory; agree with an engineering library within 0.002 in"
)
SOURCE_SEWER = "ASTM D3034 (SDR 35 sizes), outside diameters and the 4 in wall read; other walls are OD / 35"
SOURCE_IRON = "CISPI 301 (no-hub barrel sizes), read"
LOOKED = "2026-11-25"


class PipeSize(Frozen):
    """One size of one kind of pipe, inches."""

    nominal_in: float
    outside_in: float
    wall_in: float

    @property
    def inside_in(self) -> float:
        return self.outside_in - 2 * self.wall_in


def _sizes(*rows: tuple[float, float, float]) -> dict[float, PipeSize]:
    return {nominal: PipeSize(nominal, outside, wall) for nominal, outside, wall in rows}


SCHEDULE_40 = _sizes(
    (1.25, 1.660, 0.140),
    (1.5, 1.900, 0.145),
    (2, 2.375, 0.154),
    (2.5, 2.875, 0.203),
    (3, 3.500, 0.216),
    (4, 4.500, 0.237),
    (5, 5.563, 0.258),
    (6, 6.625, 0.280),
    (8, 8.625, 0.322),
    (10, 10.750, 0.365),
    (12, 12.750, 0.406),
    (14, 14.000, 0.437),
    (16, 16.000, 0.500),
    (18, 18.000, 0.562),
    (20, 20.000, 0.593),
    (24, 24.000, 0.687),
)
"""To the largest pipe the reader of notes takes."""
SDR_35 = _sizes(
    (4, 4.215, 0.120),
    (5, 5.300, 5.300 / 35),
    (6, 6.275, 6.275 / 35),
    (8, 8.400, 8.400 / 35),
    (10, 10.5, 10.5 / 35),
    (12, 12.5, 12.5 / 35),
    (15, 15.3, 15.3 / 35),
)
NO_HUB = _sizes(
    (1.5, 1.90, 0.20),
    (2, 2.35, 0.195),
    (3, 3.35, 0.195),
    (4, 4.38, 0.22),
    (5, 5.30, 0.18),
    (6, 6.30, 0.18),
    (8, 8.38, 0.22),
)
"""Barrels; walls are half of outside less the inside diameters read (1.50, 1.96, 2.96, 3.94, 4.94, 5.94, 7.94)."""

KINDS: dict[str, dict[float, PipeSize]] = {"Schedule 40": SCHEDULE_40, "SDR 35": SDR_35, "no-hub": NO_HUB}


def pipe_size(nominal_in: float, kind: str = "Schedule 40") -> PipeSize:
    """The size of that name, or the next larger one listed where the name is between two.

    >>> pipe_size(4).outside_in, round(pipe_size(4).inside_in, 3)
    (4.5, 4.026)
    >>> pipe_size(4, "SDR 35").outside_in
    4.215

    Errors: KeyError for a kind not listed; ValueError above the largest size.
    """
    sizes = KINDS[kind]
    for listed in sorted(sizes):
        if nominal_in <= listed:
            return sizes[listed]
    raise ValueError(f"no {kind} pipe of {nominal_in:g} in is listed")
