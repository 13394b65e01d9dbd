"""The money of three invented jobs, worked out by hand to the cent: what falls due when, changes, credits, tax, what is owed."""

import csv
from collections.abc import Mapping
from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest

from estimator.pricing.ledger import Account, Entry, bookkeeping_csv
from estimator.records.accepted import accept
from estimator.records.afterwards.money import Money, changed, money, note
from estimator.records.afterwards.owing import owing
from estimator.records.afterwards.purchase import order_entries
from estimator.records.afterwards.sold import Sold, sold
from estimator.records.finished import finish
from estimator.records.recorded_text import sealed, unsealed
from estimator.records.revisions import Revision, revisions
from tests.made_up.sold import issued

D = Decimal


def option_of(folder: Path, number: int, price: Mapping[str, object], payments: Mapping[str, str], tax: tuple) -> None:
    """Option A of a revision as this price and these payments, in a place that taxes in this way."""
    path = Revision(number, folder / f"r{number}").record_file
    held = unsealed(path.read_bytes())
    held["revision"] = held["summary"]["revision"] = number
    option = held["quote"]["options"][0]
    option["price"] |= price
    option["payments"] = [{"text": {"text": text, "words": []}, "amount": amount} for text, amount in payments.items()]
    names = held["tables"]["columns"]["places"]
    for row in held["tables"]["rows"]["places"]:
        if row[names.index("place")] == "demo":
            row[names.index("tax_kind")], row[names.index("tax_percent")] = tax
    path.write_bytes(sealed(held))


def signed(folder: Path, price: Mapping[str, object], payments: Mapping[str, str], tax: tuple) -> Sold:
    issued(folder, letter="")
    option_of(folder, 1, price, payments, tax)
    accept(folder, revisions(folder)[0], "A", date(2026, 11, 20))
    return sold(folder)


FOUR = {
    "Deposit at signing": "1000.00",
    "Start of work": "2000.00",
    "Pipe or liner in": "2000.00",
    "Completion": "3660.00",
}


def task(step: str, start: float, end: float) -> dict[str, object]:
    rest = {
        "repair": "r",
        "method": "tunnel",
        "crew": "plumbing",
        "crew_hours": end - start,
        "items": [],
        "waits_for": [],
    }
    return {"id": step, "step": step, "start": start, "end": end, **rest}


SCHEDULE = {"tasks": [task("dig", 0, 16), task("pipe", 16, 22), task("fill", 22, 31)]}
"""Dug on days 1 and 2, pipe in on day 3, filled by the end of day 4."""


@pytest.fixture(name="whole_charge")
def _whole_charge(tmp_path: Path) -> Sold:
    """$8,000 and 8.25 % on all of it: $660 of tax, $8,660."""
    price = {"total": "8660.00", "tax": "660.00", "schedule": SCHEDULE}
    return signed(tmp_path / "job", price, FOUR, ("whole charge", "8.25"))


def paid(name: str, amount: str, day: date, reference: str = "") -> Entry:
    return Entry(day=day, kind="payment", text=name, amount=D(amount), reference=reference)


def test_the_first_job_all_taxed_four_payments_one_change_paid_one_credit(whole_charge: Sold, tmp_path: Path) -> None:
    """Signed November 20. Work starts on Wednesday, December 2: day 3 is Friday the 4th, day 4 Monday the 7th.

    Change of $450.10 with 8.25 % = 37.13 (37.13325): 487.23. Credit of $120 with 9.90: 129.90.
    8,660.00 + 487.23 − 129.90 = 9,017.33. In: 1,000 and 1,000 (two equal payments of one day) and 487.23: open 6,530.10.
    By December 5 were due: 1,000 + 2,000 + 2,000 + 487.23 − 129.90 = 5,357.33, less 2,487.23: 2,870.10, since December 2:
    what came in, 2,487.23 and the credit of 129.90, pays the deposit and 1,617.13 of the 2,000 due that day.
    """
    folder = tmp_path / "job"
    day = date(2026, 12, 3)
    entries = [
        paid("deposit", "1000", date(2026, 11, 21)),
        paid("deposit", "1000", date(2026, 11, 21)),
        *changed(whole_charge, "change", "one more cleanout", D("450.10"), day, "CO 1"),
        *changed(whole_charge, "credit", "no sod", D(120), day, ""),
        paid("one more cleanout", "487.23", date(2026, 12, 4)),
    ]
    state = note(folder, whole_charge, entries, {"start": date(2026, 12, 2)})
    assert [(m.name, m.amount, m.tax, m.due) for m in state.asked] == [
        ("deposit", D("1000.00"), D("76.21"), date(2026, 11, 20)),  # 660 × 1000/8660 = 76.2125
        ("start", D("2000.00"), D("152.43"), date(2026, 12, 2)),  # 152.4249: the second largest, the earlier one
        ("pipe in before cover", D("2000.00"), D("152.42"), date(2026, 12, 4)),  # 152.4249
        ("done", D("3660.00"), D("278.94"), date(2026, 12, 7)),  # 278.9376: the largest remainder
        ("one more cleanout", D("487.23"), D("37.13"), day),
    ]
    assert state.balance == D("6530.10")
    assert state.due(date(2026, 12, 5)) == D("2870.10")
    (open_,) = owing([folder.with_suffix(".toml")], date(2026, 12, 5))
    assert (open_.owed, open_.due, open_.since) == (D("6530.10"), D("2870.10"), date(2026, 12, 2))
    books = list(csv.DictReader(bookkeeping_csv([Account("1", "c", state.entries)], {}).splitlines()))
    assert sum(D(row["amount"]) for row in books) == D("6530.10")
    assert (
        len(books) == 4 * 2 + 2 + 2 + 3
    )  # four payments with tax apart, a change and a credit with theirs, three payments in


