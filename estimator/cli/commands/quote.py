"""`estimator quote`: the notes in, a revision folder with the papers out; or an older one again, or an acceptance."""

from pathlib import Path
from typing import Annotated

import typer

from estimator.cli.arguments import JobFile, Languages, OnDay, TablesFrom
from estimator.cli.guard import DONE, TO_MEND

Again = Annotated[
    str, typer.Option("--again", metavar="rN", help="Make the files of an issued revision again, from its record.")
]
Accepted = Annotated[
    str, typer.Option("--accepted", metavar="LETTER", help="Note that this option was accepted, --on its day.")
]


Verify = Annotated[
    Path | None,
    typer.Option("--verify", metavar="FILE", help="Say whether a workbook that came back is as it was issued."),
]


def command(
    job: JobFile,
    tables: TablesFrom = None,
    on: OnDay = None,
    again: Again = "",
    accepted: Accepted = "",
    verify: Verify = None,
    language: Languages = None,
) -> int:
    from estimator.cli import issuing
    from estimator.cli.clock import today
    from estimator.cli.views.screen import show, width

    done = True
    if again:
        rows = issuing.again(job, again)
    elif accepted:
        rows = issuing.accept(job, accepted, on or today())
    elif verify:
        rows, done = issuing.verified(job, verify, width())
    else:
        rows = issuing.told(issuing.written(job, tables, on, tuple(language or ()))[1])
    show(rows)
    return DONE if done else TO_MEND
