"""Unit prices agreed beforehand: those that fit the ways and the facts of an option, each with the most it can come to."""

from dataclasses import replace
from datetime import date
from decimal import Decimal
from typing import Any

from estimator.quote.terms import extras
from estimator.tables import demo_folder, read_tables
from estimator.tables.rows import ExtraRow


def extra(code: str, methods: tuple[str, ...], when: tuple[str, ...] = ()) -> ExtraRow:
    words: dict[str, Any] = {"text_en": code, "text_es": code, "unit": "ft"}
    return ExtraRow(code=code, methods=methods, when=when, price=Decimal(395), cap=Decimal(6), **words)


def test_extras_fit_the_methods_and_facts_of_the_option() -> None:
    demo = read_tables(demo_folder(), date(2026, 11, 18)).tables
    assert demo is not None
    rows = (
        extra("more-tunnel", ("tunnel",)), extra("more-liner", ("reline",)), extra("any", ()),
        extra("slab", ("tunnel",), ("under_slab",)), extra("yard", ("tunnel",), ("not under_slab",)),
    )  # fmt: skip
    found = extras(replace(demo, rows={**demo.rows, "extras": rows}), {"tunnel"}, {"under_slab"})
    assert [e.code for e in found] == ["more-tunnel", "any", "slab"]
    assert found[0].cap_amount == Decimal("2370.00")  # 6 × 395 [computed]
