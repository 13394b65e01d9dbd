"""What to buy for jobs that were sold."""

from dataclasses import dataclass
from decimal import Decimal


@dataclass(frozen=True, slots=True, kw_only=True)
class Purchase:
    """One material for all jobs that need it: `quantity` in its unit, waste added, up to whole packs; dollars a unit."""

    supplier: str
    part_no: str
    item: str
    text: str
    quantity: Decimal
    unit: str
    pack: Decimal
    unit_cost: Decimal
    jobs: tuple[str, ...]
