"""`estimator actuals`: real hours in, kept beside the revisions, estimate against actual out; or suggestions over a folder."""

from decimal import Decimal
from pathlib import Path
from typing import Annotated

import typer

from estimator.cli.arguments import AS_SET, AsJson, Language, OnDay, TablesFrom

Job = Annotated[
    Path, typer.Argument(metavar="JOB", help="The job file; with --suggest a folder of jobs, at any depth.")
]
Option = Annotated[
    str, typer.Option("--option", metavar="LETTER", help="The option that was done; else the accepted one.")
]
Task = Annotated[
    list[str] | None, typer.Option("--task", metavar="NAME", help="A task, as production names it; repeatable.")
]
Hours = Annotated[
    list[float] | None, typer.Option("--hours", metavar="N", help="Its crew-hours, once for each --task.")
]
Quantity = Annotated[
    list[float] | None,
    typer.Option("--quantity", metavar="N", help="How much of it there was, once for each --task or never."),
]
Cause = Annotated[
    list[str] | None,
    typer.Option(
        "--cause", help='soil, found more, access, weather, inspection, our error; or "". For each --task or never.'
    ),
]
CrewBook = Annotated[
    Path | None, typer.Option("--from", metavar="FILE", help="The crew's workbook, as it came back filled in.")
]
Days = Annotated[float | None, typer.Option("--days", metavar="N", min=0, help="Crew days, all crews together.")]
Add = Annotated[bool, typer.Option("--add", help="On top of the hours kept for a task, not in their place.")]
Suggest = Annotated[
    bool, typer.Option("--suggest", help="Over a folder of jobs: production rows as they turned out. Changes no table.")
]


def command(
    job: Job,
    option: Option = "",
    task: Task = None,
    hours: Hours = None,
    quantity: Quantity = None,
    cause: Cause = None,
    crew_book: CrewBook = None,
    days: Days = None,
    add: Add = False,
    suggest: Suggest = False,
    tables: TablesFrom = None,
    on: OnDay = None,
    language: Language = AS_SET,
    as_json: AsJson = False,
) -> None:
    from estimator.cli import real_hours
    from estimator.cli.clock import today
    from estimator.cli.tables_asked import readable_tables
    from estimator.cli.views.actuals import write_compared, write_suggested
    from estimator.cli.views.layout import in_window
    from estimator.cli.views.screen import answer

    out = in_window(language)
    if suggest:
        found, jobs, least = real_hours.suggest(job, readable_tables(on or today(), tables))
        write_suggested(out, found, jobs, least)
        answer(found, as_json, out.rows)
        return
    entries = real_hours.typed(task or (), hours or (), quantity or (), cause or ())
    compared = real_hours.noted(job, option, entries, crew_book, None if days is None else Decimal(repr(days)), add)
    write_compared(out, compared)
    answer(compared, as_json, out.rows)
