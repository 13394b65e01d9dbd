"""`estimator compare`: the notes in, the ways over one stretch side by side out, and what decides between them."""

from typing import Annotated

import typer

from estimator.cli.arguments import AS_SET, AsJson, JobFile, Language, OnDay, SetKeys, Stations, TablesFrom
from estimator.cli.completing import line_names

LineName = Annotated[
    str,
    typer.Option(
        "--line",
        metavar="NAME",
        autocompletion=line_names,
        help="The line; else the one under a slab that answers most, or the dearest.",
    ),
]


def command(
    job: JobFile,
    line: LineName = "",
    where: Stations = None,
    tables: TablesFrom = None,
    changes: SetKeys = None,
    on: OnDay = None,
    language: Language = AS_SET,
    as_json: AsJson = False,
) -> None:
    from estimator.cli.comparing import compared_with
    from estimator.cli.views import compare
    from estimator.cli.views.screen import answer, width

    found, read, even = compared_with(job, tables, changes, on, line, where)
    answer(compare.as_data(found, even), as_json, compare.rows(found, read, width(), language, even))
