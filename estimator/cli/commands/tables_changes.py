"""`estimator tables changes`: two sets of price tables in; every cell that differs, what it does to jobs, and what is odd about it, out."""

from pathlib import Path
from typing import Annotated

import typer

from estimator.cli.arguments import AS_SET, AsJson, Language, OnDay

Old = Annotated[Path, typer.Argument(metavar="OLD", help="The earlier tables: a folder of CSV files or a workbook.")]
New = Annotated[Path | None, typer.Argument(metavar="NEW", help="The later tables; else the ones in use.")]
Jobs = Annotated[
    Path | None,
    typer.Option("--jobs", metavar="FOLDER", help="Price every open job below it both ways; the demo job always is."),
]


def command(
    old: Old,
    new: New = None,
    jobs: Jobs = None,
    on: OnDay = None,
    language: Language = AS_SET,
    as_json: AsJson = False,
) -> None:
    from estimator.cli.clock import today
    from estimator.cli.table_effects import effects
    from estimator.cli.tables_asked import readable_tables, tables_for
    from estimator.cli.views.layout import in_window
    from estimator.cli.views.problems import tell
    from estimator.cli.views.screen import answer
    from estimator.cli.views.table_effects import as_data, write_effects

    day = on or today()
    before, after = readable_tables(day, old), readable_tables(day, new)
    found = effects(before, after, jobs, day)
    out = in_window(language)
    write_effects(out, found)
    answer(as_data(found), as_json, out.rows)
    known = set(tables_for(day, new)[1])
    tell(tuple(problem for problem in tables_for(day, new, before)[1] if problem not in known))
