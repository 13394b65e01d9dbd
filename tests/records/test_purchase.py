"""What to buy for several accepted jobs: needs added up before packs are rounded, by supplier, with part numbers."""

import csv
from datetime import date
from decimal import Decimal
from pathlib import Path
from typing import Any

from openpyxl import load_workbook

from estimator.cli.commands.purchase import listed, written
from estimator.records.finished import finish
from estimator.records.recorded_text import sealed, unsealed
from estimator.tables.read import demo_folder, read_tables
from tests.made_up.sold import issued

DAY = date(2026, 11, 25)


def needs(folder: Path, number: str, wanted: dict[str, float]) -> None:
    """An accepted job whose option needs so much of each material."""
    issued(folder, "A")
    folder.with_suffix(".toml").write_text("[job]\n")
    path = next(folder.rglob("Record*.json"))
    held = unsealed(path.read_bytes())
    held["number"] = number
    rest: dict[str, Any] = {"part": "material", "amount": "1.00", "shares": []}
    held["quote"]["options"][0]["price"]["costs"] = [
        {"ref": item, "need": need, **rest} for item, need in wanted.items()
    ]
    path.write_bytes(sealed(held))


def test_two_jobs_share_packs_and_come_by_supplier(tmp_path: Path) -> None:
    """14 and 13 ft of 4 in pipe with 10 % waste are 29.7 ft: three sticks of 10 ft, not two and two [by hand]. A job that is
    done is left out."""
    needs(tmp_path / "a", "2026-1", {"pipe-4": 14.0, "sand": 0.4})
    needs(tmp_path / "b", "2026-2", {"pipe-4": 13.0})
    needs(tmp_path / "c", "2026-3", {"pipe-4": 500.0})
    finish(tmp_path / "c", date(2026, 12, 5))
    tables = read_tables(demo_folder(), DAY).tables
    assert tables is not None
    found = listed([tmp_path], tables)
    pipe = next(one for one in found if one.item == "pipe-4")
    assert (pipe.quantity, pipe.part_no, pipe.jobs) == (Decimal(30), "DEMO-P4", ("2026-1", "2026-2"))
    assert pipe.supplier == tables.material("pipe-4").supplier
    assert [one.supplier for one in found] == sorted(one.supplier for one in found)
    written(tmp_path / "list.csv", found, tables, DAY, "es_US")
    rows = list(csv.reader((tmp_path / "list.csv").open(encoding="utf-8", newline="")))
    assert rows[0][:2] == ["proveedor", "núm. de parte"]
    assert ["DEMO-P4", "tubo de drenaje PVC de 4 pulg, cédula 40, piezas de 10 pies", "30", "pies", "10"] in [
        [row[1], *row[3:7]] for row in rows
    ]
    book = load_workbook(written(tmp_path / "list.xlsx", found, tables, DAY, "en_US"))
    cells = [[cell.value for cell in row] for row in book.worksheets[0].iter_rows()]
    line = next(row for row in cells if row[0] == "DEMO-P4")
    assert (line[2], line[3], line[7]) == (30, "ft", "2026-1, 2026-2")
    names = [row[0] for row in cells]
    assert names.index(pipe.supplier) < names.index("DEMO-P4")
