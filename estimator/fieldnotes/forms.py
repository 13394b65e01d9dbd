"""The job file's tables and keys, closed: what may be written where, and as what. Raw values in, checked forms out.

A table that is a record of the model needs no form here: the record is its declaration (`written`). The forms below are
of tables that say their thing otherwise than the record keeps it.
"""

from datetime import date as Day
from decimal import Decimal
from typing import Annotated, Literal

from pydantic import Field

from estimator.fieldnotes.values import (
    Count,
    CountPairs,
    Feet,
    Inches,
    Languages,
    Legs,
    Riser,
    Station,
    Text,
    Words,
)
from estimator.fieldnotes.written import AsRecord, Form
from estimator.model.job import Customer, Foundation, House, Leg, Sign, Site, Wishes
from estimator.model.wanted import Allowance, Approval, Discount, Override, WantedAddOn


class JobForm(Form):
    number: Text
    date: Day
    inspected_on: Day | None = None
    prepared_by: Text
    language: Languages = ()
    languages: Languages = ()
    demo: bool = False
    notes: Words = ()


class PassForm(Form):
    access: Text = ""
    from_: Text = Field("", alias="from")
    to: Text = ""
    flow: Literal["with flow", "against flow"] | None = None
    riser: Riser | None = None
    surface: bool = False
    zero_at: Feet | None = None
    why: Text = ""
    log: Text = ""


class JoinForm(Form):
    line: Text
    at: Feet | None = None  # a reel reading of that line's first pass
    station: Station | None = None  # or a station, where the first pass did not go


class PlaceOnLineForm(Form):
    line: Text
    from_: Station | None = Field(None, alias="from")
    to: Station | None = None


class LineForm(Form):
    name: Text
    size: Inches
    pipe: Text
    log: Text = ""
    zero: Literal["access", "slab edge"] | None = None
    access: Text = ""
    to: Text = ""
    flow: Literal["with flow", "against flow"] | None = None
    riser: Riser | None = None
    surface: bool = False
    length: Feet | None = None
    ends: Text = ""
    filmed: bool = True
    joins: Text | JoinForm | None = None
    note: Text = ""
    pass_: tuple[PassForm, ...] = Field((), alias="pass")


class WaterTestForm(Form):
    section: Text = "whole house"
    kind: Literal["whole", "isolated", "new pipe"] = "whole"
    covers: Words = ()
    from_: Station | None = Field(None, alias="from")
    to: Station | None = None
    when: Literal["before lift", "after lift", "after repair", "routine"] = "routine"
    date: Day | None = None
    plug: Text = ""
    level: Text = "slab top"
    open_risers: tuple[Inches, ...] = ()
    riser_size: Inches | None = None
    readings: dict[str, Inches] | Text = Field(default_factory=dict)
    drop: Inches | None = None
    minutes: Annotated[float, Field(gt=0, le=100_000)] | None = None
    held_at: Text | None = None
    result: Literal["passed", "failed", "pass", "fail", "could not be sealed", ""] = ""
    sealed: bool | None = None
    settled: Text | None = None
    rose_at: Text = ""
    not_in_test: Words = ()
    billed: bool = False
    witness: Text = ""
    note: Text = ""


class RerouteForm(Form):
    name: Text
    replaces: PlaceOnLineForm
    legs: Annotated[tuple[Annotated[Leg, AsRecord], ...], Legs] = ()
    fall_available: Inches | None = None
    ties_into: JoinForm | None = None
    size: Inches | None = None
    serves: CountPairs = ()
    penetrations: CountPairs = ()
    turns: Count = 0
    vents: Count = 0


class WantedRepairForm(Form):
    method: Text
    line: Text
    where: Text = ""
    entry: Text = ""
    tasks: Text = ""


class OptionForm(Form):
    do: Literal["add", "drop", "rename", "pin"]
    name: Text = ""
    new_name: Text = ""
    repairs: tuple[WantedRepairForm, ...] = ()


class JobFileForm(Form):
    job: JobForm
    customer: Annotated[Customer, AsRecord]
    house: Annotated[House, AsRecord]
    site: Annotated[Site, AsRecord] = Site()
    wishes: Annotated[Wishes, AsRecord] = Wishes()
    foundation: Annotated[Foundation, AsRecord] = Foundation()
    line: tuple[LineForm, ...] = ()
    water_test: tuple[WaterTestForm, ...] = ()
    reroute: tuple[RerouteForm, ...] = ()
    sign: tuple[Annotated[Sign, AsRecord], ...] = ()
    approval: tuple[Annotated[Approval, AsRecord], ...] = ()
    override: tuple[Annotated[Override, AsRecord], ...] = ()
    option: tuple[OptionForm, ...] = ()
    allowance: tuple[Annotated[Allowance, AsRecord], ...] = ()
    discount: tuple[Annotated[Discount, AsRecord], ...] = ()
    add_on: tuple[Annotated[WantedAddOn, AsRecord], ...] = ()
    settings: dict[str, str | bool | int | Decimal] = Field(default_factory=dict)
    words: dict[str, str] = Field(default_factory=dict)
