"""The settings pricing reads, in one record: tables in, the firm's numbers out."""

from decimal import Decimal

from estimator.model.frozen import Frozen
from estimator.model.remembered import remembered
from estimator.tables.tables import Tables


class HouseRules(Frozen, kw_only=True):
    """How the firm counts days and rounds prices. Hours are crew-hours, money dollars."""

    day_hours: float
    day_step: Decimal
    tolerance_hours: float
    factor_cap: float
    night_rate: Decimal
    small_parts_percent: Decimal
    price_step: Decimal
    unit_price_step: Decimal
    overhead: Decimal = Decimal(0)  # dollars a crew-day


@remembered
def house_rules(tables: Tables) -> HouseRules:
    """Read them. Errors: KeyError for a setting that is missing (the tables' own check names it first)."""
    return HouseRules(
        day_hours=tables.number("crew_day_hours"),
        day_step=tables.amount("crew_step_days"),
        tolerance_hours=tables.number("crew_tolerance_hours"),
        factor_cap=tables.number("factor_cap"),
        night_rate=tables.amount("night_weekend_rate"),
        small_parts_percent=tables.amount("small_parts_percent"),
        price_step=tables.amount("round_price_to"),
        unit_price_step=tables.amount("unit_price_step"),
        overhead=tables.amount("overhead_per_crew_day"),
    )
