"""A change order says what moved, sums to both totals to the cent, and keeps to the words of its language."""

from dataclasses import replace
from datetime import date
from decimal import Decimal

import pytest

from estimator.model.say import Say
from estimator.papers.change_order import ChangeOrder, change_order, moves
from estimator.sheets.book import Formula
from estimator.sheets.write import write
from tests.made_up.quote import example_quote

DAY = date(2026, 11, 20)


def _order(by: Decimal) -> ChangeOrder:
    """The example's first option with its third line moved by so many dollars, in revision 2."""
    before = example_quote()
    signed = before.options[0]
    lines = list(signed.price.lines)
    lines[2] = replace(lines[2], amount=lines[2].amount + by)
    now = replace(signed, price=replace(signed.price, lines=tuple(lines), total=signed.price.total + by))
    after = replace(before, revision=2, options=(now, *before.options[1:]))
    return ChangeOrder(before=before, signed=signed, signed_on=DAY, after=after, now=now)


def _cells(order: ChangeOrder, language: str = "en_US") -> list[list[object]]:
    sheet = change_order(order, (language,)).sheets[0]
    return [[cell.value for cell in row.cells] for row in sheet.rows if row.cells]


def _words(order: ChangeOrder, language: str = "en_US") -> str:
    return "\n".join(str(value) for row in _cells(order, language) for value in row)


@pytest.mark.parametrize("by", [Decimal(300), Decimal(-120), Decimal(0)])
def test_the_three_columns_sum_to_signed_now_and_the_difference(by) -> None:
    order = _order(by)
    total = next(row for row in _cells(order) if row[0] == "Total")
    assert [cell.value for cell in total[1:] if isinstance(cell, Formula)] == [
        order.signed.price.total,
        order.now.price.total,
        by,
    ]
    assert sum(m.now - m.signed for m in moves(order.signed, order.now)) == by


def test_only_the_line_that_moved_stands_by_itself() -> None:
    order = _order(Decimal(300))
    moved = order.signed.price.lines[2].text_en
    rows = [row for row in _cells(order) if len(row) == 4 and isinstance(row[3], Formula)]
    assert [row[0] for row in rows[:-1]] == [moved, "Work that stays as signed"]


@pytest.mark.parametrize(
    ("by", "said"),
    [
        (Decimal(300), "This adds $300."),
        (Decimal(-120), "This takes off $120."),
        (Decimal(0), "The total stays"),
    ],
)
def test_the_new_total_is_said_in_words(by, said) -> None:
    assert said in _words(_order(by))


def test_up_to_the_most_that_was_agreed_it_stays_within_and_a_cent_over_it_does_not() -> None:
    order = _order(Decimal(0))
    room = order.signed.most - order.signed.price.total
    assert room > 0
    assert "stays within" in _words(_order(room))
    over = _words(_order(room + Decimal("0.01")))
    assert "stays within" not in over
    assert "nothing of it is done before you sign here" in over


def test_what_was_found_since_stands_on_it_and_what_was_known_does_not() -> None:
    order = _order(Decimal(300))
    first, *rest = order.after.found
    found = replace(order, before=replace(order.before, found=tuple(rest)))
    new = str(first.text)[:15].lower()
    assert new in _words(found).lower()
    assert new not in _words(order).lower()
    assert "Nothing new" in _words(order)


def test_there_is_a_line_to_sign_for_each_side_and_the_extras_that_were_agreed() -> None:
    order = _order(Decimal(300))
    words = _words(order)
    assert "Printed name" in words
    assert words.count("Date") >= 2
    for extra in order.signed.extras:
        assert extra.text_en in words


def test_in_both_languages_of_the_job_each_has_a_sheet_and_the_bytes_are_the_same_every_time() -> None:
    order = _order(Decimal(300))
    book = change_order(order, ("en_US", "es_US"))
    assert [sheet.name for sheet in book.sheets] == ["Change order", "Orden de cambio"]
    assert "Esto aumenta $300." in _words(order, "es_US")
    assert write(book) == write(change_order(order, ("en_US", "es_US")))


def test_no_cost_and_no_margin_stands_on_it() -> None:
    """What stays in the house: see the homeowner's quote."""
    order = _order(Decimal(300))
    inside = {f"{cost.amount}" for cost in order.now.price.costs} - {f"{line.amount}" for line in order.now.price.lines}
    assert not {word for word in _words(order).split() if word in inside}


def test_what_the_notes_say_beside_findings_was_found_too() -> None:
    order = replace(_order(Decimal(0)), noted=(Say.of("the main line, 22 ft: a side drain of 3 in, laundry."),))
    assert "The main line, 22 ft: a side drain" in _words(order)
    assert "Nothing new" not in _words(order)


WHY = "a line whose own work stays can move"


def test_a_line_whose_work_stays_and_whose_price_moves_is_explained_and_one_with_other_work_is_not() -> None:
    assert WHY in _words(_order(Decimal(300)))
    assert WHY not in _words(_order(Decimal(0)))
    order = _order(Decimal(300))
    lines = list(order.now.price.lines)
    lines[2] = replace(lines[2], size=lines[2].size + 4)
    assert WHY not in _words(replace(order, now=replace(order.now, price=replace(order.now.price, lines=tuple(lines)))))


def test_prices_of_another_day_are_named() -> None:
    order = _order(Decimal(300))
    later = replace(order, after=replace(order.after, day=date(2027, 1, 20), priced_on=None))
    assert "now they are those of January 20, 2027." in _words(later)
    assert WHY not in _words(later)
