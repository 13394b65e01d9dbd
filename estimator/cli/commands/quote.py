"""`estimator quote`: the notes in, a revision folder with the papers out; or an older one again, or an acceptance."""

from typing import Annotated

import typer

from estimator.cli.arguments import JobFile, Languages, OnDay, TablesFrom

Again = Annotated[
    str, typer.Option("--again", metavar="rN", help="Make the files of an issued revision again, from its record.")
]
Accepted = Annotated[
    str, typer.Option("--accepted", metavar="LETTER", help="Note that this option was accepted, --on its day.")
]


def command(
    job: JobFile,
    tables: TablesFrom = None,
    on: OnDay = None,
    again: Again = "",
    accepted: Accepted = "",
    language: Languages = None,
) -> None:
    from estimator.cli import issuing
    from estimator.cli.clock import today
    from estimator.cli.views.screen import show

    if again:
        show(issuing.again(job, again))
    elif accepted:
        show(issuing.accept(job, accepted, on or today()))
    else:
        show(issuing.told(issuing.written(job, tables, on, tuple(language or ()))[1]))
