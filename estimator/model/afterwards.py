"""What was really done at a house and what came of it, as typed after the work: pipe laid, levels, tests, stills, inspections, callbacks."""

from datetime import date
from decimal import Decimal
from typing import Annotated, Literal

from estimator.model.frozen import Frozen
from estimator.model.job import Feet, Inches

Station = Annotated[float, "station"]
"""Ft on the line; below 0 on the street side of its zero."""

Cause = Literal["our work", "our material", "old pipe beyond", "ground movement", "use", "no fault found"]
"""Why a customer called back. The first two are the firm's own."""
OURS: tuple[Cause, ...] = ("our work", "our material")


class LaidPipe(Frozen, kw_only=True):
    """New pipe or lining as it lies: stations on its line, size, material."""

    line: str
    from_ft: Station
    to_ft: Station
    pipe: str
    size_ft: Inches
    note: str = ""


class BuiltLevel(Frozen, kw_only=True):
    """The new pipe's bottom below the slab top at a station."""

    line: str
    at_ft: Station
    bottom_ft: Inches


class BuiltTest(Frozen, kw_only=True):
    """A test after the work: head above the highest joint, minutes, and how far the water dropped."""

    what: str
    on: date
    result: Literal["passed", "failed"]
    after_lift: bool = False
    head_ft: Feet | None = None
    minutes: float | None = None
    drop_ft: Inches | None = None
    witness: str = ""


class Inspection(Frozen, kw_only=True):
    """A visit of the inspector, or of our own camera after a time."""

    on: date
    result: Literal["passed", "failed"]
    kind: Literal["inspector", "camera"] = "inspector"
    why: str = ""


class Still(Frozen, kw_only=True):
    """A picture of the finished work: its file beside the job file, where, and what it shows."""

    file: str
    shows: str
    line: str = ""
    at_ft: Station | None = None


class Callback(Frozen, kw_only=True):
    """A customer called back: the day, the way of repair that is blamed, why, and what it cost us."""

    on: date
    method: str
    cause: Cause
    cost: Decimal = Decimal(0)
    what: str = ""


class LiftHeight(Frozen, kw_only=True):
    """How far the house was raised at one place, as the foundation company gives it; `from_walls` are tapes (wall, ft) to two walls."""

    name: str
    from_walls: tuple[tuple[str, float], ...]
    raised_ft: Inches


class LiftLevel(Frozen, kw_only=True):
    """The old pipe's bottom before and after the lift, both below the slab top, or both below a point that did not move."""

    line: str
    at_ft: Station
    before_ft: Inches
    after_ft: Inches
    below: Literal["slab top", "benchmark"] = "slab top"


class Afterwards(Frozen, kw_only=True):
    """All of it, in the order in which it was typed."""

    laid: tuple[LaidPipe, ...] = ()
    levels: tuple[BuiltLevel, ...] = ()
    tests: tuple[BuiltTest, ...] = ()
    inspections: tuple[Inspection, ...] = ()
    stills: tuple[Still, ...] = ()
    callbacks: tuple[Callback, ...] = ()
    lifts: tuple[LiftHeight, ...] = ()
    lift_levels: tuple[LiftLevel, ...] = ()
