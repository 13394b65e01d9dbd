"""`estimator purchase`: accepted jobs in; what to buy for all of them together, by supplier, out, as a workbook or CSV too."""

from pathlib import Path
from typing import Annotated

import typer

from estimator.cli.arguments import AS_SET, AsJson, Language, OnDayOrToday, TablesFrom

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
    from estimator.cli import purchasing
    from estimator.cli.clock import today
    from estimator.cli.tables_asked import readable_tables
    from estimator.cli.views import purchase
    from estimator.cli.views.screen import answer, width

    day = on or today()
    found = purchasing.listed(jobs, readable_tables(day, tables))
    if to is not None:
        purchasing.written(to, found, readable_tables(day, tables), day, language)
    answer(found, as_json, purchase.rows(found, width(), language))
