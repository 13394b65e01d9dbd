"""Unit prices agreed beforehand: those that fit the ways and the facts of an option, each with the most it can come to."""

from dataclasses import replace
from datetime import date
from decimal import Decimal
from typing import Any

from estimator.quote.terms import extras, extras_tax
from estimator.tables import demo_folder, read_tables
from estimator.tables.rows import ExtraRow
from tests.made_up.quote import example_quote


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


def test_tax_on_extras_is_inside_the_most_that_the_price_can_come_to() -> None:
    """Two caps of 1,110 and 420: 1,530 × 8.25 % = 126.225, up to the cent 126.23; nothing where no tax is charged [by hand]."""
    option = example_quote().options[0]
    demo = read_tables(demo_folder(), date(2026, 11, 18)).tables
    assert demo is not None
    for kind, tax in (("whole charge", "126.23"), ("separated", "126.23"), ("contractor pays", "0"), ("none", "0")):
        taxing = replace(demo.place("demo"), tax_kind=kind, tax_percent=Decimal("8.25"))
        assert extras_tax(option.extras, taxing) == Decimal(tax)
        taxed = replace(option, extras_tax=extras_tax(option.extras, taxing))
        assert taxed.most == option.price.total + 1530 + Decimal(tax)
    assert extras_tax(option.extras, None) == 0
