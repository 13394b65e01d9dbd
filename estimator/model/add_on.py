"""What a homeowner may add to an option: a price of its own beside the total, which stands whatever else is chosen."""

from decimal import Decimal

from estimator.model.frozen import Frozen
from estimator.model.price import BESIDE, CostLine, Step, TaskHours


class AddOn(Frozen, kw_only=True):
    """One add-on of one option. `amount` is its price before sales tax, `price` what the homeowner pays for it.

    `tasks` and `costs` say what it takes; both are empty where it is the estimator's own, at his price.
    """

    code: str  # "cleanout": the word in `--with`
    text_en: str
    text_es: str
    work_item: str  # "" for one of the estimator's own
    work_class: str
    size: float
    unit: str
    amount: Decimal
    tax: Decimal = Decimal(0)
    cost: Decimal = Decimal(0)  # what it costs the firm
    tasks: tuple[TaskHours, ...] = ()
    costs: tuple[CostLine, ...] = ()
    steps: tuple[Step, ...] = ()  # from cost to price, as the office reads it
    chosen: bool = False

    @property
    def repair(self) -> str:
        """What its tasks and its line are laid on, as others are on a repair."""
        return BESIDE + self.code

    @property
    def price(self) -> Decimal:
        """What comes on the total when it is chosen."""
        return self.amount + self.tax
