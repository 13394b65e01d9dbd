"""A change order at the unit prices that were signed: to the cent, and nothing else moves."""

from dataclasses import replace
from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest

from estimator.cli.priced_job import priced
from estimator.model.agreed import agreed, side_of, side_recorded
from estimator.model.offer import Option, Quote
from estimator.papers.change_order import ChangeOrder, change_order
from estimator.records.recorded_text import plain
from estimator.sheets.book import Formula

D = Decimal
SPOT = Path(__file__).parents[1] / "everyday" / "yard-spot"


def quoted(folder: Path, *changes: tuple[str, str]) -> tuple[Quote, Option]:
    """The house with some words of its notes changed, and its dig in the yard."""
    folder.mkdir()
    for file in SPOT.glob("*"):
        text = file.read_text("utf-8")
        for old, new in changes:
            text = text.replace(old, new)
        (folder / file.name).write_text(text, "utf-8")
    quote = priced(folder / "job.toml", None).quote
    return quote, next(o for o in quote.options if {r.method for r in o.scope.repairs} == {"yard spot"})


LONGER = ("26-28  crack", "26-31  crack")


def test_three_feet_more_cost_three_times_the_price_signed(tmp_path: Path) -> None:
    """The crack reaches 3 ft farther, one clay pipe more: 24 to 33 ft in place of 24 to 30."""
    (before, signed), (after, now) = quoted(tmp_path / "was"), quoted(tmp_path / "now", LONGER)
    pipe = next(e for e in signed.extras if e.code == "more-pipe-yard")
    found = agreed(side_of(signed), side_of(now))
    assert found is not None
    assert [(m.extra.code, m.quantity, m.amount) for m in found.moves] == [("more-pipe-yard", 3, 3 * pipe.price)]
    assert found.total == signed.price.total + 3 * pipe.price
    assert found.total != now.price.total  # priced anew, half days and all, it would be another
    order = ChangeOrder(before=before, signed=signed, signed_on=date(2026, 11, 30), after=after, now=now)
    rows = [[cell.value for cell in row.cells] for row in change_order(order, ("en_US",)).sheets[0].rows if row.cells]
    money = [row for row in rows if len(row) == 4 and isinstance(row[3], Formula)]
    assert [row[1:3] for row in money[:-1]] == [[signed.price.total] * 2, [D(0), 3 * pipe.price]]
    assert str(money[1][0]).endswith(f"3 feet × ${pipe.price:,.0f}") or f"3 ft × ${pipe.price:,.0f}" in str(money[1][0])
    assert [cell.value for cell in money[-1][1:] if isinstance(cell, Formula)] == [
        signed.price.total, found.total, 3 * pipe.price,
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("changes", "why"),
    [
        ((LONGER, ('soil = "firm clay"', 'soil = "sand"')), "another soil, of which nothing was agreed"),
        ((("26-28  crack", "27-28  crack"),), "nothing moved"),
        ((("26-28  crack", "29-29.5  crack"),), "less than was signed"),
    ],
)
def test_what_the_signed_prices_do_not_explain_is_priced_anew(
    changes: tuple[tuple[str, str], ...], why: str, tmp_path: Path
) -> None:
    signed, now = quoted(tmp_path / "was")[1], quoted(tmp_path / "now", *changes)[1]
    assert agreed(side_of(signed), side_of(now)) is None, why


def test_tax_on_the_extras_is_that_which_was_agreed(tmp_path: Path) -> None:
    signed, now = quoted(tmp_path / "was")[1], quoted(tmp_path / "now", LONGER)[1]
    most = sum((e.cap_amount for e in signed.extras), D(0))
    taxed = replace(signed, extras_tax=most * D("0.08"), price=replace(signed.price, tax=D("100.00")))
    found = agreed(side_of(taxed), side_of(now))
    assert found is not None
    added = sum((m.amount for m in found.moves), D(0))
    assert found.tax - D("100.00") == added * D("0.08")
    assert found.total == signed.price.total + added * D("1.08")


def test_a_record_tells_the_same_as_the_option(tmp_path: Path) -> None:
    signed = quoted(tmp_path / "was")[1]
    assert side_recorded(plain(signed)) == side_of(signed)
    assert side_recorded({"price": {"total": "1", "tax": "0"}}).work == ""


def test_beyond_the_most_that_was_agreed_it_is_priced_anew(tmp_path: Path) -> None:
    signed, now = side_of(quoted(tmp_path / "was")[1]), side_of(quoted(tmp_path / "now", LONGER)[1])
    less = tuple(replace(e, cap_quantity=D("2.9")) if e.code == "more-pipe-yard" else e for e in signed.extras)
    assert agreed(signed, now) is not None
    assert agreed(replace(signed, extras=less), now) is None
