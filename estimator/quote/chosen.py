"""What the pipeline hands over for each option: a scope, its takeoffs, its price, and how it is measured."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal

from estimator.model.add_on import AddOn
from estimator.model.basis import Basis
from estimator.model.offer import Margin, Payment
from estimator.model.price import Price
from estimator.model.work import Scope, Takeoff


@dataclass(frozen=True, slots=True, kw_only=True)
class Chosen:
    """One option before it has words.

    `days_*` are working days, halves allowed; `floor_sf`, `yard_sf` what is opened; `old_pipe_left_ft` the length of the
    lines with needs that is neither replaced nor lined, and what was not filmed. `payments` are the milestones,
    summing to the price's total. `margins`, by the code of an extra, are what one more of it adds to this price. `name` is the estimator's own name for the option, if he gave
    one; `basis` is what the price rests on; `waits_for_visit` says that a visit would settle what keeps it from being firm.
    """

    scope: Scope
    takeoffs: tuple[Takeoff, ...]
    price: Price
    days_on_site: Decimal
    days_without_drains: Decimal
    floor_sf: float = 0.0
    yard_sf: float = 0.0
    old_pipe_left_ft: float = 0.0
    payments: tuple[Payment, ...] = ()
    name: str = ""
    basis: Basis = Basis()
    waits_for_visit: bool = False
    add_ons: tuple[AddOn, ...] = ()
    margins: Mapping[str, Margin] = field(default_factory=dict, hash=False)
