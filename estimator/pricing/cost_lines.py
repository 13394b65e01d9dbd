"""The figures of a scope in; a cost line for each, which says how it came about and who carries it, out."""

from decimal import Decimal

from estimator.model.frozen import replace
from estimator.model.price import CostLine
from estimator.pricing.crew_days import labor_lines, overhead_line
from estimator.pricing.equipment import equipment_lines
from estimator.pricing.figures import Figures
from estimator.pricing.materials import material_lines
from estimator.pricing.shares import loads_of
from estimator.pricing.subs import sub_lines
from estimator.tables.rows import PlaceRow
from estimator.tables.tables import Tables


def cost_lines(
    figures: Figures, tables: Tables, place: PlaceRow | None, overhead_a_day: Decimal
) -> tuple[CostLine, ...]:
    """Labor, overhead, equipment, materials, subs and fees."""
    lines = (
        *labor_lines(figures.crews),
        *overhead_line(figures.crew_days, figures.overhead, overhead_a_day),
        *equipment_lines(figures.machines),
        *material_lines(figures.stuff, tables, place),
        *sub_lines(figures.subs),
    )
    return tuple(replace(line, shares=load.shares) for line, load in zip(lines, loads_of(figures), strict=True))
