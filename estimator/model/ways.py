"""The ways to one stretch laid side by side, for the office: what each costs, what decides, where the choice turns out."""

from decimal import Decimal

from estimator.model.frozen import Frozen
from estimator.model.say import Say
from estimator.model.stretch import Stretch


class Way(Frozen, kw_only=True):
    """One way over the stretch with its dollars by class of work; or what stands against it, then without a price."""

    method: str
    price: Decimal | None = None
    all_in: Decimal | None = None
    days_on_site: Decimal = Decimal(0)
    days_without_drains: Decimal = Decimal(0)
    floor_sf: float = 0.0
    by_class: tuple[tuple[str, Decimal], ...] = ()
    against: Say | None = None


class Turning(Frozen, kw_only=True):
    """All-in dollars of the two ways along one thing that may be otherwise than noted, and where the cheaper one changes.

    `points` are (value, first, second); `turns` are (value, cheaper below, cheaper above).
    """

    what: Say
    unit: str
    now: float
    points: tuple[tuple[float, float, float], ...]
    turns: tuple[tuple[float, str, str], ...] = ()


class Ways(Frozen, kw_only=True):
    line: str
    stretch: Stretch
    does: Say
    ways: tuple[Way, ...]
    decides: tuple[Say, ...] = ()
    first: str = ""
    second: str = ""
    turnings: tuple[Turning, ...] = ()
