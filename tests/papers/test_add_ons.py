"""What a homeowner may add on the papers: boxes to mark, a total that counts them, and an agreement with what was chosen."""

import io
from dataclasses import replace

import pytest
from openpyxl import load_workbook

from estimator.model.offer import Quote
from estimator.papers.agreement import agreement_sheet
from estimator.papers.crew import crew
from estimator.papers.homeowner import homeowner
from estimator.papers.insurer_page import insurer_page
from estimator.papers.letter import Letter
from estimator.papers.office import office, workings
from estimator.pricing.add_on_price import with_chosen
from estimator.sheets.write import write
from tests.made_up.quote import example_quote

LANGUAGES = ("en_US", "es_US")


def chosen(quote: Quote, *codes: str) -> Quote:
    """The quote with these add-ons chosen on every option."""
    options = []
    for option in quote.options:
        marked = tuple(replace(a, chosen=a.code in codes) for a in option.add_ons)
        options.append(replace(option, add_ons=marked, price=with_chosen(option.price, marked)))
    return replace(quote, options=tuple(options))


def rows(data: bytes, sheet: str) -> list[tuple[object, ...]]:
    found = load_workbook(io.BytesIO(data))[sheet].iter_rows(values_only=True)
    return [tuple(cell for cell in row if cell not in (None, "")) for row in found]


@pytest.mark.parametrize("language", LANGUAGES)
def test_each_has_a_box_that_may_be_typed_into_and_the_sum_counts_what_is_marked(language: str) -> None:
    data = write(homeowner(example_quote(), language))
    name = {"en_US": "Agreement", "es_US": "Contrato"}[language]
    sheet = load_workbook(io.BytesIO(data))[name]
    [total] = [c for row in sheet.iter_rows() for c in row if "SUMIF" in str(c.value)]
    first = total.row - 2
    boxes = [sheet.cell(first + n, 1) for n in range(2)]
    assert all(box.value is None and not box.protection.locked for box in boxes)
    assert sheet.cell(first, 3).protection.locked and sheet.cell(first, 3).value == 250
    assert total.value == f'=ROUND(SUMIF(A{first}:A{first + 1},"x",C{first}:C{first + 1}),2)'
    assert str(sheet.cell(first, 2).value).endswith("(cleanout)")


def test_an_option_without_add_ons_has_no_boxes_and_no_word_of_them() -> None:
    quote = example_quote()
    bare = replace(quote, options=tuple(replace(o, add_ons=()) for o in quote.options))
    said = [
        cell
        for sheet in ("Option A", "Agreement", "Start here")
        for row in rows(write(homeowner(bare, "en_US")), sheet)
        for cell in row
    ]
    assert not [text for text in said if "can add" in str(text)]


def test_the_agreement_names_what_was_chosen_and_its_price_has_it() -> None:
    letter = Letter(chosen(example_quote(), "cleanout"), "en_US")
    text = [str(cell.value) for row in agreement_sheet(letter).rows for cell in row.cells]
    assert any("Added: A new cleanout in the front bed ($250)." in one for one in text)
    assert "16775.00" in text  # 16,525 + 250 [by hand]


def test_what_was_chosen_is_a_line_of_its_own_and_no_box_any_more() -> None:
    data = write(homeowner(chosen(example_quote(), "cleanout", "drain-plan"), "en_US"))
    said = [str(cell) for row in rows(data, "Option A") for cell in row]
    assert "Added" in said or any("cleanout in the front bed" in text for text in said)
    assert not [text for row in rows(data, "Agreement") for text in row if "Mark the box" in str(text)]


def test_the_crew_reads_its_task_and_brings_its_parts_only_when_it_was_chosen() -> None:
    for codes, there in (((), False), (("cleanout",), True)):
        said = [str(c) for row in rows(write(crew(chosen(example_quote(), *codes), "en_US")), "Hours A") for c in row]
        assert ("set cleanout" in said) is there


def test_the_office_sees_what_each_costs_and_whether_it_was_chosen() -> None:
    found = rows(write(workings(chosen(example_quote(), "cleanout"))), "Costs A")
    cleanout = next(row for row in found if row and row[0] == "cleanout")
    assert cleanout[2:6] == (1.5, "h", 129.87, 250)
    assert cleanout[-1] == "chosen: in the price above"
    assert next(row for row in found if row and row[0] == "drain-plan")[-1] != cleanout[-1]


def test_the_office_s_first_sheet_counts_the_cost_of_what_was_chosen() -> None:
    quote = chosen(example_quote(), "cleanout")
    price = quote.options[0].price
    found = next(row for row in rows(write(office(quote)), "INTERNAL") if row and str(row[0]).startswith("A  "))
    price_and_cost, profit, share = found[1:3], found[3], found[4]
    assert (*price_and_cost, profit) == (16775, 8731.67, 8043.33)  # 16,525 + 250; 8,601.80 + 129.87 [by hand]
    assert round(share, 4) == float(price.margin)
    assert found[5] == round(8043.33 / float(price.days), 2)


def test_what_the_homeowner_added_is_no_part_of_the_claim() -> None:
    books = [write(insurer_page(q, "en_US")) for q in (example_quote(), chosen(example_quote(), "cleanout"))]
    before, after = (rows(data, load_workbook(io.BytesIO(data)).sheetnames[0]) for data in books)
    pipe = [[row for row in found if row and row[0] == "Pipe work"] for found in (before, after)]
    assert pipe[0] == pipe[1] != []
    assert ("Optional add-ons", 250, 250) in after
