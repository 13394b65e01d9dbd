"""Part of step 4: subcontractors, loads and fees asked for in; a cost line each, in its own price class, out."""

from collections.abc import Iterable
from dataclasses import replace

from estimator.model.money import cents, exact, plain
from estimator.model.price import CostLine
from estimator.pricing.amounts import Asked, Charge
from estimator.pricing.materials import FLOAT_DUST
from estimator.pricing.parts import Part, holds
from estimator.pricing.problems import cell
from estimator.tables.rows import PlaceRow, SubOrFee
from estimator.tables.tables import Tables

USUAL_PERMIT = "permit"
"""What the recipe of a permit asks for; a place has fees of its own in its place."""


def subs_of(wanted: Iterable[Asked], tables: Tables) -> tuple[Charge[SubOrFee], ...]:
    """quantity × per × cost."""
    return tuple(_charge(want, tables.sub(want.ref)) for want in wanted)


def sub_lines(subs: Iterable[Charge[SubOrFee]]) -> tuple[CostLine, ...]:
    """A recipe part `fee` reads as fee, everything else as sub."""
    return tuple(map(_line, subs))


def with_fees_of(place: PlaceRow | None, parts: Iterable[Part], tables: Tables) -> tuple[Part, ...]:
    """The parts with the place's own permits where the usual one is asked for: each of its fees whose facts hold."""
    fees = place.permit_item if place else ()
    out: list[Part] = []
    for part in parts:
        theirs = fees if part.recipe.part == "fee" and part.ref == USUAL_PERMIT and fees else (part.ref,)
        due = (ref for ref in theirs if theirs == (part.ref,) or holds(tables.sub(ref).when, part.facts))
        out += [part if ref == part.ref else replace(part, ref=ref) for ref in due]
    return tuple(out)


def _charge(want: Asked, row: SubOrFee) -> Charge[SubOrFee]:
    quantity = plain(exact(want.amount).quantize(FLOAT_DUST))
    return Charge(want, row, quantity, cents(quantity * row.cost))


def _line(charge: Charge[SubOrFee]) -> CostLine:
    want, row, quantity = charge.want, charge.row, charge.quantity
    return CostLine(
        part=want.parts[0].recipe.part,
        ref=row.item,
        text=row.text,
        text_es=row.text_es,
        quantity=quantity,
        unit=row.unit,
        rate=row.cost,
        amount=charge.amount,
        price_class=row.price_class,
        formula=f"{want.formula} → {plain(quantity)} {row.unit} × {row.cost}",
        cell=cell("subs_and_fees", row, "cost"),
    )
