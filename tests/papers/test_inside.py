"""The papers that stay in the house: marked as such; the office's recalculates; the crew's has no money on it."""

import io
import re
from dataclasses import replace
from decimal import Decimal

import pytest
from openpyxl import load_workbook

from estimator.papers.check_code import check_code
from estimator.papers.crew import crew
from estimator.papers.office import office, workings
from estimator.sheets.book import Formula
from estimator.sheets.write import write
from estimator.tables import demo_folder, read_tables
from tests.made_up.quote import example_quote
from tests.papers.test_crew_person import with_quantity


def cells(data: bytes) -> list[str]:
    book = load_workbook(io.BytesIO(data), data_only=True)
    return [str(c.value) for sheet in book for row in sheet.iter_rows() for c in row if c.value is not None]


def test_every_sheet_of_the_office_begins_in_red_with_internal() -> None:
    for book in (office(example_quote()), workings(example_quote())):
        for sheet in load_workbook(io.BytesIO(write(book))):
            assert str(sheet["A1"].value).startswith("INTERNAL"), sheet.title
            assert sheet["A1"].fill.fgColor.rgb == "FFA61B1B", sheet.title


@pytest.mark.parametrize("language", ["en_US", "es_US"])
def test_every_sheet_of_the_crew_begins_in_red_and_carries_no_money(language: str) -> None:
    data = write(crew(example_quote(), language))
    for sheet in load_workbook(io.BytesIO(data)):
        assert re.match("INTERN(AL|O)", str(sheet["A1"].value)), sheet.title
    text = "\n".join(cells(data))
    assert "$" not in text
    for amount in ("16525", "8601.8", "4752", "79.2", "9460"):
        assert amount not in text.replace(",", ""), amount
    formats = {
        c.number_format
        for s in load_workbook(io.BytesIO(data))
        for row in s.iter_rows()
        for c in row
        if c.value is not None
    }
    assert not [f for f in formats if "$" in f]


def test_the_crew_is_told_what_is_not_proven_and_is_never_told_that_nothing_is_required() -> None:
    text = "\n".join(cells(write(crew(with_quantity("tunnel_ft", 29.0, person="Teo Marlow"), "en_US"))))
    assert "not proven: run water first" in text
    assert "Protective system" in text
    assert "none required" not in text.lower()


def test_the_crew_of_a_work_without_a_dig_fills_in_no_protective_system_and_stops_where_one_is_needed() -> None:
    text = "\n".join(cells(write(crew(example_quote(), "en_US"))))
    assert "Protective system" not in text
    assert "If one is needed, stop and call: the competent person decides first." in text


def test_the_crew_gets_only_the_option_that_was_asked_for() -> None:
    names = [sheet.name for sheet in crew(example_quote(), letter="B").sheets]
    assert "Work B" in names and "Work A" not in names
    with pytest.raises(ValueError, match="no option Z"):
        crew(example_quote(), letter="Z")


def test_the_office_recalculates_to_the_program_s_cent() -> None:
    reading = read_tables(demo_folder(), example_quote().day)
    assert reading.tables is not None
    quote = example_quote()
    sheet = next(s for s in workings(quote, reading.tables).sheets if s.name == "Costs A")
    totals = [row.cells[1].value for row in sheet.rows if row.cells and row.cells[0].value == "Total"]
    assert len(totals) == 1
    assert isinstance(totals[0], Formula)
    assert totals[0].value == quote.options[0].price.total == Decimal("16525.00")


def test_what_the_owner_set_by_hand_is_shown_with_ours_mine_and_why() -> None:
    from estimator.model.price import Overruled

    quote = example_quote()
    option = quote.options[0]
    set_by_hand = Overruled(
        what="price", ours=Decimal(16525), mine=Decimal(16500), unit="dollars", reason="next door anyway"
    )
    loud = replace(option, price=replace(option.price, overruled=(set_by_hand,)))
    text = "\n".join(cells(write(office(replace(quote, options=(loud,))))))
    assert "price $16,525.00 → $16,500.00: next door anyway" in text


def test_the_check_code_changes_with_every_amount_and_not_with_the_inside() -> None:
    quote = example_quote()
    option = quote.options[0]
    dearer = replace(
        option, extras=(replace(option.extras[0], cap_amount=option.extras[0].cap_amount + 1), *option.extras[1:])
    )
    inside = replace(option, price=replace(option.price, margin=Decimal("0.11")))
    assert check_code(replace(quote, options=(dearer,))) != check_code(replace(quote, options=(option,)))
    assert check_code(replace(quote, revision=2)) != check_code(quote)
    assert check_code(replace(quote, options=(inside,))) == check_code(replace(quote, options=(option,)))


def test_a_foot_of_the_page_full_of_ampersands_is_still_printed() -> None:
    quote = example_quote()
    odd = replace(quote, job=replace(quote.job, customer=replace(quote.job.customer, site="&" * 300)))
    sheet = load_workbook(io.BytesIO(write(crew(odd)))).worksheets[0]
    assert "&" in sheet.oddFooter.left.text


def test_the_range_names_the_task_that_costs_most_on_a_bad_day_first() -> None:
    from estimator.papers.office_range import drivers

    option = example_quote().options[0]
    task = option.price.tasks[0]
    small = replace(task, task="sweep", hours=1.0, low=0.5, likely=1.0, high=1.1)
    both = replace(option, price=replace(option.price, tasks=(small, task)))
    first = drivers(both)[0]
    assert (first.task, first.likely) == ("tunnel-dig", 40.0)
    assert first.up == Decimal("1584.00")  # 40 h ÷ 1.2 × (1.8 − 1.2) × $79.20 [computed]
    assert first.down == Decimal("792.00")  # 40 h ÷ 1.2 × (1.2 − 0.9) × $79.20 [computed]
