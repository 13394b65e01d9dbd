"""The job file's tables and keys, closed: what may be written where, and as what. Raw values in, checked forms out."""

from datetime import date as Day
from decimal import Decimal
from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field

from estimator.fieldnotes.values import (
    BeamWords,
    Count,
    Counts,
    Dollars,
    Feet,
    Inches,
    Languages,
    Legs,
    Riser,
    Station,
    TendonWords,
    Text,
    Words,
)
from estimator.model.job import Floor


class Form(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True, defer_build=True, allow_inf_nan=False)


class JobForm(Form):
    number: Text
    date: Day
    prepared_by: Text
    language: Languages = ()
    languages: Languages = ()
    demo: bool = False
    notes: Words = ()


class CustomerForm(Form):
    name: Text
    site: Text
    phone: Text = ""
    email: Text = ""
    insurer: Text = ""
    policy: Text = ""
    claim: Text = ""


class HouseForm(Form):
    floor: Floor
    jurisdiction: Text
    built: Annotated[int, Field(ge=1600, le=2200)] | None = None
    slab_thickness: Inches | None = None
    slab_above_grade: Inches | None = None
    soil: Text | None = None
    expansive_soil: bool | None = None
    sewer: Literal["city", "septic"] = "city"
    lived_in: bool = True
    keep_floors: bool | None = None
    exits: Annotated[int, Field(ge=1, le=20)] = 1
    water_lines: Text = "unknown"
    in_slab: Text = "unknown"
    edge_beam: BeamWords | None = None
    tendons: TendonWords = ""
    bathrooms: Count | None = None
    floor_finish: Text = ""
    floor_price: Dollars | None = None
    foundation_work: Text = ""
    fixtures: Counts = {}


class SiteForm(Form):
    gate: Feet | None = None
    carry: Feet | None = None
    machine: bool = True
    located: bool = False
    caving_signs: bool | None = None
    water_table: Feet | None = None
    paint_sqft: Annotated[float, Field(ge=0, le=1_000_000)] | None = None
    roots_in_soil: bool = False
    competent_person: Text = ""


class WishesForm(Form):
    keep_floors: bool = False
    asked: Text = ""
    selling: Day | None = None
    recommend: Text = ""
    because: Text = ""
    by: Text = ""
    add_ons: Words = ()


class FoundationForm(Form):
    work: Literal["none", "planned", "done"] = "none"
    lift_date: Day | None = None
    company: Text = ""
    piers: Count | None = None


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
    when: Literal["before lift", "after lift", "after repair", "routine"] = "routine"
    date: Day | None = None
    plug: Text = ""
    level: Text = "slab top"
    open_risers: tuple[Inches, ...] = ()
    riser_size: Inches | None = None
    readings: dict[str, Inches] | Text = {}
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


class LegForm(Form):
    zone: Text
    length: Feet


class RerouteForm(Form):
    name: Text
    replaces: PlaceOnLineForm
    legs: Annotated[tuple[LegForm, ...], Legs] = ()
    fall_available: Inches | None = None
    ties_into: JoinForm | None = None
    size: Inches | None = None
    serves: Counts = {}
    penetrations: Counts = {}
    turns: Count = 0
    vents: Count = 0


class SignForm(Form):
    what: Text
    where: Text = ""
    note: Text = ""


class ApprovalForm(Form):
    what: Text
    by: Text
    on: Day
    covers: Words = ()


class OverrideForm(Form):
    reason: Text = ""
    because: Text = ""
    rule: Text = ""
    option: Text = ""
    line: Text = ""
    where: Text = ""
    item: Text = ""
    quantity: Text = ""
    hours: Annotated[float, Field(ge=0, le=100_000)] | None = None
    price: Dollars | None = None


class WantedRepairForm(Form):
    method: Text
    line: Text
    where: Text = ""
    entry: Text = ""


class OptionForm(Form):
    do: Literal["add", "drop", "rename", "pin"]
    name: Text = ""
    new_name: Text = ""
    repairs: tuple[WantedRepairForm, ...] = ()


class AllowanceForm(Form):
    text: Text
    amount: Dollars


class DiscountForm(Form):
    reason: Text
    amount: Dollars


class AddOnForm(Form):
    code: Text
    quantity: Annotated[float, Field(ge=0, le=100_000)] | None = None
    text: Text = ""
    text_es: Text = ""
    price: Dollars | None = None
    options: Words = ()


class JobFileForm(Form):
    job: JobForm
    customer: CustomerForm
    house: HouseForm
    site: SiteForm = SiteForm()
    wishes: WishesForm = WishesForm()
    foundation: FoundationForm = FoundationForm()
    line: tuple[LineForm, ...] = ()
    water_test: tuple[WaterTestForm, ...] = ()
    reroute: tuple[RerouteForm, ...] = ()
    sign: tuple[SignForm, ...] = ()
    approval: tuple[ApprovalForm, ...] = ()
    override: tuple[OverrideForm, ...] = ()
    option: tuple[OptionForm, ...] = ()
    allowance: tuple[AllowanceForm, ...] = ()
    discount: tuple[DiscountForm, ...] = ()
    add_on: tuple[AddOnForm, ...] = ()
    settings: dict[str, str | bool | int | Decimal] = {}
    words: dict[str, str] = {}
