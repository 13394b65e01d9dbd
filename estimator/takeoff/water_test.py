"""A test of new pipe or of an old section in; water, head, pressure on the plug, out; and a leak rate from readings."""

from estimator.knowledge.hydrostatics import (
    CODE_HEAD_FT,
    CODE_MINUTES,
    HOURS_PER_DAY,
    SOURCE,
    head_psi,
    leak_gal_per_hour,
    pipe_gal_per_ft,
    plug_load_lb,
)
from estimator.model.frozen import Frozen
from estimator.model.job import WaterTest
from estimator.takeoff.case import Case

CODE_SOURCE = "IPC 312 / UPC 712: 10 ft of water, 15 min (read)"


def new_pipe_test(case: Case, length_ft: float | None = None, bore_in: float | None = None) -> None:
    """New drains to the code's head, a riser set for it; the plug takes all of it. The stretch, where nothing else is given."""
    length = case.stretch.length_ft if length_ft is None else length_ft
    _write(case, CODE_HEAD_FT, length, case.bore_in if bore_in is None else bore_in, CODE_SOURCE)
    case.paper.put(
        "test_minutes", CODE_MINUTES, "held without any fall", ("by the code", CODE_MINUTES, "min"), source=CODE_SOURCE
    )
    case.paper.warn("water test only the new pipe to the code's head; the old drains no higher than the slab")
    case.paper.warn("no air test on plastic pipe")
    _plug_warning(case)


def old_pipe_test(case: Case, head_ft: float) -> None:
    """Old drains to the slab's top and no higher: the head is the depth of the lowest invert."""
    _write(case, head_ft, case.stretch.length_ft, case.bore_in, "common practice: to slab level only")
    minutes = case.number("test_minutes")
    case.paper.put("test_minutes", minutes, "watched, after the air is out", ("the firm's rule", minutes, "min"))
    case.paper.warn("fill no higher than the lowest opening, watch it, and let the water out at once after the reading")
    _plug_warning(case)


def to_slab_top_ft(case: Case) -> float:
    """Lowest invert read to the slab's top; where none was read, what the firm counts with."""
    read = [m.depth_ft or 0.0 for m in case.profile.levels]
    return max(read, default=case.number("depth_if_unlocated_ft"))


def _write(case: Case, head_ft: float, length_ft: float, bore: float, source: str) -> None:
    paper = case.paper
    paper.put("test_head_ft", head_ft, "water over the pipe", ("head", head_ft, "ft"), source=source)
    paper.put("test_psi", head_psi(head_ft), "head x 62.4 / 144", ("head", head_ft, "ft"), source=SOURCE)
    gallons = pipe_gal_per_ft(bore) * (length_ft + head_ft)
    paper.put(
        "test_fill_gal",
        gallons,
        "0.0408 x bore² x (pipe + riser)",
        ("bore", bore, "in"),
        ("pipe", length_ft, "ft"),
        ("riser", head_ft, "ft"),
        source=SOURCE,
    )
    paper.put(
        "test_plug_lb",
        plug_load_lb(bore, head_ft),
        "pressure x pi/4 x bore²",
        paper.given("test_psi"),
        ("bore", bore, "in"),
    )


def _plug_warning(case: Case) -> None:
    case.paper.warn(
        "a test plug is rated and tied, nobody stands in line with the pipe, and the water is let down before the plug"
    )


class Leak(Frozen):
    """How fast a section loses water, by two readings: gallons an hour and a day."""

    gal_per_hour: float

    @property
    def gal_per_day(self) -> float:
        return self.gal_per_hour * HOURS_PER_DAY


def leak(test: WaterTest) -> Leak | None:
    """From the first and last reading and every riser that stood open; None where either is missing.

    >>> both = WaterTest(section="main", open_risers_in=(3.0,), readings=((0, 0), (15, 1.0)))
    >>> round(leak(both).gal_per_day, 2)
    2.94
    >>> leak(WaterTest(section="main")) is None
    True
    """
    if len(test.readings) < 2 or not test.open_risers_in:
        return None
    (start, high), (end, low) = test.readings[0], test.readings[-1]
    if end <= start:
        return None
    return Leak(leak_gal_per_hour(low - high, end - start, test.open_risers_in))
