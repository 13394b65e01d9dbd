"""A price is traced to the very cell it came from: opened by another library, that cell holds the figure."""

import re
from io import BytesIO
from pathlib import Path

import pytest
from openpyxl import load_workbook

from estimator.model.work import Takeoff
from estimator.pricing.build import price_scope
from estimator.tables.data import from_data, to_data
from estimator.tables.rows import PlaceRow
from estimator.tables.tables import Tables
from tests.tables.workbench import demo_bytes, reading


@pytest.fixture
def from_workbook(tmp_path: Path) -> Tables:
    path = tmp_path / "prices.xlsx"
    path.write_bytes(demo_bytes())
    tables = reading(path).tables
    assert tables is not None
    return tables


def test_prices_of_a_workbook_are_traced_to_its_cells(
    pecan: tuple[Takeoff, ...], from_workbook: Tables, place: PlaceRow
) -> None:
    book = load_workbook(BytesIO(demo_bytes()))
    price = price_scope(pecan, from_workbook, place)
    bought = [cost for cost in price.costs if cost.part in ("material", "equipment", "sub", "fee")]
    assert len(bought) > 5
    for cost in bought:
        sheet, cell = cost.cell.split("!")
        assert book[sheet][cell].value == pytest.approx(float(cost.rate))
    for task in price.tasks:
        sheet, cell = task.cell.split("!")
        assert book[sheet][cell].value == pytest.approx(task.likely)


def test_the_record_of_a_quote_keeps_the_cells(
    maple: tuple[Takeoff, ...], from_workbook: Tables, place: PlaceRow
) -> None:
    again = from_data(to_data(from_workbook))
    assert price_scope(maple, again, place).costs == price_scope(maple, from_workbook, place).costs


def test_prices_of_csv_files_are_traced_to_their_rows(
    maple: tuple[Takeoff, ...], tables: Tables, place: PlaceRow
) -> None:
    cells = [cost.cell for cost in price_scope(maple, tables, place).costs if cost.part == "material"]
    assert cells and all(re.fullmatch(r"materials\.csv row \d+, cost", cell) for cell in cells)


def test_what_is_the_firms_own_is_told_apart_from_what_is_bought(
    maple: tuple[Takeoff, ...], tables: Tables, place: PlaceRow
) -> None:
    """Nothing costs nothing but what the firm has in its overhead."""
    for cost in price_scope(maple, tables, place).costs:
        assert cost.in_overhead == (cost.amount == 0)
