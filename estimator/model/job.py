"""The job as read from the notes: who, where, the house, its lines, its tests, its wishes."""

import datetime
from dataclasses import replace
from datetime import date
from decimal import Decimal
from typing import Annotated, Literal

from estimator.model.frozen import Frozen
from estimator.model.line import Line
from estimator.model.stretch import Stretch
from estimator.model.wanted import Allowance, Approval, Discount, Override, PastVisit, WantedAddOn, WantedOption

# A record of this module and of `wanted` is the one declaration of its table: `estimator.fieldnotes.written` takes the keys, what may be
# written under each, and how it is written again from here. A key is the field's name without the unit at its end.

Feet = Annotated[float, "ft"]
"""Kept in ft; in a job file a number alone is feet."""
Inches = Annotated[float, "in"]
"""Kept in ft; in a job file a number alone is inches."""
Year = Annotated[int, (1600, 2200)]
Exits = Annotated[int, (1, 20)]
TendonProof = Annotated[str, "proof that a slab has no tendons"]

Floor = Literal["slab", "post-tensioned slab", "slab, tendons unknown", "crawl space", "basement"]
SLAB_FLOORS: tuple[str, ...] = ("slab", "post-tensioned slab", "slab, tendons unknown")


class Customer(Frozen, kw_only=True):
    name: str
    site: str
    phone: str = ""
    email: str = ""
    insurer: str = ""
    policy: str = ""
    claim: str = ""
    adjuster: str = ""


class EdgeBeam(Frozen):
    """The beam along the slab's edge: its bottom below the slab top and its width, ft. Both 0: somebody made sure there is none."""

    deep_ft: float
    wide_ft: float

    @property
    def there(self) -> bool:
        return self.deep_ft > 0


class House(Frozen, kw_only=True):
    """Facts of the house. Lengths in ft. `fixtures` counts fixtures by word, bathroom groups among them."""

    floor: Floor
    jurisdiction: str
    built: Year | None = None
    slab_thickness_ft: Inches | None = None
    slab_above_grade_ft: Inches | None = None
    crawl_height_ft: Inches | None = None  # ground to joists, at its lowest
    crawl_mud: bool | None = None  # wet or muddy under the floor; None: nobody said
    soil: str | None = None
    expansive_soil: bool | None = None
    sewer: Literal["city", "septic"] = "city"
    force_main: bool | None = None  # a pump pushes the sewage: pipe under pressure, without fall; None: nobody said
    shared_lateral: bool | None = None  # another house drains into the same line; None: nobody said
    lived_in: bool = True
    exits: Exits = 1  # how many drains leave the building
    water_lines: str = "unknown"  # "copper under slab", "overhead", "unknown"
    edge_beam: EdgeBeam | None = None  # None: nobody said, which is not "none"
    tendons: TendonProof = ""  # "none, engineer's drawing": no tendons, and what proves it; "" nobody proved anything
    in_slab: str = "unknown"  # what else runs in the slab: "nothing", "ducts", "conduit", "unknown"
    bathrooms: int | None = None
    floor_finish: str = ""
    floor_price_sf: Decimal | None = None  # this homeowner's floor, put back, dollars a square foot
    fixtures: tuple[tuple[str, int], ...] = ()
    own_facts: tuple[
        str, ...
    ] = ()  # the firm's own facts (setting own_facts): "steep yard" holds, "not steep yard" does not


class Site(Frozen, kw_only=True):
    """What the crew meets. `caving_signs` is the competent person's word; None: nobody looked."""

    gate_ft: Feet | None = None
    carry_ft: Feet | None = None
    machine: bool = True
    located: bool = False  # public utilities located
    caving_signs: bool | None = None
    water_table_ft: Feet | None = None
    paint_sqft: float | None = None
    roots_in_soil: bool = False
    competent_person: str = ""


class Wishes(Frozen, kw_only=True):
    keep_floors: bool = False
    asked: str = ""
    selling: date | None = None
    recommend: str = ""  # the person's own recommendation: the letter or name of an option
    because: str = ""
    by: str = ""
    add_ons: tuple[str, ...] = ()  # codes of the add-ons the homeowner chose


