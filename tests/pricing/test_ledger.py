"""Money after the signature: what is owed stays right to the cent through changes and credits."""

import csv
import io
from datetime import date
from decimal import Decimal

from hypothesis import given
from hypothesis import strategies as st

from estimator.model.plain_cell import plain_cell
from estimator.model.work import Takeoff
from estimator.pricing.build import price_scope
from estimator.pricing.ledger import COLUMNS, Account, Entry, bookkeeping_csv, owed, tax_on
from estimator.pricing.payments import payments_of
from estimator.tables.rows import PlaceRow
from estimator.tables.tables import Tables

D = Decimal


def test_the_payments_of_a_quote_are_all_that_is_owed(
    maple: tuple[Takeoff, ...], tables: Tables, place: PlaceRow
) -> None:
    price = price_scope(maple, tables, place)
    entries = [
        Entry(day=None, kind="draw", text=str(p.text), amount=p.amount) for p in payments_of(price, tables, place)
    ]
    assert owed(entries) == D("4200.00")
    entries += [
        Entry(day=date(2026, 12, 1), kind="change", text="2 ft more pipe", amount=D(330)),
        Entry(day=date(2026, 12, 2), kind="credit", text="less sod", amount=D("90.25")),
        Entry(day=date(2026, 12, 2), kind="payment", text="check 101", amount=D("1680.00")),
    ]
    assert owed(entries) == D("2759.75")  # 4,200 + 330 − 90.25 − 1,680 [computed]


def test_a_change_is_taxed_as_the_original_was() -> None:
    assert tax_on(D(330), D(4000), D(330)) == D("27.23")  # 8.25 % of 330 = 27.225 [computed]
    assert tax_on(D(330), D(4000), D(0)) == 0


kinds = st.sampled_from(["deposit", "draw", "change", "credit", "tax", "fee", "payment"])
entry = st.builds(
    lambda kind, amount, text: Entry(day=date(2026, 11, 25), kind=kind, text=text, amount=amount),
    kinds, st.decimals("0.01", "99999", places=2), st.text(st.characters(codec="utf-8", exclude_characters="\r\n\0"), max_size=20),
)  # fmt: skip


@given(st.lists(entry, max_size=12))
def test_bookkeeping_rows_sum_to_what_is_owed_and_read_back_as_written(entries: list[Entry]) -> None:
    text = bookkeeping_csv([Account("2026-114", "Maple, J.", entries)], {"draw": "4000 sales"})
    rows = list(csv.DictReader(io.StringIO(text)))
    assert sum((D(row["amount"]) for row in rows), D(0)) == owed(entries)
    assert [row["text"] for row in rows] == [plain_cell(e.text) for e in entries]
    assert text.splitlines()[0] == ",".join(COLUMNS)
