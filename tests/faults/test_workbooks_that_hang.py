"""Workbooks of a few kB that asked a reader for gigabytes or minutes: each is refused in plain words, and quickly."""

import tracemalloc
import zipfile
from io import BytesIO
from time import process_time

import pytest

from estimator.model.problem import Place
from estimator.sheets.gate import gate

BOOK = '<workbook xmlns:r="x"><sheets><sheet name="Prices" r:id="rId1"/></sheets></workbook>'
RELATIONS = '<Relationships><Relationship Id="rId1" Target="worksheets/sheet1.xml"/></Relationships>'


def workbook(sheet: str, **other: bytes | str) -> bytes:
    out = BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as parts:
        parts.writestr("xl/workbook.xml", BOOK)
        parts.writestr("xl/_rels/workbook.xml.rels", RELATIONS)
        parts.writestr("xl/worksheets/sheet1.xml", sheet)
        for name, text in other.items():
            parts.writestr(f"xl/{name}.xml", text)
    return out.getvalue()


def rows(inner: str) -> str:
    return f"<worksheet><sheetData>{inner}</sheetData></worksheet>"


STYLES = "<styleSheet><cellXfs>" + "<xf/>" * 500_000 + "</cellXfs></styleSheet>"
BAD = {
    "a merge of millions": (workbook("<worksheet><mergeCells><mergeCell ref='A200:XFD1048576'/></mergeCells></worksheet>"), "far-cell"),
    "many merges": (workbook("<worksheet>" + "<mergeCell ref='A1:B2'/>" * 6_000 + "</worksheet>"), "too-many"),
    "a far cell in single quotes": (workbook(rows("<row r='1048576'><c r='XFD1048576'><v>1</v></c></row>")), "far-cell"),
    "cells that do not say where": (workbook(rows("<row>" + "<c><v>1</v></c>" * 800_000 + "</row>")), "far-cell"),
    "empty cells without end": (workbook(rows("<row><c/></row>" * 400_000)), "too-many"),
    "rows without end": (workbook(rows("<row/>" * 900_000)), "too-many"),
    "styles without end": (workbook(rows(""), styles=STYLES), "too-many"),
    "rules without end": (workbook("<worksheet>" + "<cfRule type='x'/>" * 400_000 + "</worksheet>"), "too-many"),
    "words without end": (workbook(rows(""), sharedStrings="<sst>" + "<si><t>a</t></si>" * 400_000 + "</sst>"), "too-many"),
    "a document type in UTF-16": (
        workbook(rows(""), styles='<?xml version="1.0" encoding="UTF-16"?><!DOCTYPE a [<!ENTITY b "c">]><a/>'.encode("utf-16")),
        "doctype",
    ),
    "a document type": (workbook('<!DOCTYPE a [<!ENTITY b "c">]><worksheet/>'), "doctype"),
    "elements of no kind": (workbook("<worksheet>" + "<x/>" * 900_000 + "</worksheet>"), "too-many"),
}  # fmt: skip


@pytest.mark.parametrize("name", BAD)
def test_it_is_refused_before_any_reader_opens_it(name: str) -> None:
    data, code = BAD[name]
    assert len(data) < 64_000
    wrong = gate(data, Place("prices.xlsx"))
    assert wrong is not None
    assert wrong.code == f"sheet/{code}"


def test_refusing_takes_little_time_and_memory() -> None:
    """Against an opening of the largest of them with the standard library's own parser, in the same run."""
    data, _ = BAD["cells that do not say where"]
    tracemalloc.start()
    started = process_time()
    assert gate(data, Place("prices.xlsx")) is not None
    took, (_, most) = process_time() - started, tracemalloc.get_traced_memory()
    tracemalloc.stop()
    assert most < 20_000_000
    assert took < 5  # a bound that only a reader without a stop would break


def test_a_far_cell_is_named_with_its_sheet() -> None:
    wrong = gate(BAD["a far cell in single quotes"][0], Place("prices.xlsx"))
    assert wrong is not None
    assert "Prices" in str(wrong)
    assert "XFD1048576" in str(wrong)


def test_what_a_deleted_row_leaves_at_the_end_is_no_cell() -> None:
    data = workbook(rows("<row r='1'><c r='A1'><v>1</v></c></row><row r='1048576'><c r='A1048576' s='1'/></row>"))
    assert gate(data, Place("prices.xlsx")) is None
