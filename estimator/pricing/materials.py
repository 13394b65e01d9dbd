"""Step 4: the material parts of a scope in; what to buy, small parts and the tax the firm pays, out."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from decimal import Decimal

from estimator.model.money import cents, exact, up_to
from estimator.model.price import CostLine
from estimator.pricing.amounts import Asked, asked
from estimator.pricing.own_line import own_line
from estimator.pricing.parts import Part, of_kind
from estimator.pricing.problems import cell
from estimator.pricing.shown import plain
from estimator.pricing.spread_on import shares
from estimator.tables.rows import Material, PlaceRow
from estimator.tables.tables import Tables

FLOAT_DUST = Decimal("0.000001")
"""Amounts are read to a millionth before they are rounded up, so that 10.000000000000002 ft is not two sticks."""

PACK_DUST = Decimal("0.01")
"""Nobody buys another pack for so small a share of one (common practice)."""


def order_quantity(amount: float, row: Material) -> Decimal:
    """amount × (1 + waste), up to whole packs.

    >>> from estimator.pricing.examples import material
    >>> order_quantity(29.0, material("pvc-4", waste_percent="10", pack="10"))
    Decimal('40')
    >>> order_quantity(1.76, material("sand", pack="0.5"))
    Decimal('2')
    >>> order_quantity(10.0004, material("resin", pack="1"))
    Decimal('10')
    """
    wanted = (exact(amount) * (1 + row.waste_percent / 100)).quantize(FLOAT_DUST)
    if row.pack <= 0:
        return plain(wanted)
    packs = up_to(wanted, row.pack)
    over = wanted - (packs - row.pack)
    return plain(packs - row.pack if over <= row.pack * PACK_DUST and packs > row.pack else packs)


def material_lines(
    parts: Iterable[Part], tables: Tables, place: PlaceRow | None, small_parts_percent: Decimal
) -> tuple[CostLine, ...]:
    """One line a material over the whole scope, then small parts, then tax where the firm pays it when buying."""
    bought = tuple(_bought(a, tables.material(a.ref)) for a in asked(of_kind(parts, "material")))
    small = _small_parts(bought, tables, small_parts_percent)
    tax = _tax((*bought, *small), tables, place)
    return (*bought, *small, *tax)


def _bought(want: Asked, row: Material) -> CostLine:
    quantity = order_quantity(want.amount, row)
    waste = f" + {plain(row.waste_percent)} % waste" if row.waste_percent else ""
    pack = f", in packs of {plain(row.pack)}" if row.pack else ""
    why = f"{want.formula} = {want.amount:g}{waste}{pack}"
    line = own_line("material", "materials", row, quantity, row.unit_cost, why, want.by)
    return replace(line, need=want.amount)


def _small_parts(bought: Sequence[CostLine], tables: Tables, percent: Decimal) -> tuple[CostLine, ...]:
    base = [line for line in bought if tables.material(line.ref).small_parts]
    return _on_top(
        "small parts", "small parts", base, percent, cell("settings", tables.setting("small_parts_percent"), "value")
    )


def _tax(lines: Sequence[CostLine], tables: Tables, place: PlaceRow | None) -> tuple[CostLine, ...]:
    if place is None or place.tax_kind != "contractor pays" or place.tax_percent is None:
        return ()
    taxed = [line for line in lines if line.part == "small parts" or tables.material(line.ref).taxable]
    return _on_top("tax", "sales tax on materials", taxed, place.tax_percent, cell("places", place, "tax_percent"))


def _on_top(part: str, text: str, base: Sequence[CostLine], percent: Decimal, where: str) -> tuple[CostLine, ...]:
    """A share of other lines, carried by whoever carries those."""
    total = sum((line.amount for line in base), Decimal(0))
    if not total or not percent:
        return ()
    line = CostLine(
        part=part,
        ref=text,
        text=text,
        quantity=percent,
        unit="%",
        rate=total,
        amount=cents(total * percent / 100),
        price_class="own",
        formula=f"{total} × {plain(percent)} %",
        cell=where,
        shares=shares(laid for line in base for laid in _laid(line)),
    )
    return (line,)


def _laid(line: CostLine) -> list[tuple[tuple[str, str], float]]:
    whole = sum(weight for _, _, weight in line.shares)
    return [((repair, item), float(line.amount) * weight / whole) for repair, item, weight in line.shares]
