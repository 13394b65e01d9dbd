"""Small rows and rules for the examples in docstrings."""

from decimal import Decimal

from estimator.pricing.house_rules import HouseRules
from estimator.tables.rows import Kept, Material, PlaceRow


def rules() -> HouseRules:
    """Days of 8 h in halves, a quarter hour of tolerance, prices up to $25."""
    return HouseRules(
        day_hours=8,
        day_step=Decimal("0.5"),
        tolerance_hours=0.25,
        factor_cap=3,
        night_rate=Decimal("1.5"),
        small_parts_percent=Decimal(5),
        price_step=Decimal(25),
        unit_price_step=Decimal(1),
    )


def material(item: str, waste_percent: str = "0", pack: str = "0", cost: str = "1") -> Material:
    """A material row."""
    return Material(
        item=item,
        text=item,
        size="",
        unit="ft",
        cost=Decimal(cost),
        waste_percent=Decimal(waste_percent),
        pack=Decimal(pack),
        taxable=True,
        small_parts=True,
        price_day=None,
        supplier="",
        part_no="",
        good_until=None,
    )


def place(deposit_cap_amount: str = "", deposit_cap_percent: str = "") -> PlaceRow:
    """A place of which only the deposit is answered."""
    empty = {name: None for name in PlaceRow.__dataclass_fields__ if name not in Kept.__dataclass_fields__}
    caps = {
        "deposit_cap_amount": Decimal(deposit_cap_amount) if deposit_cap_amount else None,
        "deposit_cap_percent": Decimal(deposit_cap_percent) if deposit_cap_percent else None,
    }
    words = dict.fromkeys(("place", "text", "tax_kind", "code", "code_edition", "source"), "")
    return PlaceRow(**(empty | caps | words))  # type: ignore[arg-type]
