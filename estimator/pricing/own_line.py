"""What is bought or rented and how much of it in; a line of the firm's own cost out."""

from decimal import Decimal

from estimator.model.price import CostLine
from estimator.pricing.problems import cell
from estimator.pricing.shown import plain
from estimator.tables.rows import Equipment, Material


def own_line(
    part: str,
    table: str,
    row: Material | Equipment,
    quantity: Decimal,
    amount: Decimal,
    rate: Decimal,
    why: str,
) -> CostLine:
    """`amount` is quantity × rate, to the cent; `why` says how the quantity came about."""
    unit = f" {row.unit}" if part == "material" else ""
    return CostLine(
        part=part,
        ref=row.item,
        text=row.text,
        text_es=row.text_es,
        quantity=quantity,
        unit=row.unit,
        rate=rate,
        amount=amount,
        price_class="own",
        formula=f"{why} → {plain(quantity)}{unit} × {rate}",
        cell=cell(table, row, "cost"),
    )
