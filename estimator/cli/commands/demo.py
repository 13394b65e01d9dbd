"""`estimator demo`: the name of a new folder in, a whole made-up job with its papers in it out."""

from pathlib import Path
from typing import Annotated

import typer

NewFolder = Annotated[Path, typer.Argument(metavar="FOLDER", help="A new folder to write it into.")]


def command(folder: NewFolder = Path("drain-demo")) -> None:
    from estimator.cli import issuing
    from estimator.cli.showing import closing, laid_out, opening
    from estimator.cli.views import options
    from estimator.cli.views.screen import show, width

    job = laid_out(folder)
    show(opening(job))
    run, issued = issuing.written(job, None, None, ())
    show(options.rows(run.quote, width()))
    show(closing(job, issued.files, width()))
