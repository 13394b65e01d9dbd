"""Rows of a repricing in, the bytes of the workbook that shows them out."""

from collections.abc import Sequence
from datetime import date
from pathlib import Path

from estimator.cli.views.jobs import below
from estimator.papers.repriced import Move, Repricing, repriced_book
from estimator.records.reprice import Repriced
from estimator.sheets.write import write
from estimator.tables.tables import Tables


def workbook(rows: Sequence[Repriced], folder: Path, tables: Tables, day: date) -> bytes:
    """One row an option, and those that could not be priced with the reason."""
    moves = [
        Move(
            job=below(Path(row.job_file), folder),
            number=row.number,
            site=row.site,
            revision=row.revision or "not issued",
            option=move.option,
            issued=move.issued,
            now=move.now,
        )
        for row in rows
        for move in row.moves
    ]
    wrong = [(below(Path(row.job_file), folder), row.wrong) for row in rows if row.wrong]
    held = Repricing(tuple(moves), tuple(wrong), tables.fingerprint, day, tables.text("accent_colour"))
    return write(repriced_book(held))
