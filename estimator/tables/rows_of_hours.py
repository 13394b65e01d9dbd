"""The rows of who works and how long: roles, crews, production, factors."""

from dataclasses import dataclass
from decimal import Decimal

from estimator.tables.row_base import TableRow, Usual, col

HOURS = Usual(0.0005, 60, "crew-hours for one unit: minutes are divided by 60")


@dataclass(frozen=True, slots=True, kw_only=True)
class Role(TableRow):
    role: str = col("who")
    wage: Decimal = col(
        "dollars an hour on the pay slip",
        least=0,
        usual=Usual(7.25, 150, "federal minimum wage; a week or a month is no hour"),
    )
    burden_percent: Decimal = col(
        "taxes, insurance, benefits and truck, on top of the wage",
        least=0,
        usual=Usual(8, 150, "the employer's half of FICA is 7.65% before anything else"),
    )
    paid_hours: Decimal = col(
        "hours a year on the pay slips, leave and holidays in them, an hour of overtime as one and a half; empty: burden_percent holds that already",
        least=0,
        blank="0",
        default=Decimal(0),
        usual=Usual(400, 4000, "52 weeks of 40 hours are 2,080"),
    )
    worked_hours: Decimal = col(
        "hours a year truly worked; what is paid is spread over them alone",
        least=0,
        blank="0",
        default=Decimal(0),
        usual=Usual(400, 4000, "52 weeks of 40 hours are 2,080"),
    )

    @property
    def hour(self) -> Decimal:
        """What an hour of work costs the firm, dollars, unrounded: leave is paid and not worked, so it is not divided by."""
        spread = self.paid_hours / self.worked_hours if self.worked_hours else Decimal(1)
        return self.wage * (1 + self.burden_percent / 100) * spread


@dataclass(frozen=True, slots=True, kw_only=True)
class CrewMember(TableRow):
    """Table crews: one row a role of a crew."""

    crew: str = col("the crew")
    role: str = col("who is in it", refers="roles", needed=True)
    count: Decimal = col("how many", above=0, usual=Usual(0.1, 8, "more than eight stand in each other's way"))


@dataclass(frozen=True, slots=True, kw_only=True)
class Production(TableRow):
    task: str = col("id")
    unit: str = col("what one of is", needed=True)
    crew: str = col("who does it; empty: every crew that comes (daily set-up)", refers="crews")
    low: float = col("crew-hours a unit on a good day", least=0, usual=HOURS)
    likely: float = col("crew-hours a unit as a rule", least=0, usual=HOURS)
    high: float = col("crew-hours a unit on a bad day", least=0, usual=HOURS)
    covers: str = col("what the hour includes, so that nothing is counted twice or forgotten")
    covers_es: str = col("the same in Spanish; empty: the English", default="")

    @property
    def expected(self) -> float:
        """Crew-hours a unit on the average of many jobs: the mean of a triangle, (low + likely + high) ÷ 3."""
        return (self.low + self.likely + self.high) / 3


@dataclass(frozen=True, slots=True, kw_only=True)
class Factor(TableRow):
    fact: str = col("the yes/no fact that slows it down")
    tasks: tuple[str, ...] = col("the tasks it slows down", refers="production")
    multiplier: float = col(
        "hours times this", least=0.1, usual=Usual(0.5, 4, "1.25 is a quarter slower; 25 is a percent typed here")
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Contingency(TableRow):
    fact: str = col("an unknown that asks for more: depth_unlocated, soil_unknown ...")
    percent: Decimal = col("added to the method's own", least=0, usual=Usual(0, 60, "above it look first"))


@dataclass(frozen=True, slots=True, kw_only=True)
class Event(TableRow):
    """Table events: what may happen once on a job, with its chance and what it costs the firm. Only the range reads it."""

    event: str = col("id, and what the office reads", needed=True)
    methods: tuple[str, ...] = col("the repairs it may happen to", refers="methods")
    when: tuple[str, ...] = col("facts that must hold, each optionally after `not`")
    chance_percent: float = col(
        "on how many of a hundred such jobs", least=0, usual=Usual(0.5, 60, "above it plan for it")
    )
    crew: str = col("whose hours it takes; empty: none", refers="crews")
    hours: float = col("crew-hours it takes", least=0, usual=Usual(0, 60, "more is another job"))
    cost: Decimal = col("dollars beside the hours", least=0)
