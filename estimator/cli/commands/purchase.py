"""`estimator purchase`: accepted jobs in; what to buy for all of them together, by supplier, out, as a workbook or CSV too."""

from collections.abc import Sequence
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from estimator.cli.arguments import AS_SET, AsJson, Language, OnDayOrToday, TablesFrom
from estimator.model.problem import CannotGoOn, Place

if TYPE_CHECKING:
    from estimator.model.purchase import Purchase
    from estimator.tables.tables import Tables

Jobs = Annotated[
    list[Path],
    typer.Argument(
        metavar="JOB...", help="Job files, or folders of jobs at any depth: those accepted and not yet done."
    ),
]
To = Annotated[
    Path | None,
    typer.Option("--to", metavar="FILE", help="Write the list: a new name, ending in .xlsx or .csv."),
]


def command(
    jobs: Jobs,
    to: To = None,
    tables: TablesFrom = None,
    on: OnDayOrToday = None,
    language: Language = AS_SET,
    as_json: AsJson = False,
) -> None:
    from estimator.cli.clock import today
    from estimator.cli.tables_asked import readable_tables
    from estimator.cli.views.layout import in_window
    from estimator.cli.views.purchase import write_purchases
    from estimator.cli.views.screen import answer

    day, out = on or today(), in_window(language)
    with_these = readable_tables(day, tables)
    found = listed(jobs, with_these)
    if to is not None:
        written(to, found, with_these, day, language)
    write_purchases(out, found)
    answer(found, as_json, out.rows)


def listed(jobs: Sequence[Path], tables: "Tables") -> "tuple[Purchase, ...]":
    """Errors: CannotGoOn where no job is accepted and still to be done; FileNotFoundError for a path that is not there."""
    from estimator.cli.problems import NOTHING_TO_BUY
    from estimator.records.afterwards.purchase import purchases, to_buy_for
    from estimator.records.names import revisions_folder
    from estimator.records.standing import job_files

    files = dict.fromkeys(file for path in jobs for file in job_files(path))
    sold = to_buy_for(revisions_folder(file) for file in files)
    if not sold:
        raise CannotGoOn(NOTHING_TO_BUY(Place(file=", ".join(map(str, jobs)))))
    return purchases(sold, tables)


def written(to: Path, found: "Sequence[Purchase]", tables: "Tables", day: date, language: str) -> Path:
    """A CSV file where the name ends so, else a workbook. Errors: CannotGoOn for another ending or a file that stands there."""
    from estimator.cli.writing import WORKBOOK, free, new_file
    from estimator.papers.purchase import heads, purchase_book
    from estimator.records.afterwards.purchase import purchase_csv
    from estimator.sheets.write import write

    if to.suffix.lower() == ".csv":
        return new_file(to, purchase_csv(found, heads(language), language).encode("utf-8"))
    free(to, WORKBOOK)
    return new_file(to, write(purchase_book(found, day, tables.text("accent_colour"), language)))