def test_the_second_job_materials_taxed_done_before_its_draws_were_asked_for(tmp_path: Path) -> None:
    """$5,000 with $123.75 of tax on materials: 2.475 % of the price. A change of $333.33 carries 8.2499: 8.25. All is due when
    the work is done on December 10, though nobody noted its start: 5,123.75 + 341.58 = 5,465.33, less 512: 4,953.33."""
    folder = tmp_path / "job"
    payments = {"Deposit at signing": "512.00", "Start of work": "2000.00", "Completion": "2611.75"}
    done = signed(folder, {"total": "5123.75", "tax": "123.75"}, payments, ("separated", "8.25"))
    entries = changed(done, "change", "longer liner", D("333.33"), date(2026, 12, 8), "")
    assert [e.amount for e in entries] == [D("333.33"), D("8.25")]
    before = note(folder, done, [paid("deposit", "512", date(2026, 11, 20)), *entries])
    assert before.due(date(2026, 12, 9)) == D("341.58")
    finish(folder, date(2026, 12, 10))
    after = money(folder, done)
    assert [m.due for m in after.milestones] == [date(2026, 11, 20), date(2026, 12, 10), date(2026, 12, 10)]
    assert after.due(date(2026, 12, 10)) == after.balance == D("4953.33")


def test_the_third_job_change_orders_are_billed_by_their_revisions_each_for_what_it_moved(tmp_path: Path) -> None:
    """$8,660 signed; r2 comes to $9,309.50 (tax 709.50): + 600 and 49.50 of tax. r3 comes to $9,093 (tax 693): −200 and 16.50
    off what r2 made of it. 8,660 + 649.50 − 216.50 = 9,093.00: the total of r3."""
    folder = tmp_path / "job"
    done = signed(folder, {"total": "8660.00", "tax": "660.00"}, FOUR, ("whole charge", "8.25"))
    for number, total, tax in ((2, "9309.50", "709.50"), (3, "9093.00", "693.00")):
        later_revision(folder, number, {"total": total, "tax": tax})
    second = order_entries(folder, done, "r2", date(2026, 12, 1), ())
    assert [(e.kind, e.amount) for e in second] == [("change", D("600.00")), ("tax", D("49.50"))]
    state: Money = note(folder, done, second)
    third = order_entries(folder, done, "r3", date(2026, 12, 4), state.later)
    assert [(e.kind, e.amount) for e in third] == [("credit", D("200.00")), ("credit", D("16.50"))]
    state = note(folder, done, [*third, paid("change order to r2", "649.50", date(2026, 12, 5))])
    assert state.balance == D("9093.00") - D("649.50")
    assert state.asked[-1].amount == D("649.50")


def test_an_order_to_a_revision_that_is_signed_itself_counts_once(tmp_path: Path) -> None:
    """$8,660 signed, $649.50 ordered to r2 and 649.50 of it paid; then r2, $9,309.50, is signed: owed 9,309.50 − 649.50 = 8,660.00."""
    folder = tmp_path / "job"
    done = signed(folder, {"total": "8660.00", "tax": "660.00"}, FOUR, ("whole charge", "8.25"))
    later_revision(folder, 2, {"total": "9309.50", "tax": "709.50"})
    option_of(folder, 2, {}, {**FOUR, "Completion": "4309.50"}, ("whole charge", "8.25"))
    order = order_entries(folder, done, "r2", date(2026, 12, 1), ())
    assert note(folder, done, [*order, paid("change order to r2", "649.50", date(2026, 12, 2))]).balance == D("8660.00")
    accept(folder, revisions(folder)[1], "A", date(2026, 12, 3))
    state = money(folder, sold(folder))
    assert state.balance == D("8660.00")
    assert [e.kind for e in state.later] == ["payment"]


def later_revision(folder: Path, number: int, price: Mapping[str, object]) -> None:
    inside = folder / f"r{number}"
    inside.mkdir()
    for path in (folder / "r1").rglob("*.json"):
        target = inside / path.relative_to(folder / "r1")
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_bytes(path.read_bytes())
    option_of(folder, number, price, FOUR, ("whole charge", "8.25"))
