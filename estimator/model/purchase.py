"""What to buy for jobs that were sold."""

from decimal import Decimal

from estimator.model.frozen import Frozen
from estimator.model.say import FromTable


class Purchase(Frozen, kw_only=True):
    """One material for all jobs that need it: `quantity` in its unit, waste added, up to whole packs; dollars a unit."""

    supplier: str
    part_no: str
    item: str
    text: str
    text_es: str
    quantity: Decimal
    unit: str
    pack: Decimal
    unit_cost: Decimal
    jobs: tuple[str, ...]

    @property
    def words(self) -> FromTable:
        """What it is, in both languages."""
        return FromTable(self.text, self.text_es)
