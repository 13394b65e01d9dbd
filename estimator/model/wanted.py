"""What the estimator and the homeowner ask for by hand: approvals, overrides, options, add-ons, allowances and discounts."""

from datetime import date
from decimal import Decimal
from typing import Literal

from estimator.model.frozen import Frozen


class Approval(Frozen, kw_only=True):
    """A paper on file from an engineer or an authority, for the rules it covers."""

    what: str
    by: str
    on: date
    covers: tuple[str, ...] = ()


class Override(Frozen, kw_only=True):
    """The owner's own word against a rule, a quantity, hours or a price, with the reason."""

    reason: str
    rule: str = ""
    option: str = ""
    line: str = ""
    where: str = ""
    item: str = ""
    quantity: str = ""
    hours: float | None = None
    price: Decimal | None = None


class WantedRepair(Frozen, kw_only=True):
    """A repair named by hand in an option. Stations are ft on the line; `entry` is "exit", "wall" or ""; `tasks` those of a visit."""

    method: str
    line: str
    from_ft: float | None = None
    to_ft: float | None = None
    entry: str = ""
    tasks: tuple[str, ...] = ()


class WantedOption(Frozen, kw_only=True):
    do: Literal["add", "drop", "rename", "pin"]
    name: str = ""
    new_name: str = ""
    repairs: tuple[WantedRepair, ...] = ()


class Allowance(Frozen, kw_only=True):
    text: str
    amount: Decimal


class Discount(Frozen, kw_only=True):
    reason: str
    amount: Decimal
    reason_es: str = ""


class PastVisit(Frozen, kw_only=True):
    """A visit, a test or a cleaning that the homeowner accepted before this quote: its day, and its price before sales tax,
    or what of that was paid where the office notes the job's money."""

    day: date
    charged: Decimal


class WantedAddOn(Frozen, kw_only=True):
    """A word of the estimator's on add-ons: how many of one from the tables (0: not here), or one of his own with its price.

    `options` are letters or names of the options it is offered with; empty: all it fits.
    """

    code: str
    quantity: float | None = None
    text: str = ""
    text_es: str = ""
    price: Decimal | None = None
    options: tuple[str, ...] = ()
