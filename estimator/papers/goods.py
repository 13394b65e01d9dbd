"""A cost line in; the thing it pays for, how many of it, for how long or in which packs, out: what is loaded and what is bought."""

from decimal import ROUND_CEILING, Decimal

from estimator.model.price import CostLine
from estimator.papers.letter import Letter
from estimator.tables.rows import Material
from estimator.tables.tables import Tables
from estimator.wording.numbers import number
from estimator.wording.plain import ONE, UNITS, in_plain_words
from estimator.wording.say import pick

MANY = Decimal(10)
"""From here on nobody loads a tenth of a foot, a gallon or a ton."""
PAID_BY = (", per ", ", por ")
"""How the tables write by what a machine is paid, in English and in Spanish."""


def counted(letter: Letter, cost: CostLine, tables: Tables | None) -> tuple[str, str, str]:
    """Return a thing, how many of it, and for how long or in which packs.

    What is paid by the day, the test or the pour is one thing; `saw blade, per foot of cut` is measured in feet of cut.
    """
    what = pick(letter.language, cost.text, cost.text_es)
    if cost.part != "equipment":
        return what, amount(letter, cost.quantity, cost.unit), packs_of(cost, tables)
    paid = next((ending for ending in PAID_BY if ending in what), "")
    what, by = what.partition(paid)[0] if paid else what, cost.text.partition(PAID_BY[0])[2]
    if cost.unit == "day":
        return what, "1", amount(letter, cost.quantity, "day")
    if by.startswith("foot"):
        return what, amount(letter, cost.quantity, "ft"), ""
    return what, "1" if by else amount(letter, cost.quantity, "each"), ""


def amount(letter: Letter, quantity: Decimal, unit: str) -> str:
    """How much of a thing, rounded up to what is loaded, with its unit; a count stands alone."""
    step = Decimal(1) if unit == "each" or quantity >= MANY else Decimal("0.1")
    whole = quantity.quantize(step, ROUND_CEILING)
    if unit == "each":
        return number(whole, letter.language)
    units = {**UNITS, **ONE} if whole == 1 else UNITS
    return f"{number(whole, letter.language)} {letter.say(in_plain_words(units, unit))}"


def packs_of(cost: CostLine, tables: Tables | None) -> str:
    """`4 × 10`: as bought, where it comes in packs."""
    row = next(
        (m for m in (tables.current("materials") if tables else ()) if isinstance(m, Material) and m.item == cost.ref),
        None,
    )
    if row is None or row.pack <= 1 or cost.quantity % row.pack:
        return ""
    return f"{cost.quantity / row.pack:.0f} × {row.pack.normalize():f}"
