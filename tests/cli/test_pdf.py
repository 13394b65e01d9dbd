"""`quote --pdf`: the customer's workbooks as PDF where an office program is found; else how to print is said."""

from pathlib import Path

import pytest

from estimator.cli import pdf
from estimator.cli.views.layout import Layout
from estimator.cli.views.screen import Row


def said(*books: Path) -> list[Row]:
    out = Layout()
    pdf.write_pdfs(out, books)
    return out.rows


def test_without_an_office_program_it_says_how_to_print(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setattr(pdf, "office_program", lambda: None)
    [row] = said(tmp_path / "to send" / "a.xlsx")
    assert "print it to PDF" in str(row.text)
    assert list(tmp_path.iterdir()) == []


def test_only_what_goes_to_the_customer_is_turned_into_pdf(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    for name in ("to send", "internal"):
        (tmp_path / name).mkdir()
        (tmp_path / name / "a.xlsx").write_bytes(b"book")
    monkeypatch.setattr(pdf, "office_program", lambda: "office")
    monkeypatch.setattr(pdf, "_converted", lambda _command, _made: b"%PDF-1.7")
    names = ("to send/a.xlsx", "internal/a.xlsx", "to send/m.txt")
    rows = said(*(tmp_path / name for name in names))
    assert (tmp_path / "to send" / "a.pdf").read_bytes() == b"%PDF-1.7"
    assert len(rows) == 1 and not (tmp_path / "internal" / "a.pdf").exists()


def test_a_program_that_fails_loses_nothing(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    (tmp_path / "to send").mkdir()
    book = tmp_path / "to send" / "a.xlsx"
    book.write_bytes(b"book")
    monkeypatch.setattr(pdf, "office_program", lambda: "/no/such/program")
    [row] = said(book)
    assert "print it to PDF" in str(row.text) and book.read_bytes() == b"book"
