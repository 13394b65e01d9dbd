"""`estimator start`: answers typed in, a job file with its logs out; saved after each answer, taken up again later."""

from pathlib import Path
from typing import Annotated

import typer

from estimator.cli.arguments import AS_SET, Language, TablesFrom

NewJob = Annotated[
    Path, typer.Argument(metavar="JOB", help="The job file to write, such as larkspur/job.toml, or a folder for it.")
]
Resume = Annotated[bool, typer.Option("--resume", help="Go on with a job file that is there.")]
LogOf = Annotated[
    str, typer.Option("--log", metavar="LINE", help="Begin with the log of this line; ask the rest after.")
]


def command(
    job: NewJob, resume: Resume = False, log: LogOf = "", tables: TablesFrom = None, language: Language = AS_SET
) -> int:
    from estimator.cli.clock import today
    from estimator.cli.interview.begin import interview

    return interview(job, resume, log, tables, today())
