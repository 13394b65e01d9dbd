"""Cells in, cells out: workbooks written, handed-in ones gated and read; the only room that knows the spreadsheet libraries."""
