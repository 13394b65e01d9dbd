"""What one row of each table is. The dataclasses are the tables: a field is a column, its type is the column's kind.

Column kinds by type: str text; float a number; Decimal dollars; int a whole number; bool yes/no; date a day;
`X | None` may be empty; tuple[str, ...] words parted by commas. `metadata` says what a column refers to and what it means.
Every table also has the columns of TableRow.
"""

from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from estimator.tables.row_base import TableRow as TableRow
from estimator.tables.row_base import Usual, col
from estimator.tables.rows_for_paper import AddOnRow as AddOnRow
from estimator.tables.rows_for_paper import ExtraRow as ExtraRow
from estimator.tables.rows_for_paper import MethodRow as MethodRow
from estimator.tables.rows_for_paper import PlaceRow as PlaceRow
from estimator.tables.rows_for_paper import TaxClass as TaxClass
from estimator.tables.rows_for_paper import TermRow as TermRow
from estimator.tables.rows_of_hours import Contingency as Contingency
from estimator.tables.rows_of_hours import CrewMember, Factor, Production, Role
from estimator.tables.rows_of_hours import Event as Event
from estimator.tables.table_owners import GROUPS


@dataclass(frozen=True, slots=True, kw_only=True)
class Setting(TableRow):
    key: str = col("the name the program knows it by")
    value: str = col("what the firm decides")
    unit: str = col("ft, in, percent, days, dollars, text ...")
    min: float | None = col("the least value that makes sense")
    max: float | None = col("the most that makes sense")
    why: str = col("what it does, in a sentence")
    decides: str = col(
        "what it decides; the first sheet says who keeps each group and what moves with it",
        choices=("", *GROUPS),
        default="",
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Material(TableRow):
    item: str = col("id")
    text: str = col("what it is, English")
    text_es: str = col("what it is, Spanish; empty: the English", default="")
    size: str = col("pipe size in inches, where it has one")
    unit: str = col("ft, each, ton, cy, sq ft, bag, gal ...", needed=True)
    cost: Decimal = col("dollars a unit", least=0)
    waste_percent: Decimal = col(
        "added before rounding up to packs", least=0, usual=Usual(0, 40, "cutting waste; nobody throws half away")
    )
    pack: Decimal = col(
        "bought in multiples of this; empty or 0: any amount",
        least=0,
        blank="0",
        usual=Usual(0.01, 1000, "what one buys at a time"),
    )
    taxable: bool = col("the firm pays sales tax on it when buying")
    small_parts: bool = col("small parts are added on it")
    price_day: date | None = col("the day the price was learned")
    supplier: str = col("who sells it")
    part_no: str = col("the supplier's number")
    good_until: date | None = col("the day the price ends")
    price_for: Decimal = col(
        "the cost is for this many units: 10 for a stick of 10 ft, 50 for a box of 50; empty: 1",
        least=0.0001,
        blank="1",
        default=Decimal(1),
    )

    @property
    def unit_cost(self) -> Decimal:
        """Dollars for one unit: cost ÷ price_for, to a ten-thousandth of a cent where it does not come out even."""
        return self.cost if self.price_for == 1 else round(self.cost / self.price_for, 6)


@dataclass(frozen=True, slots=True, kw_only=True)
class Equipment(TableRow):
    item: str = col("id")
    text: str = col("what it is, English")
    text_es: str = col("what it is, Spanish; empty: the English", default="")
    unit: str = col("day or each", choices=("day", "each"))
    cost: Decimal = col("dollars a day, or each time", least=0)
    crew: str = col("whose days it follows; empty for each", refers="crews")
    min_days: Decimal = col(
        "the least days charged; empty: 0", least=0, blank="0", usual=Usual(0.25, 10, "a rental of weeks is no repair")
    )
    own: bool = col("yes: the firm's own; no: rented")
    price_day: date | None = col("the day the price was learned")


@dataclass(frozen=True, slots=True, kw_only=True)
class SubOrFee(TableRow):
    """Table subs_and_fees."""

    item: str = col("id")
    text: str = col("what it is, English")
    text_es: str = col("what it is, Spanish; empty: the English", default="")
    unit: str = col("each, day, load, cy ...", needed=True)
    cost: Decimal = col("dollars a unit", least=0)
    price_class: str = col("which margin applies; column `class`", refers="pricing", needed=True)
    price_day: date | None = col("the day the price was learned")
    valid_until: date | None = col("the day the price ends")
    when: tuple[str, ...] = col(
        "of a fee that places name in permit_item: facts that must hold, such as street_permit; empty: always",
        default=(),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkItem(TableRow):
    item: str = col("id")
    work_class: str = col("column `class`", choices=("find", "reach", "pipe", "put back"))
    methods: tuple[str, ...] = col(
        "the methods that may need it; empty: whichever has the quantity; `job` for once a scope", refers="methods"
    )
    when: tuple[str, ...] = col("facts that must hold, each optionally after `not`")
    quantity: str = col("the takeoff quantity that says how much; it is on the quote when that is above 0", needed=True)
    unit: str = col("ft, sq ft, each, job ...", needed=True)
    billed: str = col("measured or lump", choices=("measured", "lump"))
    order: int = col("place on the quote")
    text_en: str = col("what the homeowner reads, English; {size} stands for the pipe size in inches", needed=True)
    text_es: str = col("what the homeowner reads, Spanish; {size} stands for the pipe size in inches")
    tax_class: str = col(
        "where the place has a row of tax_classes for this word, that one; else as the place", default=""
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Recipe(TableRow):
    work_item: str = col("what it makes", refers="work_items")
    part: str = col("what kind of cost it is", choices=("labor", "material", "equipment", "sub", "fee"))
    ref: str = col("a task, material, equipment or sub; {size} stands for the pipe size", needed=True)
    quantity: str = col("the takeoff quantity; empty: the work item's own")
    per: float = col("how many of ref for one of quantity", above=0, usual=Usual(0.001, 500, "of one for another"))
    crew: str = col("instead of the production row's crew", refers="crews")
    when: tuple[str, ...] = col("facts that must hold, each optionally after `not`")
    once: bool = col(
        "yes: paid once a scope, however many repairs ask (a delivery, a letter)", blank="no", default=False
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class PriceClass(TableRow):
    """Table pricing."""

    price_class: str = col("own, sub, allowance, pass-through; column `class`")
    margin_percent: Decimal = col(
        "share of the price, never of the cost", least=0, usual=Usual(5, 75, "overhead is paid from it; 0 passes on")
    )
    floor_margin_percent: Decimal = col("never below this without the owner", least=0)
    contingency: bool = col("contingency applies")


@dataclass(frozen=True, slots=True, kw_only=True)
class Soil(TableRow):
    soil: str = col("the word used in the notes")
    osha_type: str = col(
        "A, B, C or rock, undisturbed; soil over a pipe is never better than B", choices=("A", "B", "C", "rock")
    )
    swell_percent: float = col("bank to loose", least=0, usual=Usual(5, 80, "sand 10 to 15, rock 50 to 65"))
    shrink_machine: float = col(
        "compacted yards from a bank yard, by machine",
        least=0.1,
        usual=Usual(0.6, 1.5, "earth packs to 0.8 to 0.95 of the bank, shot rock to 1.3"),
    )
    shrink_hand: float = col(
        "compacted yards from a bank yard, hand tamped",
        least=0.1,
        usual=Usual(0.6, 1.6, "earth packs to 0.8 to 1 of the bank"),
    )
    tons_per_bcy: float = col("weight", least=0.1, usual=Usual(0.5, 2.6, "peat 0.6, solid rock 2.2 tons a cubic yard"))
    shoring_every_ft: float | None = col(
        "price allowance for shoring sets in a tunnel; empty: no tunnel without full shoring",
        above=0,
        usual=Usual(1, 12, "sets stand a few feet apart"),
    )
    can_tunnel: bool = col("no: loose, running or fill")


TABLES: dict[str, tuple[type[TableRow], tuple[str, ...]]] = {
    "settings": (Setting, ("key",)),
    "roles": (Role, ("role",)),
    "crews": (CrewMember, ("crew", "role")),
    "materials": (Material, ("item",)),
    "equipment": (Equipment, ("item",)),
    "subs_and_fees": (SubOrFee, ("item",)),
    "production": (Production, ("task",)),
    "factors": (Factor, ("fact", "tasks")),
    "work_items": (WorkItem, ("item",)),
    "recipes": (Recipe, ("work_item", "part", "ref", "quantity", "when")),
    "methods": (MethodRow, ("method",)),
    "pricing": (PriceClass, ("price_class",)),
    "contingency": (Contingency, ("fact",)),
    "events": (Event, ("event",)),
    "soils": (Soil, ("soil",)),
    "extras": (ExtraRow, ("code",)),
    "add_ons": (AddOnRow, ("code",)),
    "places": (PlaceRow, ("place",)),
    "tax_classes": (TaxClass, ("place", "tax_class")),
    "terms": (TermRow, ("id",)),
}
"""Every table: its row and the columns that name a row; two rows of one name differ in `from`."""
TABLE_OF: dict[type[TableRow], str] = {row: table for table, (row, _) in TABLES.items()}


def id_of(table: str, row: TableRow) -> str:
    """Return what stands in the first column that names a row."""
    return str(getattr(row, TABLES[table][1][0]))


def name_of(table: str, row: TableRow) -> tuple[object, ...]:
    """Return what tells a row from the others of its table, but for its first day."""
    return tuple(getattr(row, column) for column in TABLES[table][1])


HEADERS: dict[str, str] = {"starts": "from", "work_class": "class", "price_class": "class"}
"""Column headers that are no Python names."""

NO_NUMBER = ("text", "day", "list", "yes/no")
"""Units of settings whose value is not a number."""
