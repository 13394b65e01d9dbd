"""Step 4: the material parts of a scope in; what to buy, small parts and the tax the firm pays, out."""

from collections.abc import Iterable
from decimal import Decimal

from estimator.model.frozen import Frozen, replace
from estimator.model.money import cents, exact, plain, up_to
from estimator.model.price import CostLine
from estimator.pricing.amounts import Asked, Charge
from estimator.pricing.problems import cell
from estimator.tables.rows import Equipment, Material, PlaceRow
from estimator.tables.tables import Tables

FLOAT_DUST = Decimal("0.000001")
"""Amounts are read to a millionth before they are rounded up, so that 10.000000000000002 ft is not two sticks."""

PACK_DUST = Decimal("0.01")
"""Nobody buys another pack for so small a share of one (common practice)."""


def order_quantity(amount: float, row: Material) -> Decimal:
    """amount × (1 + waste), up to whole packs."""
    wanted = (exact(amount) * (1 + row.waste_percent / 100)).quantize(FLOAT_DUST)
    if row.pack <= 0:
        return plain(wanted)
    packs = up_to(wanted, row.pack)
    over = wanted - (packs - row.pack)
    return plain(packs - row.pack if over <= row.pack * PACK_DUST and packs > row.pack else packs)


class Materials(Frozen):
    """What a scope buys; and dollars of small parts, and of the sales tax where the firm pays it when buying.

    `small_base` and `tax_base` are what the two are a percent of.
    """

    bought: tuple[Charge[Material], ...]
    small_base: Decimal
    small_percent: Decimal
    small: Decimal
    tax_base: Decimal
    tax_percent: Decimal
    tax: Decimal

    @property
    def amount(self) -> Decimal:
        """All of it, tax aside."""
        return sum((b.amount for b in self.bought), self.small)


def materials_of(
    wanted: Iterable[Asked], tables: Tables, place: PlaceRow | None, small_parts_percent: Decimal
) -> Materials:
    """One charge a material over the whole scope, then small parts, then tax where the firm pays it when buying."""
    bought = tuple(_bought(want, tables.material(want.ref)) for want in wanted)
    small_base = sum((b.amount for b in bought if b.row.small_parts), Decimal(0))
    small = cents(small_base * small_parts_percent / 100)
    tax_base, tax_percent = sum((b.amount for b in bought if b.row.taxable), small), _tax_percent(place)
    tax = cents(tax_base * tax_percent / 100)
    return Materials(bought, small_base, small_parts_percent, small, tax_base, tax_percent, tax)


def _bought(want: Asked, row: Material) -> Charge[Material]:
    quantity = order_quantity(want.amount, row)
    return Charge(want, row, quantity, cents(quantity * row.unit_cost))


def _tax_percent(place: PlaceRow | None) -> Decimal:
    """What the firm pays when buying; nothing where it does not, or nobody has answered."""
    if place is None or place.tax_percent is None or place.tax_kind != "contractor pays":
        return Decimal(0)
    return place.tax_percent


def material_lines(materials: Materials, tables: Tables, place: PlaceRow | None) -> tuple[CostLine, ...]:
    """A line a material, one of small parts, one of tax, each with how it came about."""
    where = cell("settings", tables.setting("small_parts_percent"), "value")
    small = _on_top("small parts", "small parts", materials.small_base, materials.small_percent, materials.small, where)
    where = cell("places", place, "tax_percent") if place is not None else ""
    tax = _on_top("tax", "sales tax on materials", materials.tax_base, materials.tax_percent, materials.tax, where)
    return (*map(_line, materials.bought), *small, *tax)


def _line(bought: Charge[Material]) -> CostLine:
    want, row = bought.want, bought.row
    waste = f" + {plain(row.waste_percent)} % waste" if row.waste_percent else ""
    pack = f", in packs of {plain(row.pack)}" if row.pack else ""
    why = f"{want.formula} = {want.amount:g}{waste}{pack}"
    line = own_line("material", "materials", row, bought.quantity, bought.amount, row.unit_cost, why)
    return replace(line, need=want.amount)


def _on_top(
    part: str, text: str, total: Decimal, percent: Decimal, amount: Decimal, where: str
) -> tuple[CostLine, ...]:
    """A share of other lines."""
    if not total or not percent:
        return ()
    line = CostLine(
        part=part,
        ref=text,
        text=text,
        quantity=percent,
        unit="%",
        rate=total,
        amount=amount,
        price_class="own",
        formula=f"{total} × {plain(percent)} %",
        cell=where,
    )
    return (line,)


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
