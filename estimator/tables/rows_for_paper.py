"""Rows whose words or limits reach paper: ways of repair, extras, places, tax classes, terms; told again by rows.py."""

from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from estimator.tables.row_base import TableRow, Usual, col

TAX = Usual(1, 15, "no state and city together charge more")
SLOPE = Usual(0.0625, 1, "inches in a foot: the codes say 1/16 to 1/4")


@dataclass(frozen=True, slots=True, kw_only=True)
class MethodRow(TableRow):
    """Table methods."""

    method: str = col("id")
    min_charge: Decimal | None = col("the least this method is sold for, once a scope", least=0)
    contingency_percent: Decimal = col(
        "for what a method hides, of direct cost", least=0, usual=Usual(0, 60, "above it look first")
    )
    life_low: int = col("years, typical, low", least=0, usual=Usual(1, 100, "a drain's life"))
    life_high: int = col("years, typical, high", least=0, usual=Usual(1, 150, "a drain's life"))
    warranty_en: str = col("what is promised, English")
    warranty_es: str = col("what is promised, Spanish")
    title_en: str = col("the way of repair in plain words, English", needed=True)
    title_es: str = col("the way of repair in plain words, Spanish")
    under_en: str = col("the line under the title, English")
    under_es: str = col("the line under the title, Spanish")
    risk_en: str = col("the main thing that can go wrong, English")
    risk_es: str = col("the main thing that can go wrong, Spanish")


@dataclass(frozen=True, slots=True, kw_only=True)
class ExtraRow(TableRow):
    """Table extras: unit prices agreed before work starts."""

    code: str = col("id")
    methods: tuple[str, ...] = col("where it is offered", refers="methods")
    when: tuple[str, ...] = col("facts that must hold, each optionally after `not`")
    unit: str = col("ft, each, cy ...", needed=True)
    price: Decimal = col("dollars a unit; where margin_of is filled in: the least asked", least=0)
    cap: Decimal = col(
        "the most units before we stop and call", least=0.01, usual=Usual(0.5, 500, "beyond it one calls")
    )
    text_en: str = col("what the homeowner reads, English", needed=True)
    text_es: str = col("what the homeowner reads, Spanish")
    margin_of: str = col(
        "worked out from the option's own price: length, depth or side drain; empty: the price as it stands here",
        choices=("", "length", "depth", "side drain"),
        default="",
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class AddOnRow(TableRow):
    """Table add_ons: what a homeowner may add to an option, priced by its work item's recipe."""

    code: str = col("id, the word in `estimator quote --with`")
    work_item: str = col("what is done; its recipe gives the cost", refers="work_items")
    methods: tuple[str, ...] = col("where it is offered; empty: with every way of repair", refers="methods")
    when: tuple[str, ...] = col("facts that must hold, each optionally after `not`")
    quantity: float = col("how many of the work item; empty: 1", least=0.01, blank="1", default=1.0)
    text_en: str = col("what the homeowner reads, English; empty: the work item's own words")
    text_es: str = col("what the homeowner reads, Spanish; empty: the work item's own words")


@dataclass(frozen=True, slots=True, kw_only=True)
class PlaceRow(TableRow):
    """Table places: a jurisdiction. Empty is *not answered*, never zero."""

    place: str = col("id")
    text: str = col("its name")
    tax_kind: str = col(
        "who pays sales tax, on what", choices=("contractor pays", "separated", "whole charge", "none", "")
    )
    tax_percent: Decimal | None = col("sales tax", least=0, usual=TAX)
    deposit_cap_amount: Decimal | None = col("no deposit above this", least=0)
    deposit_cap_percent: Decimal | None = col(
        "nor above this share of the price", least=0, usual=Usual(1, 100, "a share of the price")
    )
    cancel_business_days: int | None = col(
        "days the homeowner may cancel in", least=0, usual=Usual(1, 15, "16 CFR 429 gives 3; a state may give more")
    )
    inspection_before_cover: bool | None = col("an inspector must see the pipe before it is covered")
    permit_item: tuple[str, ...] = col(
        "the place's own fees for its permits, each due where its `when` holds: permit, street permit, bond, septic; empty: permit",
        refers="subs_and_fees",
    )
    code: str = col("code family", choices=("IPC", "UPC", ""))
    code_edition: str = col("edition and local changes")
    slope_small_in_per_ft: float | None = col("least fall, pipe up to 2.5 in", above=0, usual=SLOPE)
    slope_mid_in_per_ft: float | None = col("least fall, pipe 3 to 6 in", above=0, usual=SLOPE)
    min_liner_wall_mm: float | None = col("least liner wall asked", least=0, usual=Usual(1, 15, "mm, never inches"))
    cleanout_every_ft: float | None = col(
        "farthest between cleanouts", above=0, usual=Usual(25, 200, "the codes say 75 to 100 ft")
    )
    cleanout_turn_degrees: float | None = col(
        "a sharper turn needs a cleanout", above=0, usual=Usual(22, 180, "degrees: the codes say 45 or 135")
    )
    tendons_since: int | None = col(
        "slabs built since this year may have tendons", least=0, usual=Usual(1940, 2030, "a year")
    )
    trap_arms: tuple[str, ...] = col("longest trap arm by trap size, inches then feet, such as `1.5 6, 2 8`")
    backwater_valve: bool | None = col("a valve against the city's sewage is asked for where the drain is renewed")
    source: str = col("where this was read or who said so")
    checked_on: date | None = col("the day someone last looked")
    inspections: int | None = col(
        "how many times the inspector comes to a job; empty: once",
        least=0,
        usual=Usual(1, 6, "each visit holds the crew up"),
        default=None,
    )
    least_cover_in: float | None = col(
        "least soil over a new buried drain, inches: frost depth or the place's own cover; empty: not answered",
        least=0,
        usual=Usual(6, 96, "inches, never feet"),
        default=None,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class TaxClass(TableRow):
    """Table tax_classes: work that a place taxes in its own way. Empty is *not answered*, never zero."""

    place: str = col("where", refers="places")
    tax_class: str = col("the word in work_items", needed=True)
    tax_kind: str = col("what is charged to the homeowner on it", choices=("whole charge", "none", ""))
    tax_percent: Decimal | None = col("its rate", least=0, usual=TAX)
    source: str = col("where this was read")
    asked_whom: str = col("who said so: accountant, state office")
    checked_on: date | None = col("the day someone last looked")


@dataclass(frozen=True, slots=True, kw_only=True)
class TermRow(TableRow):
    """Table terms."""

    id: str = col("id")
    kind: str = col(
        "which list it stands in; first page: under the letterhead in large letters, where a place demands that",
        choices=("includes", "excludes", "assumption", "caution", "notice", "first page", "to others", "crew caution"),
    )
    methods: tuple[str, ...] = col("empty: all", refers="methods")
    when: tuple[str, ...] = col("facts that must hold, each optionally after `not`")
    order: int = col("place in its list")
    text_en: str = col("English", needed=True)
    text_es: str = col("Spanish")
