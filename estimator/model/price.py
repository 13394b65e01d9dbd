"""What a scope costs and what it is sold for, with every step of the build-up kept."""

from decimal import Decimal

from estimator.model.frozen import Frozen
from estimator.model.say import Say
from estimator.model.schedule import Schedule

BESIDE = "add-on "
"""What the tasks, costs and lines of an add-on are laid on begins so; those of repairs never do."""


class TaskHours(Frozen, kw_only=True):
    """Crew-hours of one task of one work item: each × quantity × per × factor, unrounded. `cell` is the table cell.

    `each` is what the price is built on, crew-hours a unit: the mean of low, likely and high, or the likely alone.
    """

    repair: str
    work_item: str
    task: str
    crew: str
    quantity_name: str
    quantity: float
    unit: str
    per: float
    likely: float
    low: float
    high: float
    each: float
    factor: float
    factors: tuple[str, ...]
    hours: float
    cell: str


class CrewDays(Frozen, kw_only=True):
    """One crew over the scope: hours of work, set-up on each day, days to the half, and what they cost."""

    crew: str
    work_hours: float
    setup_hours: float
    days: Decimal
    hours: Decimal
    rate: Decimal
    amount: Decimal
    cell: str


class CostLine(Frozen, kw_only=True):
    """A line of cost, rounded once to the cent. part: labor, overhead, material, small parts, tax, equipment, sub, fee.

    `shares` are (repair, work item, weight) by which the line is laid on repairs and work items. `need` is how much of a
    material the takeoff asks for, before waste and packs.
    """

    part: str
    ref: str
    text: str
    quantity: Decimal
    unit: str
    rate: Decimal
    amount: Decimal
    price_class: str  # own, overhead, sub, allowance, pass-through
    formula: str = ""
    cell: str = ""
    shares: tuple[tuple[str, str, float], ...] = ()
    text_es: str = ""  # where the firm gave one
    need: float = 0.0

    @property
    def in_overhead(self) -> bool:
        """The firm's own thing, listed so that the crew brings it; nothing else may cost nothing."""
        return self.part == "equipment" and self.rate == 0


class LineItem(Frozen, kw_only=True):
    """A line the homeowner reads. amount == unit_price × quantity, to the cent.

    `billed` is "measured" (quantity in its unit) or "lump" (quantity 1, `size` says how much work it stands for).
    """

    id: str  # "A3": option letter and number, set when options are lettered
    work_item: str
    work_class: str  # find, reach, pipe, put back
    repair: str
    text_en: str
    text_es: str
    size: float
    size_unit: str
    billed: str
    quantity: Decimal
    unit: str
    unit_price: Decimal
    amount: Decimal
    price_class: str = "own"
    cost_share: Decimal = Decimal(0)

    @property
    def is_added(self) -> bool:
        """An add-on that was chosen, no part of a repair."""
        return self.repair.startswith(BESIDE)


class Step(Frozen, kw_only=True):
    """One step of the build-up from direct cost to price, as the office reads it."""

    text: str
    formula: str
    amount: Decimal


class Overruled(Frozen, kw_only=True):
    """A number the owner set against the program's, as the office reads it: ours, mine, why."""

    what: str  # "quantity of tunnel", "hours of tunnel dig", "price"
    ours: Decimal
    mine: Decimal
    unit: str
    reason: str

    def shown(self, number: Decimal) -> str:
        """Ours or mine with its unit: 22.3 ft, 14 h, $16,000.00."""
        return f"${number:,.2f}" if self.what == "price" else f"{number:f} {self.unit}".strip()


class PriceShare(Frozen, kw_only=True):
    """What leaves with the price: a percent of it before sales tax, to the cent."""

    name: str  # commission, card fee, warranty reserve
    percent: Decimal
    amount: Decimal


class Price(Frozen, kw_only=True):
    """A scope's price: hours, crew days, cost lines, the steps up to the total, and the lines that add up to it."""

    tasks: tuple[TaskHours, ...]
    crews: tuple[CrewDays, ...]
    costs: tuple[CostLine, ...]
    steps: tuple[Step, ...]
    lines: tuple[LineItem, ...]
    direct: Decimal
    contingency_percent: Decimal
    before_rounding: Decimal
    total: Decimal  # what the homeowner pays, tax on the homeowner's side included
    tax: Decimal = Decimal(0)  # tax charged to the homeowner, 0 where the contractor pays it on materials
    tax_says: tuple[Say, ...] = ()
    margin: Decimal = Decimal(0)  # share of the price left over cost, 0.40
    minimum_charges: tuple[Say, ...] = ()  # those that came into force
    warnings: tuple[Say, ...] = ()
    overruled: tuple[Overruled, ...] = ()  # what the owner set by hand; the margin above is the one after it
    leaves: tuple[PriceShare, ...] = ()  # commission, card fee, warranty reserve
    schedule: Schedule = Schedule()  # who does the tasks above on which day

    @property
    def machines(self) -> dict[str, float]:
        """Dollars a day or a time of each machine."""
        return {c.ref: float(c.rate) for c in self.costs if c.part == "equipment"}

    @property
    def days(self) -> Decimal:
        """Crew days, all crews one after another."""
        return sum((c.days for c in self.crews), Decimal(0))

    @property
    def added(self) -> Decimal:
        """What the add-ons chosen put on the price, before sales tax."""
        return sum((line.amount for line in self.lines if line.is_added), Decimal(0))

    @property
    def cost_beside(self) -> Decimal:
        """What allowances, the add-ons chosen and shares of the price cost the firm: in none of the cost lines above."""
        apart = (line for line in self.lines if line.is_added or line.price_class == "allowance")
        left = sum((share.amount for share in self.leaves), Decimal(0))
        return sum((line.cost_share for line in apart), left)
