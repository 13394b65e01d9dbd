"""Job files and folders typed in; the purchase list of those accepted and not done, and its file, out."""

from collections.abc import Sequence
from datetime import date
from pathlib import Path

from estimator.cli.problems import NOTHING_TO_BUY
from estimator.cli.writing import WORKBOOK, free, new_file
from estimator.model.problem import CannotGoOn, Place
from estimator.model.purchase import Purchase
from estimator.papers.purchase import heads, purchase_book
from estimator.records.afterwards.purchase import purchase_csv, purchases, to_buy_for
from estimator.records.names import revisions_folder
from estimator.records.standing import job_files
from estimator.sheets.write import write
from estimator.tables.tables import Tables


def listed(jobs: Sequence[Path], tables: Tables) -> tuple[Purchase, ...]:
    """Errors: CannotGoOn where no job is accepted and still to be done; FileNotFoundError for a path that is not there."""
    files = dict.fromkeys(file for path in jobs for file in job_files(path))
    sold = to_buy_for(revisions_folder(file) for file in files)
    if not sold:
        raise CannotGoOn(NOTHING_TO_BUY(Place(file=", ".join(map(str, jobs)))))
    return purchases(sold, tables)


def written(to: Path, found: Sequence[Purchase], tables: Tables, day: date, language: str) -> Path:
    """A CSV file where the name ends so, else a workbook. Errors: CannotGoOn for another ending or a file that stands there."""
    if to.suffix.lower() == ".csv":
        return new_file(to, purchase_csv(found, heads(language), language).encode("utf-8"))
    free(to, WORKBOOK)
    return new_file(to, write(purchase_book(found, day, tables.text("accent_colour"), language)))