class WaterTest(Frozen, kw_only=True):
    """A standing-water test. `readings` are (minutes, drop in inches), in order of time."""

    section: str
    kind: Literal["whole", "isolated", "new pipe"] = "whole"
    covers: tuple[str, ...] = ()  # names of lines or branches
    part: Stretch | None = None  # stations of the only line it covers; None: all of what it covers
    when: Literal["before lift", "after lift", "after repair", "routine"] = "routine"
    date: datetime.date | None = None
    plug: str = ""
    level: str = "slab top"
    open_risers_in: tuple[float, ...] = ()
    readings: tuple[tuple[float, float], ...] = ()
    held_at_in: float | None = None  # inches below `level` where it stopped falling
    result: Literal["passed", "failed", "could not be sealed", ""] = ""
    sealed: bool | None = None
    settled_min: float | None = None
    rose_at: str = ""
    not_in_test: tuple[str, ...] = ()
    billed: bool = False
    witness: str = ""
    note: str = ""


class Leg(Frozen, kw_only=True):
    zone: str  # "wall", "yard", "crawl", "attic", "drive" ...
    length_ft: Feet


class Reroute(Frozen, kw_only=True):
    """A way round that the estimator saw on site. `fall_available_ft` is gross, invert to invert."""

    name: str
    replaces_line: str
    replaces_from_ft: float | None = None  # stations; None: the whole line
    replaces_to_ft: float | None = None
    legs: tuple[Leg, ...] = ()
    fall_available_ft: float | None = None
    ties_into_line: str = ""
    ties_into_ft: float | None = None
    size_in: float | None = None
    serves: tuple[tuple[str, int], ...] = ()  # fixtures carried
    penetrations: tuple[tuple[str, int], ...] = ()  # wall, roof, floor
    turns: int = 0
    vents: int = 0


class Sign(Frozen, kw_only=True):
    """Something seen off the camera: wet lawn, sinkhole, smell, water meter that turns."""

    what: str
    where: str = ""
    note: str = ""


class Foundation(Frozen, kw_only=True):
    work: Literal["none", "planned", "done"] = "none"
    lift_date: date | None = None
    company: str = ""
    piers: int | None = None


class Job(Frozen, kw_only=True):
    """Everything the notes say about one house."""

    number: str
    day: date
    prepared_by: str
    customer: Customer
    house: House
    lines: tuple[Line, ...]
    inspected_on: date | None = None  # where it was not on `day`
    languages: tuple[str, ...] = ("en_US",)
    demo: bool = False
    site: Site = Site()
    wishes: Wishes = Wishes()
    foundation: Foundation = Foundation()
    water_tests: tuple[WaterTest, ...] = ()
    reroutes: tuple[Reroute, ...] = ()
    signs: tuple[Sign, ...] = ()
    approvals: tuple[Approval, ...] = ()
    overrides: tuple[Override, ...] = ()
    options: tuple[WantedOption, ...] = ()
    allowances: tuple[Allowance, ...] = ()
    discounts: tuple[Discount, ...] = ()
    add_ons: tuple[WantedAddOn, ...] = ()
    chosen: tuple[str, ...] | None = None  # add-ons chosen at the writing of a quote, instead of those of the wishes
    visits: tuple[PastVisit, ...] = ()  # accepted before: from the records, in no job file
    settings: tuple[tuple[str, str], ...] = ()  # the firm's settings changed for this job only
    notes: tuple[str, ...] = ()

    @property
    def chosen_add_ons(self) -> tuple[str, ...]:
        """Short names, each alone or after the letter of an option and a colon: `cleanout`, `B:cleanout`."""
        return self.wishes.add_ons if self.chosen is None else self.chosen

    def with_add_ons(self, codes: tuple[str, ...] | None) -> "Job":
        """The job with these add-ons chosen instead of those in the wishes; with None as the wishes say."""
        return replace(self, chosen=None if codes == self.wishes.add_ons else codes)

    def line(self, name: str) -> Line:
        """The line of that name. Errors: KeyError when there is none."""
        for line in self.lines:
            if line.name == name:
                return line
        raise KeyError(name)
