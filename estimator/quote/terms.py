"""Methods and facts of an option in, its sentences, its agreed extras and what goes to others out, from the firm's tables."""

from collections.abc import Iterable, Mapping, Set
from decimal import ROUND_CEILING, Decimal

from estimator.model.money import CENT, cents, exact, to_step
from estimator.model.offer import Extra, Margin, Term, ToOthers
from estimator.quote.refuse import holds
from estimator.tables.rows import ExtraRow, PlaceRow, TermRow
from estimator.tables.tables import Tables

FLOOR_TERM = "oth-floor"
CHARGED = ("separated", "whole charge")
"""Kinds of sales tax that the homeowner is charged."""
TO_OTHERS, NOTICE, FIRST_PAGE = "to others", "notice", "first page"


def applies(methods: Iterable[str], when: Iterable[str], used: Set[str], facts: Set[str]) -> bool:
    """A row counts when one of its methods is used (or it names none) and its facts hold."""
    named = tuple(methods)
    return (not named or any(m in used for m in named)) and holds(when, facts)


def rows(tables: Tables, used: Set[str], facts: Set[str]) -> list[TermRow]:
    """The sentences of the table that count, in the firm's order."""
    found = [row for row in tables.terms if applies(row.methods, row.when, used, facts)]
    return sorted(found, key=lambda row: (row.kind, row.order, row.id))


def terms(tables: Tables, used: Set[str], facts: Set[str]) -> tuple[Term, ...]:
    """Everything but what goes to others and what holds for the whole quote."""
    kept = (r for r in rows(tables, used, facts) if r.kind != TO_OTHERS and not _of_the_quote(r))
    return tuple(_term(row) for row in kept)


def notices(tables: Tables, facts: Set[str], used: Set[str] = frozenset()) -> tuple[Term, ...]:
    """Notices that hold whatever the option, and what a place wants on the first page."""
    return tuple(_term(row) for row in rows(tables, used, facts) if _of_the_quote(row))


def _of_the_quote(row: TermRow) -> bool:
    return row.kind == FIRST_PAGE or (row.kind == NOTICE and not row.methods)


def _term(row: TermRow) -> Term:
    return Term(id=row.id, kind=row.kind, text_en=row.text_en, text_es=row.text_es)


def to_others(
    tables: Tables, used: Set[str], facts: Set[str], floor_sf: float, floor_price: Decimal | None
) -> tuple[ToOthers, ...]:
    """What the homeowner also pays, each once; the floor with her own price a square foot, where she gave one."""
    found: dict[str, TermRow] = {}
    for row in rows(tables, used, facts):
        if row.kind == TO_OTHERS:
            found.setdefault(row.text_en, row)
    floor = cents(to_step(floor_price * exact(floor_sf), Decimal(1))) if floor_price and floor_sf else None
    return tuple(
        ToOthers(text_en=row.text_en, text_es=row.text_es, amount=floor if row.id == FLOOR_TERM else None)
        for row in found.values()
    )


def extras(
    tables: Tables, used: Set[str], facts: Set[str], margins: Mapping[str, Margin] | None = None
) -> tuple[Extra, ...]:
    """Unit prices agreed beforehand, each with the most it can come to.

    A margin of the option's own price ends where it does not hold any more; where it holds for nothing none is agreed.
    """
    found = [row for row in tables.extras if applies(row.methods, row.when, used, facts)]
    made = (_extra(row, (margins or {}).get(row.code)) for row in found)
    return tuple(extra for extra in made if extra.cap_quantity > 0)


def _extra(row: ExtraRow, margin: Margin | None) -> Extra:
    price, cap = (margin.price, margin.holds_to) if margin else (row.price, row.cap)
    return Extra(
        code=row.code,
        text_en=row.text_en,
        text_es=row.text_es,
        unit=row.unit,
        price=price,
        cap_quantity=cap,
        cap_amount=cents(price * cap),
        margin_of=row.margin_of if margin else "",
        counted=margin.counted if margin else Decimal(0),
    )


def extras_tax(found: Iterable[Extra], place: PlaceRow | None) -> Decimal:
    """Return the most sales tax that all extras can carry: the place's rate on their caps, up to the cent, where anything is
    charged to the homeowner. Where the place taxes materials alone it comes to less."""
    if place is None or place.tax_percent is None or place.tax_kind not in CHARGED:
        return Decimal(0)
    caps = sum((extra.cap_amount for extra in found), Decimal(0))
    return (caps * place.tax_percent / 100).quantize(CENT, ROUND_CEILING)
