"""Where each job stands in, one row a job out."""

from collections.abc import Sequence
from decimal import Decimal
from pathlib import Path

from estimator.cli.views.screen import Row
from estimator.cli.views.table import table
from estimator.cli.views.words import dollars
from estimator.records.standing import STATES, Standing

HEADERS = ("job", "state", "rev", "total", "days left", "waits for")


def rows(standings: Sequence[Standing], folder: Path, columns: int) -> list[Row]:
    """The table and a count of each state under it."""
    if not standings:
        return [Row(f"There is no job file below {folder}.")]
    cells = [_cells(standing, folder) for standing in standings]
    counts = [(state, sum(s.state == state for s in standings)) for state in STATES]
    said = ", ".join(f"{number} {state}" for state, number in counts if number)
    return [*(Row(text) for text in table(HEADERS, cells, columns, right=(3, 4))), Row(""), Row(said, "head")]


def _cells(standing: Standing, folder: Path) -> tuple[str, ...]:
    path = standing.job_file
    name = str(path.relative_to(folder)) if path != folder and path.is_relative_to(folder) else str(path)
    left = "" if standing.days_left is None else str(standing.days_left)
    total = dollars(Decimal(standing.total), whole=True) if standing.total else ""
    return name, standing.state, standing.revision, total, left, standing.waits_for
